import { position } from "../cloth/bed.ts";
import type { Path } from "../diagnostics/path.ts";
import { evaluate } from "./evaluate.ts";
import type { Expression } from "./expression.ts";
import type { Anchor, Blocks, CableMotif, CordMotif, Motif } from "./motif.ts";

/** A value for each of a motif's quantities. */
export type Values = ReadonlyMap<string, number>;

/** A motif with its quantities chosen, in needles from the panel's centre and rows. */
export interface Trace {
  readonly leadRows: number;
  readonly repeatRows: number;
  readonly reach: Reach;
  /** Strands of a cord motif in order of work; empty for a cable. */
  readonly strands: readonly StrandTrace[];
  /** Crossings of a cable motif; none for a cord. */
  readonly cable?: CableTrace;
}

/** Needles each side of the panel's centre that the motif reaches. */
export interface Reach {
  readonly left: number;
  readonly right: number;
}

export interface Point {
  readonly needle: number;
  readonly row: number;
}

/** Points of the three blocks; rows count from the start of the block. */
export interface BlockTrace {
  readonly start: Point;
  readonly leadIn: readonly Point[];
  readonly repeat: readonly Point[];
}

export interface StrandTrace extends BlockTrace {
  readonly name: string;
}

/** Here a point's `needle` is the boundary in the middle of the crossing (0 = between L1 and R1). */
export interface CableTrace extends BlockTrace {
  readonly left: number;
  readonly right: number;
}

/** Why a motif cannot be worked with some values; `path` is the expression it is about. */
export interface TraceProblem {
  readonly path: Path;
  readonly problem: string;
}

export const isProblem = (result: Trace | TraceProblem): result is TraceProblem => "problem" in result;

/** Works out a motif for given values, or says why it cannot be worked with them. */
export function traceMotif(motif: Motif, values: Values): Trace | TraceProblem {
  try {
    const leadRows = count(motif.lead, values, "the lead-in", 0);
    const repeatRows = count(motif.repeat, values, "a repeat", 1);
    return motif.kind === "cord"
      ? traceCord(motif, values, leadRows, repeatRows)
      : traceCable(motif, values, leadRows, repeatRows);
  } catch (thrown) {
    if (thrown instanceof Refusal) return { path: thrown.expression.path, problem: thrown.message };
    throw thrown;
  }
}

function traceCord(motif: CordMotif, values: Values, leadRows: number, repeatRows: number): Trace {
  const strands = motif.order.map((name) => {
    const strand = motif.strands.find((one) => one.name === name)!;
    return { name, ...traceBlocks(strand, values, leadRows, repeatRows, needleOf) };
  });
  const needles = strands.flatMap(({ start, leadIn, repeat }) => [start, ...leadIn, ...repeat]);
  return {
    leadRows,
    repeatRows,
    strands,
    reach: {
      left: Math.max(0, ...needles.map(({ needle }) => -needle)),
      right: Math.max(0, ...needles.map(({ needle }) => needle)),
    },
  };
}

function traceCable(motif: CableMotif, values: Values, leadRows: number, repeatRows: number): Trace {
  const left = count(motif.cross[0], values, "the stitches crossed on the left", 1);
  const right = count(motif.cross[1], values, "the stitches crossed on the right", 1);
  const blocks = traceBlocks(motif.crossings, values, leadRows, repeatRows, boundaryOf);
  const middles = [blocks.start, ...blocks.leadIn, ...blocks.repeat].map(({ needle }) => needle);
  return {
    leadRows,
    repeatRows,
    strands: [],
    cable: { left, right, ...blocks },
    reach: {
      left: Math.max(0, ...middles.map((middle) => left - middle)),
      right: Math.max(0, ...middles.map((middle) => middle + right)),
    },
  };
}

type PlaceOf = (expression: Expression, values: Values) => number;

/** Anchors to points, refusing rows that do not rise and a repeat that does not end where it began. */
function traceBlocks(
  blocks: Blocks,
  values: Values,
  leadRows: number,
  repeatRows: number,
  placeOf: PlaceOf,
): BlockTrace {
  const pointOf = (anchor: Anchor): Point => ({
    needle: placeOf(anchor.needle, values),
    row: count(anchor.row, values, "a row", 0),
  });
  const start = pointOf(blocks.start);
  const leadIn = blocks.leadIn.map(pointOf);
  const repeat = blocks.repeat.map(pointOf);
  mustRise([start, ...leadIn], blocks.leadIn, leadRows, "the lead-in");
  const beforeRepeat: Point = { needle: 0, row: (leadIn.at(-1) ?? start).row - leadRows };
  mustRise([beforeRepeat, ...repeat], blocks.repeat, repeatRows, "the repeat");
  const began = (leadIn.at(-1) ?? start).needle;
  const lastAnchor = blocks.repeat.at(-1);
  if (lastAnchor && repeat.at(-1)!.needle !== began)
    refuse(
      lastAnchor.needle,
      values,
      `the repeat must end where it began, at ${began}, and this comes out as ${repeat.at(-1)!.needle}`,
    );
  return { start, leadIn, repeat };
}

function mustRise(points: readonly Point[], anchors: readonly Anchor[], rows: number, block: string): void {
  anchors.forEach((anchor, index) => {
    const [before, point] = [points[index]!, points[index + 1]!];
    if (point.row <= before.row)
      refuse(
        anchor.row,
        undefined,
        `rows must rise from one hanging to the next, and row ${point.row} does not`,
      );
    if (point.row > rows)
      refuse(anchor.row, undefined, `${block} has ${rows} rows, and this comes out as row ${point.row}`);
  });
}

function needleOf(expression: Expression, values: Values): number {
  const needle = whole(expression, values, "a needle");
  if (needle === 0)
    refuse(expression, values, "there is no needle 0: needles count from 1 outward at each side");
  return needle;
}

const boundaryOf: PlaceOf = (expression, values) => whole(expression, values, "the middle of a crossing");

function count(expression: Expression, values: Values, what: string, least: number): number {
  const value = whole(expression, values, what);
  if (value < least)
    refuse(expression, values, `${what} must be at least ${least}, and this comes out as ${value}`);
  return value;
}

function whole(expression: Expression, values: Values, what: string): number {
  const value = evaluate(expression, values);
  if (typeof value !== "number") return refuse(expression, values, value.problem);
  if (!Number.isInteger(value))
    refuse(expression, values, `${what} must be a whole number, and this comes out as ${value}`);
  // A negative zero would print as "-0" and differ from 0 as a key.
  return value + 0;
}

/** Leaves the tracing with a reason; never seen outside this file. */
class Refusal extends Error {
  constructor(
    readonly expression: Expression,
    message: string,
  ) {
    super(message);
  }
}

function refuse(expression: Expression, values: Values | undefined, message: string): never {
  const given = [...(values ?? [])].map(([name, value]) => `${name} ${value}`).join(", ");
  throw new Refusal(expression, given ? `${message} (with ${given})` : message);
}

/** Needles across between two points of a strand. */
export const across = (from: Point, to: Point): number =>
  Math.abs(position(to.needle) - position(from.needle));
