import type { Measured } from "../../src/refit/progress.ts";
import { parseLength } from "../../src/units/length.ts";
import type { MidwayAnswer } from "../../src/work/midway/midway.ts";
import type { WorkScreen } from "./state.ts";

/** What a typed length makes of the question it answers: the next screen, or why it is no length. */
export type LengthTaken = { readonly screen: WorkScreen } | { readonly problem: string };

/** Takes the length, then the width; either may be left empty, not both. */
export function takeTyped(
  screen: Extract<WorkScreen, { kind: "measure length" | "measure width" }>,
): LengthTaken {
  const typed = screen.text.trim();
  const parsed = typed === "" ? undefined : parseLength(typed);
  if (parsed && "problem" in parsed)
    return { problem: `${parsed.problem.message}; expected: ${parsed.problem.expected}.` };
  if (parsed && parsed.mm <= 0) return { problem: "A length is above 0." };
  if (screen.kind === "measure length")
    return { screen: { kind: "measure width", text: "", ...(parsed && { lengthMm: parsed.mm }) } };
  const { lengthMm } = screen;
  if (!parsed && lengthMm === undefined)
    return { problem: "Neither a length nor a width is given; Esc leaves it." };
  const measured: Measured = {
    ...(lengthMm !== undefined && { lengthMm }),
    ...(parsed && { widthMm: parsed.mm }),
  };
  return { screen: { kind: "reckoning", measured, refits: false } };
}

/** Where an answer leads. */
export function screenFor(answer: MidwayAnswer, measured: Measured): WorkScreen {
  switch (answer.status) {
    case "measured":
      return { kind: "measured", measured, headline: answer.headline, lines: answer.lines };
    case "refitted":
      return {
        kind: "refitted",
        measured,
        headline: answer.headline,
        lines: answer.lines,
        sheet: answer.sheet,
      };
    case "no refit":
      return { kind: "no refit", measured, lines: answer.lines };
    case "refused":
      return { kind: "not measured", lines: answer.lines };
  }
}
