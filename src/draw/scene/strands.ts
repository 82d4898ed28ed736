import { cordStitchMm } from "../../cloth/gauge.ts";
import { type Fit, lookOf } from "../../fit/fit.ts";
import type { HangAction, SheetPiece } from "../../sheet/sheet.ts";
import { loopPoints } from "./loops.ts";
import type { ClothPoint, Placer } from "./place.ts";

/** One running length of cord over its hangings. */
export interface SceneStrand {
  readonly name: string;
  readonly motif: string;
  /** Counts from 1 in the order of the file. */
  readonly placement: number;
  /** Counts from 1 at the left. */
  readonly column: number;
  /** Place in the motif's order of work, from 0. */
  readonly order: number;
  /** From the bottom up. */
  readonly hangings: readonly SceneHanging[];
  /** The way it takes over the cloth: straight from hanging to hanging, and round a standing loop. */
  readonly line: readonly ClothPoint[];
  /** The strand of the same column that is the other arm of the same cord; index among the scene's strands. */
  readonly foldedWith?: number;
}

export interface SceneHanging extends ClothPoint {
  readonly needle: number;
  readonly row: number;
  /** Cord stitches counted from the strand's hanging before; 0 at its first. */
  readonly count: number;
  /** Place in its row's order of work, from 0; what is hung later lies over. */
  readonly turn: number;
  /** Whether the stretch before stands off as a loop. */
  readonly loop: boolean;
}

/** Where two strands cross. `over` and `under` are indexes among the scene's strands. */
export interface StrandCrossing extends ClothPoint {
  readonly over: number;
  readonly under: number;
  /** Index of the hanging at which the crossing part of the strand begins. */
  readonly overFrom: number;
  readonly underFrom: number;
}

/** Strands of a piece as its working sheet hangs them. */
export function strandsOf(sheet: SheetPiece, fit: Fit, place: Placer): readonly SceneStrand[] {
  const hung = new Map<string, { first: HangAction; hangings: SceneHanging[] }>();
  for (const { row, do: actions } of sheet.rows)
    for (const [turn, action] of actions.entries()) {
      if (action.act !== "hang") continue;
      const key = JSON.stringify([action.placement, action.column, action.strand]);
      const strand = hung.get(key) ?? { first: action, hangings: [] };
      hung.set(key, strand);
      const { needle, count, loop = false } = action;
      strand.hangings.push({ needle, row, count, turn, loop, ...place.needle(needle, row) });
    }
  const strands = [...hung.values()];
  return strands.map(({ first, hangings }) => {
    const { strand: name, motif, placement, column } = first;
    const { trace } = lookOf(fit, motif);
    const pair = trace.folded.find((arms) => arms.includes(name));
    const other = pair?.find((arm) => arm !== name);
    const beside = (one: HangAction): boolean => one.placement === placement && one.column === column;
    const foldedWith = strands.findIndex((one) => one.first.strand === other && beside(one.first));
    const middleMm = middleOf(strands.filter((one) => beside(one.first)).flatMap((one) => one.hangings));
    return {
      name,
      motif,
      placement,
      column,
      order: trace.strands.findIndex((one) => one.name === name),
      hangings,
      line: lineOf(hangings, cordStitchMm(fit.garment.gauge.cord!), middleMm),
      ...(foldedWith >= 0 && { foldedWith }),
    };
  });
}

function middleOf(hangings: readonly SceneHanging[]): number {
  const places = hangings.map(({ xMm }) => xMm);
  return (Math.min(...places) + Math.max(...places)) / 2;
}

function lineOf(
  hangings: readonly SceneHanging[],
  stitchMm: number,
  middleMm: number,
): readonly ClothPoint[] {
  return hangings.flatMap((to, index): readonly ClothPoint[] => {
    const from = hangings[index - 1];
    if (!from || !to.loop) return [to];
    const outward = (from.xMm + to.xMm) / 2 - middleMm || 1;
    return [...loopPoints(from, to, to.count * stitchMm, outward), to];
  });
}

/** Every crossing of two strands of one column; columns and placements never share needles. */
export function strandCrossings(strands: readonly SceneStrand[]): readonly StrandCrossing[] {
  const crossings: StrandCrossing[] = [];
  strands.forEach((one, first) => {
    for (let second = first + 1; second < strands.length; second++) {
      const other = strands[second]!;
      if (one.placement === other.placement && one.column === other.column)
        crossings.push(...crossingsOf(strands, first, second));
    }
  });
  return crossings.sort((one, other) => one.yMm - other.yMm);
}

/** Two strands cross where the sign of the distance between them changes. */
function crossingsOf(
  strands: readonly SceneStrand[],
  first: number,
  second: number,
): readonly StrandCrossing[] {
  const [one, other] = [strands[first]!.hangings, strands[second]!.hangings];
  const crossings: StrandCrossing[] = [];
  let before: { readonly row: number; readonly distance: number } | undefined;
  let meeting: { readonly row: number; readonly partFrom: number } | undefined;
  for (const row of sharedRows(one, other)) {
    const distance = pointAt(one, row).xMm - pointAt(other, row).xMm;
    if (distance === 0) {
      // Strands that meet on one needle cross there, if they leave it on the other side.
      if (before) meeting ??= { row, partFrom: before.row };
      continue;
    }
    if (before && Math.sign(before.distance) !== Math.sign(distance)) {
      const share = before.distance / (before.distance - distance);
      const at = meeting ?? { row: before.row + share * (row - before.row), partFrom: before.row };
      crossings.push(crossingAt(strands, first, second, at));
    }
    before = { row, distance };
    meeting = undefined;
  }
  return crossings;
}

function crossingAt(
  strands: readonly SceneStrand[],
  first: number,
  second: number,
  { row, partFrom }: { readonly row: number; readonly partFrom: number },
): StrandCrossing {
  const [one, other] = [strands[first]!, strands[second]!];
  const from = { first: partAt(one.hangings, partFrom), second: partAt(other.hangings, partFrom) };
  const point = pointAt(one.hangings, row);
  return liesOver(one, from.first, other, from.second)
    ? { ...point, over: first, under: second, overFrom: from.first, underFrom: from.second }
    : { ...point, over: second, under: first, overFrom: from.second, underFrom: from.first };
}

/** The part that is hung later was laid later, and lies over; in one row the order of work decides. */
function liesOver(one: SceneStrand, from: number, other: SceneStrand, otherFrom: number): boolean {
  const [hung, otherHung] = [one.hangings[from + 1]!, other.hangings[otherFrom + 1]!];
  return hung.row === otherHung.row ? hung.turn > otherHung.turn : hung.row > otherHung.row;
}

/** Rows at which either strand is hung while both are running. */
function sharedRows(one: readonly SceneHanging[], other: readonly SceneHanging[]): readonly number[] {
  const from = Math.max(one[0]!.row, other[0]!.row);
  const to = Math.min(one.at(-1)!.row, other.at(-1)!.row);
  return [...new Set([...one, ...other].map(({ row }) => row))]
    .filter((row) => row >= from && row <= to)
    .sort((first, second) => first - second);
}

/** Index of the hanging from which the strand runs on above a row. */
function partAt(hangings: readonly SceneHanging[], row: number): number {
  const next = hangings.findIndex((hanging) => hanging.row > row);
  return Math.max(0, (next < 0 ? hangings.length - 1 : next) - 1);
}

function pointAt(hangings: readonly SceneHanging[], row: number): ClothPoint {
  const part = partAt(hangings, row);
  const from = hangings[part]!;
  const to = hangings[part + 1] ?? from;
  const share = to.row === from.row ? 0 : (row - from.row) / (to.row - from.row);
  return { xMm: from.xMm + share * (to.xMm - from.xMm), yMm: from.yMm + share * (to.yMm - from.yMm) };
}
