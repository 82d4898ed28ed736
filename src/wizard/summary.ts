import { counted } from "../report/words.ts";
import { wrap } from "../report/wrap.ts";
import { type Answers, given, numberOf, rowsOf } from "./answers.ts";
import { hasNeck, isCord, isTapered } from "./sizes.ts";

/** What was answered, in a few lines, to be looked over before it is written. */
export const summary = (answers: Answers, width: number): readonly string[] => [
  "What you said:",
  ...[
    swatchWords(answers),
    ornamentWords(answers),
    pieceWords(answers),
    placeWords(answers),
    yarnWords(answers),
  ].flatMap((words) => wrap(`  ${words}`, width, 4)),
];

function swatchWords(answers: Answers): string {
  const { rows, over = given(answers, "over") } = rowsOf(answers);
  const swatch =
    over === given(answers, "over")
      ? `${given(answers, "stitches")} stitches and ${rows} rows over ${over}`
      : `${given(answers, "stitches")} stitches over ${given(answers, "over")}, ${rows} rows over ${over}`;
  return `${swatch}; ${given(answers, "needles")} needles, ${given(answers, "pitch")} apart`;
}

const ornamentWords = (answers: Answers): string =>
  isCord(answers)
    ? `cord on ${given(answers, "cord needles")} needles, ${given(answers, "cord stitches")} cord stitches over ${given(answers, "cord over")}; ${given(answers, "spread")} needles from the middle, ${given(answers, "interval")} rows from one hanging to the next`
    : `cable, ${given(answers, "cross")} over ${given(answers, "cross")}, draw-in ${given(answers, "draw-in")}; ${given(answers, "interval")} rows from one crossing to the next`;

function pieceWords(answers: Answers): string {
  const shape = isTapered(answers)
    ? `${given(answers, "width")} wide at the cast-on edge, ${given(answers, "top width")} from ${given(answers, "taper")} up`
    : `${given(answers, "width")} wide`;
  const neck = hasNeck(answers)
    ? `, neck ${given(answers, "neck depth")} deep and ${given(answers, "neck width")} wide`
    : "";
  return `${given(answers, "piece")}: ${shape}, ${given(answers, "height")} long${neck}, hem ${given(answers, "hem")}`;
}

const yarnWords = (answers: Answers): string =>
  `yarn of the cloth: ${given(answers, "yarn")}${/^\d+(?:\.\d+)?$/.test(given(answers, "yarn")) ? " tex" : ""}`;

const placeWords = (answers: Answers): string =>
  `the ${given(answers, "ornament")} from ${given(answers, "from")} to ${given(answers, "to")}, up to ${counted(numberOf(answers, "bottom"), "row")} plain below and ${given(answers, "top")} above, at least ${counted(numberOf(answers, "side"), "needle")} free at the sides; the length may change by ${given(answers, "change")}`;
