import * as limits from "../../garment/read/limits.ts";
import { numberOf } from "../answers.ts";
import { lengthFrom, type Parsed, wholeFrom } from "../parsers.ts";
import { always, type Question } from "../question.ts";

/** Common beds by their needles, with their pitch; the mid and the coarse bed's needles are from memory. */
const usualPitches: ReadonlyMap<number, string> = new Map([
  [250, "3.6 mm"],
  [200, "4.5 mm"],
  [150, "6.5 mm"],
  [110, "9 mm"],
]);

/** Fewer needles hold no piece with a motif on it. */
const fewestNeedles = 10;

/** Beds are told in mm, so that is what a number without its unit is taken to mean. */
function pitchFrom(text: string): Parsed {
  const { least, most } = limits.pitchMm;
  const parsed = lengthFrom(text, "the pitch", { leastMm: least, mostMm: most });
  const number = /^\s*\d+(?:\.\d+)?\s*$/.test(text) ? Number(text) : undefined;
  if (!("problem" in parsed) || number === undefined || number === 0) return parsed;
  return {
    problem: parsed.problem,
    right: number >= least && number <= most ? `${number} mm` : `from ${least} mm to ${most} mm`,
  };
}

export const machineQuestions: readonly Question[] = [
  {
    id: "needles",
    ask: () => "How many needles does the bed have?",
    explain: "The bed is the machine's row of needles, both sides of the centre together.",
    more: "For example 200 on a standard bed: L100 to L1 and R1 to R100.",
    isAsked: always,
    suggested: () => "200",
    parse: (text) => wholeFrom(text, "the bed's needles", { ...limits.bedNeedles, least: fewestNeedles }),
  },
  {
    id: "pitch",
    ask: () => "How far is one needle from the next?",
    explain: "The pitch of the bed; the finer the yarn, the smaller it is.",
    more: "Usual are 3.6 mm (fine), 4.5 mm (standard), 6.5 mm (mid) and 9 mm (coarse).",
    isAsked: always,
    suggested: (answers) => usualPitches.get(numberOf(answers, "needles")) ?? "4.5 mm",
    parse: pitchFrom,
  },
];
