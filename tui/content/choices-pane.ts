import { differences } from "../../src/report/differences.ts";
import { wrap } from "../../src/report/wrap.ts";
import type { OpenGarment } from "../state.ts";
import type { Glyphs } from "./glyphs.ts";
import { type Line, line } from "./line.ts";
import { paneTitle } from "./pane-title.ts";
import { firstLines, linesAround } from "./window.ts";

/** The best fit and its rivals in plain words, or the rules that fail to meet. */
export function choicesPane(
  garment: OpenGarment,
  width: number,
  height: number,
  glyphs: Glyphs,
): readonly Line[] {
  const { solving, view } = garment;
  const inFocus = view.pane === "choices";
  const head = paneTitle(solving.current ? "Choices" : choicesBefore(solving), inFocus, width, glyphs);
  if (solving.outcome.kind === "does not fit")
    return firstLines([head, ...choiceLines(garment, width)], height, width, glyphs.cut);
  const { shown } = solving;
  if (!shown) return [head];
  const texts = ["best", ...shown.rivals.map((rival) => differences(shown.fit, rival).join(", "))];
  const costs = [shown.fit, ...shown.rivals].map(({ cost }) => cost.toFixed(2));
  const costWidth = Math.max(...costs.map((cost) => cost.length));
  const indent = costWidth + 4;
  const blocks = texts.map((text, index) => {
    const selected = index === view.choice;
    const lead = `${selected ? glyphs.pointer : " "} ${costs[index]!.padStart(costWidth)}  `;
    const lines = wrap(text, width - indent).map((part, at) => (at === 0 ? lead : " ".repeat(indent)) + part);
    return lines.map((part): Line => line(part, selected ? (inFocus ? "chosen" : "strong") : "plain"));
  });
  const at = blocks.slice(0, view.choice).reduce((sum, block) => sum + block.length, 0);
  const none =
    shown.rivals.length === 0
      ? wrap("No other fit differs in a way one would notice.", width).map((text) => line(text, "dim"))
      : [];
  return [head, ...linesAround([...blocks.flat(), ...none], at, height - 1, width, glyphs.cut)];
}

/** Where nothing fits: the rules that fail to meet, as far as they are found out. */
export const choiceLines = ({ solving: { outcome } }: OpenGarment, width: number): readonly Line[] =>
  outcome.kind === "does not fit" ? conflictLines(outcome.conflict, width) : [];

const choicesBefore = ({ outcome, underWay, shown }: OpenGarment["solving"]): string => {
  if (outcome.kind === "does not fit" && !underWay) return "Nothing fits";
  return shown ? "Choices before the change" : "Choices";
};

function conflictLines(
  conflict: readonly { readonly words: string }[] | undefined,
  width: number,
): readonly Line[] {
  if (!conflict)
    return wrap("Nothing fits. Looking for the rules that fail to meet ...", width).map((text) =>
      line(text, "warning"),
    );
  const intro =
    conflict.length === 0
      ? "The field is too short or too narrow for the motif; no rule alone is to blame."
      : conflict.length === 1
        ? "This rule stands in the way whatever else is chosen:"
        : "These rules cannot all be kept, whatever else gives way:";
  return [
    ...wrap(intro, width).map((text) => line(text, "warning")),
    ...conflict.flatMap(({ words }) => wrap(`- ${words}`, width, 2).map((text) => line(text))),
  ];
}
