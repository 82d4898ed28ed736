import { quoted } from "../../diagnostics/shown.ts";
import { type Answers, millimetres, mmOf, numberOf } from "../answers.ts";
import { type LengthLimits, ownUnit, roundLength } from "../lengths.ts";
import { lengthFrom, type Parsed, wholeFrom, wordFrom } from "../parsers.ts";
import { always, type Question } from "../question.ts";
import {
  ceilingMark,
  endLimits,
  endMarks,
  hemMark,
  rowsIn,
  startLimits,
  startMarks,
  taperMark,
  type WizardMark,
} from "../sizes.ts";

/** A mark's name, or a height. */
function placeFrom(text: string, marks: readonly WizardMark[], what: string, range: LengthLimits): Parsed {
  const names = marks.map(({ name }) => name);
  const word = wordFrom(text, names);
  if ("answer" in word) return word;
  if (/^[-+(]?[\d.]/.test(text.trim())) {
    const length = lengthFrom(text, what, range);
    const same = "answer" in length && marks.find(({ heightMm }) => heightMm === millimetres(length.answer));
    return same ? { answer: same.name } : length;
  }
  return {
    problem: `${quoted(text.trim())} is no mark and no height`,
    right: `${names.join(", ")}, or a height such as ${roundLength((range.leastMm + range.mostMm) / 2, range, "cm")}`,
  };
}

const names = (marks: readonly WizardMark[]): readonly string[] => marks.map(({ name }) => name);

const changeLimits = (answers: Answers): LengthLimits => ({
  leastMm: 0,
  mostMm: mmOf(answers, "height") / 4,
});

/** Rows that stay plain at most below and above the motif, to begin with: about 3 cm. */
const usualMarginMm = 30;

const mostMarginRows = 500;
const rowsPlain = { least: 0, most: mostMarginRows };

const usualMargin = (answers: Answers): string =>
  String(Math.min(Math.max(4, rowsIn(usualMarginMm, answers)), mostMarginRows));

export const placeQuestions: readonly Question[] = [
  {
    id: "from",
    ask: () => "From where should the motif go up?",
    explain: "A mark of the piece, or a height above the cast-on edge.",
    more: "The motif starts there, or a few rows above.",
    isAsked: always,
    suggested: (answers) => names(startMarks(answers)).find((name) => name === hemMark) ?? "cast-on",
    choices: (answers) => names(startMarks(answers)),
    parse: (text, answers) => placeFrom(text, startMarks(answers), "the height", startLimits(answers)),
  },
  {
    id: "to",
    ask: () => "And up to where?",
    explain: "The motif ends there or a few rows below, always with a whole repeat.",
    more: "A mark of the piece, or a height above the cast-on edge.",
    isAsked: always,
    suggested: (answers) =>
      names(endMarks(answers)).find((name) => name === taperMark) ?? ceilingMark(answers),
    choices: (answers) => names(endMarks(answers)),
    parse: (text, answers) => placeFrom(text, endMarks(answers), "the height", endLimits(answers)),
  },
  {
    id: "bottom",
    ask: () => "How many rows may stay plain below the motif, at most?",
    explain: "The bottom margin: the fit takes what brings the motif out whole.",
    more: "The more it may choose from, the better the rest can be.",
    isAsked: always,
    suggested: usualMargin,
    parse: (text) => wholeFrom(text, "the bottom margin", rowsPlain),
  },
  {
    id: "top",
    ask: () => "And above it, at most?",
    explain: "The top margin, in rows. Both are kept about equal.",
    more: "0 if the motif has to end exactly where you said.",
    isAsked: always,
    suggested: usualMargin,
    parse: (text) => wholeFrom(text, "the top margin", rowsPlain),
  },
  {
    id: "side",
    ask: () => "How many needles must stay free beside it, at least?",
    explain: "The side margin: needles between the motif and the shaped edge.",
    more: "Seams and shaping need some; 5 is a good start.",
    isAsked: always,
    suggested: (answers) => String(Math.min(5, Math.floor(numberOf(answers, "needles") / 4))),
    parse: (text, answers) =>
      wholeFrom(text, "the side margin", { least: 0, most: Math.floor(numberOf(answers, "needles") / 2) }),
  },
  {
    id: "change",
    ask: () => "By how much may the length change to suit the motif? 0 for not at all",
    explain: "It may get longer or shorter by this; each row counts as something given up.",
    more: "Such as 1 cm. Only rows between the motif's two marks come or go.",
    isAsked: always,
    suggested: (answers) => roundLength(10, changeLimits(answers), ownUnit(answers)),
    parse: (text, answers) => lengthFrom(text, "the change", changeLimits(answers)),
  },
];
