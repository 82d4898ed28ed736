import * as limits from "../../garment/read/limits.ts";
import { type Answers, numberOf } from "../answers.ts";
import { type LengthLimits, roundLength } from "../lengths.ts";
import { lengthFrom, nameFrom, numberFrom } from "../parsers.ts";
import { always, type Question } from "../question.ts";

/** Rows to one stitch, or stitches to one row, over one length: beyond this one of the two was miscounted. */
const mostApart = 5;

const overLimits = (answers: Answers): LengthLimits => {
  const [stitches, rows] = [numberOf(answers, "stitches"), numberOf(answers, "rows")];
  const { least, most } = limits.oneStitchMm;
  return {
    leastMm: Math.max(limits.swatchMm.least, least * Math.max(stitches, rows)),
    mostMm: Math.min(limits.swatchMm.most, most * Math.min(stitches, rows)),
  };
};

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
    parse: (text) => numberFrom(text, "the number of stitches", limits.swatchCount),
  },
  {
    id: "rows",
    ask: () => "And how many rows, over the same length?",
    explain: "One pass of the carriage knits one row; rows go upward.",
    more: "The same length as for the stitches, measured upward. Half rows count too.",
    isAsked: always,
    suggested: (answers) => {
      const { least, most } = rowLimits(answers);
      const usual = Math.round(numberOf(answers, "stitches") * usualRowsPerStitch);
      return String(Math.min(Math.max(usual, least), most));
    },
    parse: (text, answers) => numberFrom(text, "the number of rows", rowLimits(answers)),
  },
  {
    id: "over",
    ask: () => "Over what length did you count them?",
    explain: "Stitches and rows over a length are the gauge: how large one stitch is.",
    more: "A number and its unit, such as 10 cm or 4 in. The longer, the surer.",
    isAsked: always,
    suggested: (answers) => roundLength(100, overLimits(answers), "cm"),
    parse: (text, answers) =>
      lengthFrom(text, "the length", {
        ...overLimits(answers),
        because: `${answers.stitches} stitches and ${answers.rows} rows were counted over it`,
      }),
  },
];
