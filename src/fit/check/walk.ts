import { evaluate } from "../../motif/evaluate.ts";
import type { Expression } from "../../motif/expression.ts";
import type { Anchor, Blocks, CordMotif, Motif } from "../../motif/motif.ts";

/** Whole repeats worked with one choice of values. */
export interface Run {
  readonly values: Values;
  readonly repeats: number;
}

/**
 * A motif walked hanging by hanging straight from its anchors, apart from the tracing that the program is made
 * from, so that a fault there cannot hide here.
 */
export interface Walk {
  readonly rows: number;
  readonly strands: readonly { readonly name: string; readonly points: readonly WalkPoint[] }[];
}

export interface WalkPoint {
  /** Places (needle middles for a cord, boundaries for a cable's ends) from the column's centre. */
  readonly from: number;
  readonly to: number;
  readonly needle: number;
  readonly row: number;
  /** Index of the run that the point belongs to. */
  readonly run: number;
}

export type Values = ReadonlyMap<string, number>;

/** A motif over a column of runs, the first of which brings the lead-in. */
export function walk(motif: Motif, runs: readonly Run[]): Walk {
  const rows = runs.reduce(
    (sum, { values, repeats }) => sum + repeats * numberOf(motif.repeat, values),
    runs[0] ? numberOf(motif.lead, runs[0].values) : 0,
  );
  if (motif.kind === "cable") {
    const points = anchorsOf(motif, motif.crossings, runs).map((point) => {
      const [left, right] = motif.cross.map((stitches) => numberOf(stitches, runs[point.run]!.values));
      return { ...point, from: point.needle - left!, to: point.needle + right! };
    });
    return { rows, strands: [{ name: "crossing", points }] };
  }
  return { rows, strands: motif.order.map((name) => ({ name, points: hung(motif, name, runs) })) };
}

const numberOf = (expression: Expression, values: Values): number => {
  const value = evaluate(expression, values);
  return typeof value === "number" ? value : Number.NaN;
};

type Place = Pick<WalkPoint, "needle" | "row" | "run">;

function anchorsOf(motif: Motif, blocks: Blocks, runs: readonly Run[]): readonly Place[] {
  const places: Place[] = [];
  let base = 0;
  runs.forEach(({ values, repeats }, run) => {
    const put = (anchor: Anchor): void => {
      places.push({
        needle: numberOf(anchor.needle, values),
        row: base + numberOf(anchor.row, values),
        run,
      });
    };
    if (run === 0) {
      for (const anchor of [blocks.start, ...blocks.leadIn]) put(anchor);
      base += numberOf(motif.lead, values);
    }
    for (let time = 0; time < repeats; time++) {
      blocks.repeat.forEach(put);
      base += numberOf(motif.repeat, values);
    }
  });
  return places;
}

function hung(motif: CordMotif, name: string, runs: readonly Run[]): WalkPoint[] {
  const strand = motif.strands.find((one) => one.name === name)!;
  return anchorsOf(motif, strand, runs).map((place) => {
    // A needle takes up the width from its inner to its outer boundary.
    const outer = place.needle;
    const inner = place.needle - Math.sign(place.needle);
    return { ...place, from: Math.min(inner, outer), to: Math.max(inner, outer) };
  });
}
