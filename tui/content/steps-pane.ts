import { heldBackBy, helpful, stepsSentence } from "../../src/explore/holding-back.ts";
import { progressWords } from "../../src/report/progress-words.ts";
import { wrap } from "../../src/report/wrap.ts";
import { type OpenGarment, ruleAt } from "../state.ts";
import type { Glyphs } from "./glyphs.ts";
import { type Line, line, plainText } from "./line.ts";
import { firstLines } from "./window.ts";

/** What holds the fit back now, and, unless it is told elsewhere, what one step of the rules would change. */
export const stepsPane = (
  garment: OpenGarment,
  width: number,
  height: number,
  { cut }: Glyphs,
  stepsElsewhere: boolean,
): readonly Line[] =>
  firstLines(
    wrapped([line(nowHeldBack(garment), "strong"), ...(stepsElsewhere ? [] : stepLines(garment))], width),
    height,
    width,
    cut,
  );

/** Lines broken at their spaces to a width. */
export const wrapped = (lines: readonly Line[], width: number): readonly Line[] =>
  lines.flatMap((one) => wrap(plainText(one), width, 2).map((text) => line(text, one[0]?.style)));

/** One sentence about the fit as it is now. */
export function nowHeldBack({ solving, reading }: OpenGarment): string {
  const { outcome, shown, underWay, reached } = solving;
  if (underWay)
    return [
      shown ? "Seeking the fit; what is shown is of before the change." : "Seeking the fit.",
      ...(reached ? [`${progressWords(reached)}. End the search with the best so far: e.`] : []),
    ].join(" ");
  switch (outcome.kind) {
    case "none yet":
      return reading.garment ? "Seeking the fit." : "The file has mistakes.";
    case "fits":
      return shown ? heldBackBy(shown.fit) + (shown.proven ? "" : " It is not proven to be the best.") : "";
    case "does not fit":
      return `Nothing fits${shown ? "; what is drawn is of before the change" : ""}.`;
    case "stopped":
      return `Stopped: ${outcome.reason}.`;
    case "failed":
      return `The fit could not be found: ${outcome.reason}`;
  }
}

/** The chosen rule's own steps, then the steps of others that help. */
export function stepLines(garment: OpenGarment): readonly Line[] {
  const { solving } = garment;
  const rule = ruleAt(garment);
  const own = solving.steps.filter((step) => step.rule === rule?.id);
  const others = helpful(solving.steps).filter((step) => step.rule !== rule?.id);
  const lines = [
    ...(own.length === 0 ? [] : [line(stepsSentence(own))]),
    ...others.map((step) => line(stepsSentence([step]))),
  ];
  if (solving.underWay || solving.outcome.kind === "failed" || solving.outcome.kind === "stopped")
    return lines;
  if (!solving.allTried) return [...lines, line("Trying one step of each rule ...", "dim")];
  return helpful(solving.steps).length > 0
    ? lines
    : [
        ...lines,
        line(
          solving.outcome.kind === "fits"
            ? "No single step of a rule makes it better."
            : "No single step of a rule lets it fit.",
          "dim",
        ),
      ];
}
