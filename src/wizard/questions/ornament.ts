import * as limits from "../../garment/read/limits.ts";
import { type Answers, given, millimetres, numberOf } from "../answers.ts";
import { type LengthLimits, ownUnit, roundLength } from "../lengths.ts";
import { countFrom, lengthFrom, type Parsed, percentageFrom, wholeFrom, wordFrom } from "../parsers.ts";
import { always, type Question } from "../question.ts";
import { isCord, stitchMm } from "../sizes.ts";

const isCable = (answers: Answers): boolean => !isCord(answers);

const cordLimits = (answers: Answers): LengthLimits => {
  const stitches = numberOf(answers, "cord stitches");
  const { least, most } = limits.oneStitchMm;
  return {
    leastMm: Math.max(limits.swatchMm.least, least * stitches),
    mostMm: Math.min(limits.swatchMm.most, most * stitches),
  };
};

/** Common practice, no published source: a cord of the same yarn has about nine tenths of the cloth's stitches. */
const cordStitchesPerStitch = 0.9;

/** Cord stitches beside the cloth's, in length and width: beyond these one of the counts is most likely a slip. Judgement. */
const usualCordStitch = { least: 0.5, most: 2.5 };

function noted(parsed: Parsed, answers: Answers): Parsed {
  if ("problem" in parsed) return parsed;
  const cordMm = millimetres(parsed.answer)! / numberOf(answers, "cord stitches");
  const beside = cordMm / stitchMm(answers);
  if (beside >= usualCordStitch.least && beside <= usualCordStitch.most) return parsed;
  const mm = (value: number): string => `${Number(value.toPrecision(2))} mm`;
  return {
    ...parsed,
    note: `A cord stitch is ${mm(cordMm)} long then, and a stitch of the cloth ${mm(stitchMm(answers))} wide; usually they are much alike. Is that so?`,
  };
}

/** What a cord or a cable usually has, and what can still be worked by hand. */
const spreadLimits = { least: 2, most: 20 };
const crossLimits = { least: 1, most: 10 };
const intervalLimits = { least: 2, most: 40 };

export const ornamentQuestions: readonly Question[] = [
  {
    id: "ornament",
    ask: () => "A cord or a cable?",
    explain: "A cord is a tube laid on the cloth; in a cable the cloth's stitches cross.",
    more: "A cord is made beforehand and hung on the needles every few rows.",
    isAsked: always,
    suggested: () => "cord",
    choices: () => ["cord", "cable"],
    parse: (text) => wordFrom(text, ["cord", "cable"]),
  },
  {
    id: "cord needles",
    ask: () => "On how many needles do you knit the cord?",
    explain: "The cord is knitted by itself, usually on 3 to 5 needles; 2 and 6 go too.",
    more: "It slips every other pass. The more needles, the thicker the cord.",
    isAsked: isCord,
    suggested: () => "3",
    parse: (text) => wholeFrom(text, "the cord's needles", limits.usualCordNeedles),
  },
  {
    id: "cord stitches",
    ask: () => "How many stitches did you count along a piece of cord?",
    explain: "One cord stitch is one round of the tube; count them along one column.",
    more: "Let the cord rest, and measure it without pulling. Half stitches count.",
    isAsked: isCord,
    suggested: (answers) =>
      String(Math.max(1, Math.round(numberOf(answers, "stitches") * cordStitchesPerStitch))),
    parse: (text) => countFrom(text, "cord stitches", limits.swatchCount),
  },
  {
    id: "cord over",
    ask: () => "Over what length of cord?",
    explain: "A longer piece gives a surer count: too short a cord ruins the piece.",
    more: "A number and its unit, such as 10 cm or 4 in.",
    isAsked: isCord,
    suggested: (answers) =>
      roundLength(stitchMm(answers) * numberOf(answers, "stitches"), cordLimits(answers), ownUnit(answers)),
    parse: (text, answers) =>
      noted(
        lengthFrom(text, "the length of cord", {
          ...cordLimits(answers),
          because: `${given(answers, "cord stitches")} stitches were counted over it`,
        }),
        answers,
      ),
  },
  {
    id: "spread",
    ask: () => "How many needles from the middle should the cord reach?",
    explain: "The spread: how far its two arms swing left and right as they cross.",
    more: "The fit may take a few more or fewer, and says so. Usual are 3 to 6.",
    isAsked: isCord,
    suggested: () => "3",
    parse: (text) => wholeFrom(text, "the spread", spreadLimits),
  },
  {
    id: "cross",
    ask: () => "How many stitches change places with how many?",
    explain: "A cable's crossing: 3 means three stitches over three.",
    more: "Two over two and three over three are usual; more strain the needles.",
    isAsked: isCable,
    suggested: () => "2",
    parse: (text) => wholeFrom(text, "the stitches that cross", crossLimits),
  },
  {
    id: "draw-in",
    ask: () => "By how much do the crossed stitches draw together?",
    explain: "The draw-in: how much narrower crossed stitches lie than plain ones.",
    more: "Measure it on a swatch with the cable; 0 % if you do not know.",
    isAsked: isCable,
    suggested: () => "0 %",
    parse: (text) => percentageFrom(text, "the draw-in", limits.drawIn),
  },
  {
    id: "interval",
    ask: (answers) =>
      isCord(answers)
        ? "About how many rows from one hanging of the cord to the next?"
        : "About how many rows from one crossing to the next?",
    explain: "The interval. The fit may take two rows more or fewer, and says so.",
    more: "Usual are 4 for a cord, 6 to 8 for a cable; even numbers are easier.",
    isAsked: always,
    suggested: (answers) => (isCord(answers) ? "4" : "6"),
    parse: (text) => wholeFrom(text, "the interval", intervalLimits),
  },
];
