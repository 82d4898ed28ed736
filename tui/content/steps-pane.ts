import { heldBackBy, helpful, stepWords } from "../../src/explore/holding-back.ts";
import { wrap } from "../../src/report/wrap.ts";
import { type OpenGarment, ruleAt } from "../state.ts";
import { type Line, line } from "./line.ts";

/** What holds the fit back now, and what one step of the rules would change. */
export function stepsPane(garment: OpenGarment, width: number, height: number): readonly Line[] {
  const { solving } = garment;
  return [line(nowHeldBack(garment), "strong"), ...stepLines(garment)]
    .flatMap((one) => wrap(one[0]?.text ?? "", width, 2).map((text) => line(text, one[0]?.style)))
    .slice(0, solving.underWay ? 1 : height);
}

/** One sentence about the fit as it is now. */
export function nowHeldBack({ solving, reading }: OpenGarment): string {
  const { outcome, shown, underWay } = solving;
  if (underWay) return shown ? "Seeking the fit; what is shown is of before the change." : "Seeking the fit.";
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
    ...own.map((step) => line(`One step: ${stepWords(step)}.`)),
    ...others.map((step) => line(`One step: ${stepWords(step)}.`)),
  ];
  if (!solving.allTried)
    return solving.underWay ? lines : [...lines, line("Trying one step of each rule ...", "dim")];
  if (others.length === 0 && solving.steps.every((step) => !helpful([step]).length))
    return [...lines, line("One step of no rule makes it better.", "dim")];
  return lines;
}
