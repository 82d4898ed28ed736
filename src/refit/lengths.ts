import type { Stretch } from "../cloth/counted-piece.ts";
import { wholeWithin } from "../cloth/gauge.ts";
import { type Field, stretchesOf } from "../fit/field.ts";
import type { Undertaking } from "./undertaking.ts";

/** One way to change the length of what is left of a piece. */
export interface Lengths {
  readonly key: string;
  /** Rows by which each field becomes longer; index = the field's. */
  readonly changes: readonly number[];
  readonly stretches: readonly Stretch[];
}

/** Every way that keeps the piece's limits, those that change least first; fields that are one change together. */
export function lengthsOf({ fields, begun, garment }: Undertaking): readonly Lengths[] {
  const groups = [...new Map(fields.map((field) => [keyOf(field), field])).values()];
  let ways: (readonly number[])[] = [[]];
  for (const { leastChange, mostChange } of groups)
    ways = ways.flatMap((way) => wholeFrom(leastChange, mostChange).map((change) => [...way, change]));
  const rowMm = garment.gauge.ground.overMm / garment.gauge.ground.rows;
  const { growMm, shrinkMm } = begun.piece;
  // What is knitted already may have taken more of the limit than the measured rows leave.
  const settled = sum(
    groups
      .filter(({ leastChange, mostChange }) => leastChange === mostChange)
      .map((field) => field.mostChange),
  );
  const steady = fields[0]?.steadyChanges;
  const most = Math.min(
    Math.max(wholeWithin(growMm / rowMm), settled),
    steady?.most ?? Number.POSITIVE_INFINITY,
  );
  const least = Math.max(
    Math.min(-wholeWithin(shrinkMm / rowMm), settled),
    steady?.least ?? Number.NEGATIVE_INFINITY,
  );
  return ways
    .filter((way) => sum(way) <= most && sum(way) >= least)
    .sort((one, other) => size(one) - size(other))
    .map((way) => {
      const changeOf = (field: Field): number =>
        way[groups.findIndex((group) => keyOf(group) === keyOf(field))]!;
      return {
        key: way.join(),
        changes: fields.map(changeOf),
        stretches: stretchesOf(fields, changeOf),
      };
    });
}

const keyOf = ({ fromRow, toRow }: Field): string => `${fromRow}-${toRow}`;

const sum = (amounts: readonly number[]): number => amounts.reduce((all, one) => all + one, 0);

const size = (way: readonly number[]): number => sum(way.map(Math.abs));

const wholeFrom = (least: number, most: number): readonly number[] =>
  Array.from({ length: Math.max(0, most - least + 1) }, (_, index) => least + index);
