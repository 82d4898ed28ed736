import { evaluate } from "../../motif/evaluate.ts";
import type { Expression } from "../../motif/expression.ts";
import type { Anchor, Blocks, Cable, CableMotif, CordMotif, Motif } from "../../motif/motif.ts";

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
  /** What of a column the motif takes up at all its rows: a band's repeat, needles out of work and the next one outward. */
  readonly standing: readonly Extent[];
  /** Edge stitches at the ends of the whole panel. */
  readonly edge: { readonly left: number; readonly right: number };
}

/** From one boundary to another, counted from the column's centre. */
export interface Extent {
  readonly from: number;
  readonly to: number;
}

export interface WalkPoint extends Extent {
  readonly needle: number;
  readonly row: number;
  /** Index of the run that the point belongs to. */
  readonly run: number;
  /** Cord stitches that the file fixes for the stretch that ends here. */
  readonly count?: number;
}

export type Values = ReadonlyMap<string, number>;

/** A motif over a column of runs, at least one; the first brings the lead-in. */
export function walk(motif: Motif, runs: readonly Run[]): Walk {
  const { values } = runs[0]!;
  const rows = runs.reduce(
    (sum, run) => sum + run.repeats * numberOf(motif.repeat, run.values),
    numberOf(motif.lead, values),
  );
  return {
    rows,
    strands: walksOf(motif, runs),
    standing: standingIn(motif, values),
    edge: edgeOf(motif, values),
  };
}

function standingIn(motif: Motif, values: Values): readonly Extent[] {
  switch (motif.kind) {
    case "cord":
      return [];
    case "cable":
      return motif.ladders.map((ladder) => {
        const needle = numberOf(ladder, values);
        const { from, to } = widthOf(needle);
        return needle < 0 ? { from: from - 1, to } : { from, to: to + 1 };
      });
    case "band": {
      const stitches = numberOf(motif.stitches, values);
      return [{ from: -Math.floor(stitches / 2), to: Math.ceil(stitches / 2) }];
    }
  }
}

function edgeOf(motif: Motif, values: Values): Walk["edge"] {
  if (motif.kind !== "band") return { left: 0, right: 0 };
  const [left, right] = motif.edge.map((stitches) => numberOf(stitches, values));
  return { left: left!, right: right! };
}

/** A needle takes up the width from its inner to its outer boundary. */
function widthOf(needle: number): Extent {
  const inner = needle - Math.sign(needle);
  return { from: Math.min(inner, needle), to: Math.max(inner, needle) };
}

function walksOf(motif: Motif, runs: readonly Run[]): Walk["strands"] {
  switch (motif.kind) {
    case "cord":
      return namesOf(motif, runs).map((name) => ({ name, points: hung(motif, name, runs) }));
    case "cable":
      return motif.cables.map((cable) => ({ name: cable.name, points: crossed(motif, cable, runs) }));
    case "band":
      return [];
  }
}

export const numberOf = (expression: Expression, values: Values): number => {
  const value = evaluate(expression, values);
  return typeof value === "number" ? value : Number.NaN;
};

type Place = Pick<WalkPoint, "needle" | "row" | "run" | "count">;

/** Blocks, the values that their expressions are worked out with, and where it goes on after a repeat. */
interface Known {
  readonly blocks: Blocks;
  readonly values: Values;
  readonly next: string;
}

function placesOf(
  motif: Motif,
  runs: readonly Run[],
  name: string,
  known: (name: string, values: Values) => Known,
): readonly Place[] {
  const places: Place[] = [];
  let base = 0;
  let here = name;
  runs.forEach((one, run) => {
    const put = (anchor: Anchor, values: Values): void => {
      places.push({
        needle: numberOf(anchor.needle, values),
        row: base + numberOf(anchor.row, values),
        run,
        ...(anchor.count && { count: numberOf(anchor.count, values) }),
      });
    };
    if (run === 0) {
      const { blocks, values } = known(here, one.values);
      for (const anchor of [blocks.start, ...blocks.leadIn]) put(anchor, values);
      base += numberOf(motif.lead, one.values);
    }
    for (let time = 0; time < one.repeats; time++) {
      const { blocks, values, next } = known(here, one.values);
      for (const anchor of blocks.repeat) put(anchor, values);
      base += numberOf(motif.repeat, one.values);
      here = next;
    }
  });
  return places;
}

/** Every strand's name, the numbered ones with their numbers. */
const namesOf = (motif: CordMotif, runs: readonly Run[]): readonly string[] =>
  motif.strands.flatMap(({ name, each }) => {
    if (!each) return [name];
    const { values } = runs[0]!;
    const [from, to] = [numberOf(each.from, values), numberOf(each.to, values)];
    return Array.from({ length: to - from + 1 }, (_, index) => `${name} ${from + index}`);
  });

function strandCalled(motif: CordMotif, called: string, values: Values): Known {
  const plain = motif.strands.find((one) => !one.each && one.name === called);
  if (plain) {
    const next = plain.next && "strand" in plain.next ? plain.next.strand : called;
    return { blocks: plain, values, next };
  }
  const space = called.lastIndexOf(" ");
  const [family, number] = [called.slice(0, space), Number(called.slice(space + 1))];
  const strand = motif.strands.find((one) => one.each && one.name === family)!;
  const own = new Map(values).set(strand.each!.index, number);
  const next = strand.next && "number" in strand.next ? numberOf(strand.next.number, own) : number;
  return { blocks: strand, values: own, next: `${family} ${next}` };
}

const hung = (motif: CordMotif, name: string, runs: readonly Run[]): WalkPoint[] =>
  placesOf(motif, runs, name, (called, values) => strandCalled(motif, called, values)).map((place) => ({
    ...place,
    ...widthOf(place.needle),
  }));

const crossed = (motif: CableMotif, cable: Cable, runs: readonly Run[]): WalkPoint[] =>
  placesOf(motif, runs, cable.name, (next, values) => ({ blocks: cable, values, next })).map((place) => {
    const [left, right] = cable.cross.map((stitches) => numberOf(stitches, runs[place.run]!.values));
    return { ...place, from: place.needle - left!, to: place.needle + right! };
  });
