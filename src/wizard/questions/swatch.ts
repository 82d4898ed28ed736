import * as limits from "../../garment/read/limits.ts";
import { type Answers, numberOf, rowsOf } from "../answers.ts";
import { type LengthLimits, roundLength } from "../lengths.ts";
import { countFrom, lengthFrom, nameFrom, type Parsed } from "../parsers.ts";
import { always, type Question } from "../question.ts";

/** Rows to one stitch, or stitches to one row, over one length: beyond this one of the two was miscounted. */
const mostApart = 5;

const overLimits = (answers: Answers): LengthLimits => {
  const stitches = numberOf(answers, "stitches");
  const { rows, over } = rowsOf(answers);
  return lengthOf(over === undefined ? [stitches, Number(rows)] : [stitches]);
};

/** What so many stitches or rows may measure. */
const lengthOf = (counts: readonly number[]): LengthLimits => ({
  leastMm: Math.max(limits.swatchMm.least, limits.oneStitchMm.least * Math.max(...counts)),
  mostMm: Math.min(limits.swatchMm.most, limits.oneStitchMm.most * Math.min(...counts)),
});

/** "44", over the length of the stitches, or "44 over 14.6 cm". */
function rowsFrom(text: string, answers: Answers): Parsed {
  const apart = /^\s*(?<rows>\S+)(?:\s*rows)?\s+over\s+(?<over>\S.*)$/i.exec(text)?.groups;
  if (!apart) return countFrom(text, "rows", rowLimits(answers));
  const rows = countFrom(apart.rows!, "rows", limits.swatchCount);
  if ("problem" in rows) return rows;
  const over = lengthFrom(apart.over!, "the length of the rows", {
    ...lengthOf([Number(rows.answer)]),
    because: `${rows.answer} rows were counted over it`,
  });
  return "problem" in over ? over : { answer: `${rows.answer} over ${over.answer}` };
}

const rowLimits = (answers: Answers) => ({
  least: Math.max(limits.swatchCount.least, numberOf(answers, "stitches") / mostApart),
  most: Math.min(limits.swatchCount.most, numberOf(answers, "stitches") * mostApart),
});

/** Common practice, no published source: plain knitting has about 1.4 rows to a stitch. */
const usualRowsPerStitch = 1.4;

export const swatchQuestions: readonly Question[] = [
  {
    id: "title",
    ask: () => "What is the garment called?",
    explain: "A title for the sheet and the file, in your own words.",
    more: "For example: Blue sleeve with a cord.",
    isAsked: always,
    suggested: () => "My garment",
    parse: (text) => nameFrom(text, "the garment"),
  },
  {
    id: "stitches",
    ask: () => "How many stitches did you count on your swatch?",
    explain: "A swatch is a trial piece of plain cloth, washed and rested.",
    more: "Count across, in the middle of the swatch. Half stitches count: 28.5.",
    isAsked: always,
    suggested: () => "28",
    parse: (text) => countFrom(text, "stitches", limits.swatchCount),
  },
  {
    id: "rows",
    ask: () => "And how many rows, over the same length or another?",
    explain: "Rows go upward. 44, or where the length is another: 44 over 14.6 cm.",
    more: "Over the stitches' length, or say which: 44 over 14.6 cm. Half rows count.",
    isAsked: always,
    suggested: (answers) => {
      const { least, most } = rowLimits(answers);
      const usual = Math.round(numberOf(answers, "stitches") * usualRowsPerStitch);
      return String(Math.min(Math.max(usual, least), most));
    },
    parse: rowsFrom,
  },
  {
    id: "over",
    ask: (answers) =>
      rowsOf(answers).over === undefined
        ? "Over what length did you count them?"
        : "Over what length did you count the stitches?",
    explain: "Stitches and rows over a length are the gauge: how large one stitch is.",
    more: "A number and its unit, such as 10 cm or 4 in. The longer, the surer.",
    isAsked: always,
    suggested: (answers) => roundLength(100, overLimits(answers), "cm"),
    parse: (text, answers) =>
      lengthFrom(text, "the length", {
        ...overLimits(answers),
        because: `${answers.stitches} stitches${rowsOf(answers).over === undefined ? ` and ${answers.rows} rows` : ""} were counted over it`,
      }),
  },
];
