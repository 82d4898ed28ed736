import { nearest } from "../../diagnostics/nearest.ts";
import { type Answers, given, mmOf } from "../answers.ts";
import { type LengthLimits, ownUnit, roundLength, shownLength } from "../lengths.ts";
import { lengthFrom, nameFrom, type Parsed, wordFrom } from "../parsers.ts";
import { always, type Question } from "../question.ts";
import {
  bedMm,
  ceilingMm,
  hasNeck,
  heightLimits,
  isTapered,
  neckDepthLimits,
  neckWidthLimits,
  startLimits,
  taperLimits,
  widthLimits,
} from "../sizes.ts";

/** Words by which a piece's name tells its shape. */
const shapeWords = { tapered: /sleeve|arm/i, neck: /front|back|body/i };
const namesOfShapes = ["sleeve", "front", "back", "body"];

/** A name; one that is nearly a word that tells the shape is most likely a slip of the pen. */
function pieceFrom(text: string): Parsed {
  const parsed = nameFrom(text, "the piece");
  if ("problem" in parsed || Object.values(shapeWords).some((words) => words.test(parsed.answer)))
    return parsed;
  const near = nearest(parsed.answer, namesOfShapes);
  return near === undefined
    ? parsed
    : { ...parsed, note: `Did you mean ${near}? It is called ${parsed.answer} now.` };
}

const shapes = ["straight", "tapered", "neck"];

/** Sizes to start from, of our own invention. */
const usualMm = {
  straight: { width: 260, height: 500 },
  tapered: { width: 220, height: 430 },
  neck: { width: 460, height: 580 },
} as const;

const usual = (answers: Answers) => usualMm[given(answers, "shape") as keyof typeof usualMm];

const suggest = (answers: Answers, mm: number, limits: LengthLimits): string =>
  roundLength(mm, limits, ownUnit(answers));

const bedWords = (answers: Answers): string =>
  `${given(answers, "needles")} needles make ${shownLength(bedMm(answers), ownUnit(answers))} of cloth at your gauge`;

export const pieceQuestions: readonly Question[] = [
  {
    id: "piece",
    ask: () => "Which piece does it lie on?",
    explain: "A piece is what is knitted in one go: a sleeve, a front, a scarf.",
    more: "A name in your own words. More pieces can be written into the file later.",
    isAsked: always,
    suggested: () => "sleeve",
    parse: pieceFrom,
  },
  {
    id: "shape",
    ask: () => "What shape does it have?",
    explain: "Straight all the way; tapered, as a sleeve; with a neck, as a front.",
    more: "Other shapes (steps, slopes at one side) can be written into the file later.",
    isAsked: always,
    suggested: ({ piece = "" }) =>
      shapeWords.tapered.test(piece) ? "tapered" : shapeWords.neck.test(piece) ? "neck" : "straight",
    choices: () => shapes,
    parse: (text) => wordFrom(text, shapes),
  },
  {
    id: "width",
    ask: (answers) => (isTapered(answers) ? "How wide is it at the cast-on edge?" : "How wide is it?"),
    explain: "The full width, flat, the same at both sides of the centre.",
    more: "Such as 22 cm. It is counted in whole needles, an even number of them.",
    isAsked: always,
    suggested: (answers) =>
      suggest(answers, Math.min(usual(answers).width, bedMm(answers) * 0.75), widthLimits(answers)),
    parse: (text, answers) =>
      lengthFrom(text, "the width", { ...widthLimits(answers), because: bedWords(answers) }),
  },
  {
    id: "height",
    ask: () => "How long is it, from the cast-on edge to the bind-off?",
    explain: "The length is counted in whole rows, to the nearest.",
    more: "Measured straight up. By how much it may change is asked later.",
    isAsked: always,
    suggested: (answers) => suggest(answers, usual(answers).height, heightLimits(answers)),
    parse: (text, answers) => lengthFrom(text, "the length", heightLimits(answers)),
  },
  {
    id: "top width",
    ask: () => "How wide is it at its top?",
    explain: "Between the cast-on edge and there the sides slope evenly.",
    more: "Wider than the cast-on edge for a sleeve knitted upward, or narrower.",
    isAsked: isTapered,
    suggested: (answers) => suggest(answers, mmOf(answers, "width") * 1.5, widthLimits(answers)),
    parse: (text, answers) =>
      lengthFrom(text, "the top's width", { ...widthLimits(answers), because: bedWords(answers) }),
  },
  {
    id: "taper",
    ask: () => "At what height do the sides stop sloping?",
    explain: "From there up the piece keeps its width; often at the underarm.",
    more: "From the cast-on edge. The whole length means that it slopes to the top.",
    isAsked: isTapered,
    suggested: (answers) => suggest(answers, mmOf(answers, "height") * 0.92, taperLimits(answers)),
    parse: (text, answers) =>
      lengthFrom(text, "the height", {
        ...taperLimits(answers),
        because: `the piece is ${given(answers, "height")} long`,
      }),
  },
  {
    id: "neck depth",
    ask: () => "How deep is the neck?",
    explain: "From the bind-off down to its lowest point; the motif ends there or lower.",
    more: "Above that point the two halves are knitted one after the other.",
    isAsked: hasNeck,
    suggested: (answers) =>
      suggest(answers, Math.min(80, mmOf(answers, "height") / 4), neckDepthLimits(answers)),
    parse: (text, answers) =>
      lengthFrom(text, "the neck's depth", {
        ...neckDepthLimits(answers),
        because: `the piece is ${given(answers, "height")} long`,
      }),
  },
  {
    id: "neck width",
    ask: () => "How wide is the neck at its top?",
    explain: "The full width of the opening at the bind-off; below it gets narrower.",
    more: "Its lowest point is 4 tenths as wide. A rounder curve can be written later.",
    isAsked: hasNeck,
    suggested: (answers) => suggest(answers, mmOf(answers, "width") * 0.36, neckWidthLimits(answers)),
    parse: (text, answers) =>
      lengthFrom(text, "the neck's width", {
        ...neckWidthLimits(answers),
        because: `the piece is ${given(answers, "width")} wide`,
      }),
  },
  {
    id: "hem",
    ask: () => "How high is the hem or rib at the bottom? 0 for none",
    explain: "It becomes a mark, a height with a name: hem top. Motifs go between marks.",
    more: "The rows below it stay free of the motif if you let it start there.",
    isAsked: always,
    suggested: (answers) => suggest(answers, Math.min(50, ceilingMm(answers) / 6), startLimits(answers)),
    parse: (text, answers) =>
      lengthFrom(text, "the hem", {
        ...startLimits(answers),
        because: `the motif needs some rows above it, and ${hasNeck(answers) ? "the neck begins" : "the piece ends"} at ${shownLength(ceilingMm(answers), ownUnit(answers))}`,
      }),
  },
];
