import { nearest } from "../cloth/gauge.ts";
import { type Answers, given, millimetres, mmOf, numberOf, rowsOf } from "./answers.ts";
import type { LengthLimits } from "./lengths.ts";

/** A named height of the piece that was described. */
export interface WizardMark {
  readonly name: string;
  readonly heightMm: number;
}

export const stitchMm = (answers: Answers): number => mmOf(answers, "over") / numberOf(answers, "stitches");
function rowMm(answers: Answers): number {
  const { rows, over } = rowsOf(answers);
  return (over === undefined ? mmOf(answers, "over") : millimetres(over)!) / Number(rows);
}

export const isCord = ({ ornament }: Answers): boolean => ornament === "cord";
export const hasNeck = ({ shape }: Answers): boolean => shape === "neck";
export const isTapered = ({ shape }: Answers): boolean => shape === "tapered";

/** The widest cloth that the bed's needles make; a piece has as many at both sides of the centre. */
export const bedMm = (answers: Answers): number =>
  2 * Math.floor(numberOf(answers, "needles") / 2) * stitchMm(answers);

/** Stitches that stay beside a neck, both sides together: rounding to whole needles leaves at least one on each. */
const stitchesBesideNeck = 4;
const narrowestStitches = 2;

export const widthLimits = (answers: Answers): LengthLimits => ({
  leastMm:
    (hasNeck(answers) ? stitchesBesideNeck + 2 * narrowestStitches : narrowestStitches) * stitchMm(answers),
  mostMm: bedMm(answers),
});

/** Fewer rows hold no motif; more than 5 m are longer than any piece that is knitted in one. */
const fewestRows = 20;
const tallestMm = 5000;

export const heightLimits = (answers: Answers): LengthLimits => ({
  leastMm: fewestRows * rowMm(answers),
  mostMm: tallestMm,
});

export const taperLimits = (answers: Answers): LengthLimits => ({
  leastMm: 2 * rowMm(answers),
  mostMm: mmOf(answers, "height"),
});

/** Rows that stay below a neck, and rows between the marks of a motif: so few that no motif is kept out by them. */
const rowsBelowNeck = 8;
const fieldRows = 4;

export const neckDepthLimits = (answers: Answers): LengthLimits => ({
  leastMm: 2 * rowMm(answers),
  mostMm: mmOf(answers, "height") - rowsBelowNeck * rowMm(answers),
});

export const neckWidthLimits = (answers: Answers): LengthLimits => ({
  leastMm: narrowestStitches * stitchMm(answers),
  mostMm: mmOf(answers, "width") - stitchesBesideNeck * stitchMm(answers),
});

/** The highest place a motif may reach: a neck cuts away what lies above its lowest point. */
export const ceilingMm = (answers: Answers): number =>
  mmOf(answers, "height") - (hasNeck(answers) ? mmOf(answers, "neck depth") : 0);

/** Where a motif may start, and so how high a hem may be. */
export const startLimits = (answers: Answers): LengthLimits => ({
  leastMm: 0,
  mostMm: ceilingMm(answers) - fieldRows * rowMm(answers),
});

/** The marks that the piece has, rising, as far as a motif may reach. */
export function marksOf(answers: Answers): readonly WizardMark[] {
  const { hem } = answers;
  const heightMm = mmOf(answers, "height");
  const taperMm = isTapered(answers) ? mmOf(answers, "taper") : heightMm;
  return [
    { name: "cast-on", heightMm: 0 },
    ...(hem !== undefined && mmOf(answers, "hem") > 0
      ? [{ name: hemMark, heightMm: mmOf(answers, "hem") }]
      : []),
    ...(taperMm < heightMm ? [{ name: taperMark, heightMm: taperMm }] : []),
    { name: hasNeck(answers) ? "neck" : "bind-off", heightMm: ceilingMm(answers) },
  ].sort((a, b) => a.heightMm - b.heightMm);
}

export const hemMark = "hem top";
export const taperMark = "taper top";

export const startMarks = (answers: Answers): readonly WizardMark[] =>
  within(marksOf(answers), startLimits(answers));

/** Where a motif may end, once its start is known. */
export const endLimits = (answers: Answers): LengthLimits => ({
  leastMm: startMm(answers) + fieldRows * rowMm(answers),
  mostMm: ceilingMm(answers),
});
export const endMarks = (answers: Answers): readonly WizardMark[] =>
  within(marksOf(answers), { ...endLimits(answers), mostMm: Number.POSITIVE_INFINITY }, ceilingMark(answers));

/** The mark at which a motif ends at the latest. */
export const ceilingMark = (answers: Answers): string => (hasNeck(answers) ? "neck" : "bind-off");

const within = (
  marks: readonly WizardMark[],
  { leastMm, mostMm }: LengthLimits,
  always?: string,
): readonly WizardMark[] =>
  marks.filter(({ name, heightMm }) => name === always || (heightMm >= leastMm && heightMm <= mostMm));

/** The height of a mark's name, or of a length that was answered instead. */
export function heightOf(answers: Answers, id: "from" | "to"): number {
  const name = given(answers, id);
  return marksOf(answers).find((mark) => mark.name === name)?.heightMm ?? mmOf(answers, id);
}

const startMm = (answers: Answers): number => heightOf(answers, "from");

/** Rows in a length, to the nearest. */
export const rowsIn = (mm: number, answers: Answers): number => nearest(mm / rowMm(answers));
