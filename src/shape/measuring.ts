import type { Stitch } from "../cloth/gauge.ts";
import { inCentimetres, listed } from "../report/words.ts";
import type { Size } from "../sizes/body.ts";
import { BODY_MEASURES, type BodyMeasure } from "../sizes/size-table.ts";
import { type Choices, chosen } from "./chosen.ts";
import type { Measurement, Search, Sum } from "./description.ts";
import { readSum, sumName } from "./sums.ts";
import { ShapeStop } from "./trouble.ts";

/** What the measurements of one piece come from. */
export interface Given {
  /** The shape's name, for messages. */
  readonly shape: string;
  readonly measurements: Readonly<Record<string, Measurement>>;
  /** Lengths in mm that the file states, by the measurement's name. */
  readonly written: ReadonlyMap<string, number>;
  readonly choices: Choices;
  readonly size?: Size;
  /** The ease of the named fit, in mm; 0 where none is named. */
  readonly fitMm: number;
  readonly stitch: Stitch;
}

/** A measurement that the file does not state, and what stands behind it. */
export type Taken =
  | { readonly from: "size"; readonly measurement: BodyMeasure; readonly mm: number }
  | {
      readonly from: "assumption";
      readonly measurement: string;
      readonly mm: number;
      readonly because: string;
    };

/** Works out measurements as they are asked for, so that only those are needed that the piece is made of. */
export interface Measuring {
  /** A measurement, in mm. @throws ShapeStop where it is not known or can't be */
  readonly length: (measurement: string) => number;
  /** A sum over the measurements, in mm. @throws ShapeStop where one of them is not known or can't be */
  readonly sum: (text: string) => number;
  /** Looks whether all measurements of some sums are known. @throws ShapeStop that names every one that is not */
  readonly require: (sums: readonly string[]) => void;
  /** What was used so far and does not stand in the file. */
  readonly taken: () => readonly Taken[];
}

/** Names that sums may use beside the measurements. */
const CLOTH_NAMES = ["fit", "stitch", "row"] as const;

export function measuring(given: Given): Measuring {
  const byName = new Map(Object.keys(given.measurements).map((name) => [sumName(name), name]));
  const known = new Set([...byName.keys(), ...CLOTH_NAMES]);
  const cloth = new Map<string, number>([
    ["fit", given.fitMm],
    ["stitch", given.stitch.widthMm],
    ["row", given.stitch.heightMm],
  ]);
  const found = new Map<string, number>();
  const taken = new Map<string, Taken>();

  function length(measurement: string): number {
    const before = found.get(measurement);
    if (before !== undefined) return before;
    const mm = firstLength(measurement);
    checkSign(given, measurement, mm, sumsFor(measurement).flatMap(measurementsIn));
    found.set(measurement, mm);
    return mm;
  }

  function firstLength(measurement: string): number {
    const written = given.written.get(measurement);
    if (written !== undefined) return written;
    const body = isBodyMeasure(measurement) ? given.size?.lengths.get(measurement) : undefined;
    if (body && isBodyMeasure(measurement)) {
      taken.set(measurement, { from: "size", measurement, mm: body.mm });
      return body.mm;
    }
    const sums = sumsFor(measurement);
    const sum = sums.length === 1 ? sums[0] : sums.find((one) => measurementsIn(one).every(isKnown));
    if (sum === undefined) throw new ShapeStop(missing(given, [measurement]));
    const mm =
      typeof sum === "object" && "make" in sum ? sought(sum, measurement) : valueIn(textOf(sum), measurement);
    if (typeof sum !== "string")
      taken.set(measurement, { from: "assumption", measurement, mm, because: sum.because });
    return mm;
  }

  function sumsFor(measurement: string): readonly Sum[] {
    const { otherwise } = given.measurements[measurement]!;
    const sums = otherwise === undefined ? undefined : chosen(otherwise, given.choices);
    return sums === undefined ? [] : isList(sums) ? sums : [sums];
  }

  /** What a sum is made from; what is sought hangs on what its measure is to equal, and is looked into only then. */
  const namesOf = (sum: Sum): readonly string[] => readSum(textOf(sum), known).names;

  function sought(search: Search, measurement: string): number {
    const goalMm = length(search.equal);
    const madeMm = (mm: number): number => {
      const tried = measuring({ ...given, written: new Map([...given.written, [measurement, mm]]) });
      return tried.length(search.make);
    };
    let [least, most] = [valueIn(search.from, measurement), valueIn(search.to, measurement)];
    if (madeMm(least) > goalMm || madeMm(most) < goalMm)
      throw new ShapeStop({
        code: "shape-impossible",
        message: `this ${given.shape} can't be made: ${search.trouble}`,
        found: `${search.equal} ${inCentimetres(goalMm)}, ${search.make} from ${inCentimetres(madeMm(least))} to ${inCentimetres(madeMm(most))}`,
        expected: search.right,
        blame: search.blame,
      });
    while (most - least > NEAR_ENOUGH_MM) {
      const middle = (least + most) / 2;
      if (madeMm(middle) < goalMm) least = middle;
      else most = middle;
    }
    return rounded((least + most) / 2);
  }

  const measurementsIn = (sum: Sum): readonly string[] =>
    namesOf(sum).flatMap((name) => byName.get(name) ?? []);

  /** Whether a measurement is written, or in the size, or follows from others that are. */
  function isKnown(measurement: string): boolean {
    if (given.written.has(measurement)) return true;
    if (isBodyMeasure(measurement) && given.size?.lengths.has(measurement)) return true;
    return sumsFor(measurement).some((sum) => measurementsIn(sum).every(isKnown));
  }

  /** The measurements that would have to be written for one to be known. */
  function lacking(measurement: string): readonly string[] {
    if (isKnown(measurement)) return [];
    const sums = sumsFor(measurement);
    return sums.length === 1 ? measurementsIn(sums[0]!).flatMap(lacking) : [measurement];
  }

  function valueIn(text: string, measurement: string): number {
    const sum = readSum(text, known);
    const values = new Map(sum.names.map((name) => [name, cloth.get(name) ?? length(byName.get(name)!)]));
    const value = sum.value(values);
    if (value !== undefined) return rounded(value);
    throw new ShapeStop({
      code: "shape-impossible",
      message: `the ${measurement} of a ${given.shape} can't be worked out from these measurements`,
      found: [...values].map(([name, mm]) => `${byName.get(name) ?? name} ${inCentimetres(mm)}`).join(", "),
      expected: `${measurement}: 20 cm, or what it measures`,
      blame: sum.names.map((name) => byName.get(name) ?? name),
    });
  }

  function require(sums: readonly string[]): void {
    const lacked = [...new Set(sums.flatMap(measurementsIn).flatMap(lacking))];
    if (lacked.length > 0) throw new ShapeStop(missing(given, lacked));
  }

  return { length, sum: (text) => valueIn(text, "outline"), require, taken: () => [...taken.values()] };
}

/** Kept to a millionth of a millimetre, as the lengths of a file are. */
const rounded = (mm: number): number => Math.round(mm * 1e6) / 1e6;

const isBodyMeasure = (name: string): name is BodyMeasure => BODY_MEASURES.some((one) => one === name);

const isList = (sums: Sum | readonly Sum[]): sums is readonly Sum[] => Array.isArray(sums);

const textOf = (sum: Sum): string =>
  typeof sum === "string" ? sum : "make" in sum ? sumName(sum.equal) : sum.sum;

/** What is sought is found to this; far below a row of the finest cloth. */
const NEAR_ENOUGH_MM = 0.01;

function checkSign(
  { shape, measurements }: Given,
  measurement: string,
  mm: number,
  madeOf: readonly string[],
): void {
  const { from, means } = measurements[measurement]!;
  if (from === "below nothing" || mm > 0 || (mm === 0 && from === "nothing")) return;
  throw new ShapeStop({
    code: "shape-impossible",
    message: `the ${measurement} of this ${shape} (${means}) comes out as ${mm < 0 ? "less than " : ""}nothing`,
    found: inCentimetres(mm),
    expected: "larger measurements",
    blame: [measurement, ...madeOf],
  });
}

/** @param lacked the measurements that would have to be written, at least one */
function missing({ shape, size, measurements }: Given, lacked: readonly string[]): ShapeStop["trouble"] {
  const [first] = lacked;
  const needs =
    lacked.length === 1 && first !== undefined
      ? `a ${shape} needs its ${first}: ${measurements[first]!.means}`
      : `a ${shape} needs its ${listed(lacked)}`;
  const write = lacked.map((one) => `${one}: 20 cm, or what it measures`).join("; ");
  const couldBeSized = lacked.some(isBodyMeasure);
  return {
    code: "missing-measurement",
    message: size && couldBeSized ? `${needs}; not all was seen in the table for ${size.name}` : needs,
    found: "",
    expected: !size && couldBeSized ? `${write}, or a size: size: woman M` : write,
    blame: ["size"],
  };
}
