import { MM_PER_UNIT } from "../units/length.ts";

/** How a garment is meant to sit: what is added to the body's chest, in mm; below 0 it is smaller than the body. */
export interface NamedFit {
  readonly leastMm: number;
  readonly mostMm: number;
  /** What is reckoned with: the middle of the range. */
  readonly mm: number;
  readonly source: string;
}

const inInches = (leastInches: number, mostInches: number, source: string): NamedFit => ({
  leastMm: leastInches * MM_PER_UNIT.in,
  mostMm: mostInches * MM_PER_UNIT.in,
  mm: ((leastInches + mostInches) / 2) * MM_PER_UNIT.in,
  source,
});

const older = "the Craft Yarn Council's chart as it was quoted in 2011";

/** The fits by name. The council's older chart calls 1 to 2 in more than the body close and the body itself very close. */
export const FITS: ReadonlyMap<string, NamedFit> = new Map([
  [
    "very close",
    inInches(-4, -2, "the Craft Yarn Council's chart says negative ease; the amount is from memory"),
  ],
  ["close", inInches(0, 0, "the Craft Yarn Council's chart says zero ease")],
  ["standard", inInches(2, 4, older)],
  ["loose", inInches(4, 6, older)],
  // The chart has no upper end; the least is taken.
  ["oversized", inInches(6, 6, `${older}: 6 in and more`)],
]);
