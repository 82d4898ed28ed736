import type { Expression } from "../expression.ts";
import type { Anchor, Blocks } from "../motif.ts";
import type { BlockTrace, Point, Values } from "../trace.ts";
import { count, refuse } from "./numbers.ts";

/** Rows of the blocks of a motif. */
export interface BlockRows {
  readonly leadRows: number;
  readonly repeatRows: number;
}

/** What makes a point of an anchor: where it lies, and whatever else it says. */
export interface PointMaker {
  readonly place: (expression: Expression, values: Values) => number;
  readonly more: (anchor: Anchor, values: Values) => Omit<Point, "needle" | "row">;
}

/** What the blocks of one strand or cable are traced from, under the name that it has there. */
export interface BlockSource {
  readonly name: string;
  readonly blocks: Blocks;
  readonly values: Values;
  readonly next?: string;
}

/** Anchors to points, refusing rows that do not rise within a block. */
export function traceBlocks(
  { name, blocks, values, next }: BlockSource,
  { leadRows, repeatRows }: BlockRows,
  maker: PointMaker,
): BlockTrace {
  const pointOf = (anchor: Anchor): Point => ({
    needle: maker.place(anchor.needle, values),
    row: count(anchor.row, values, "a row", 0),
    ...maker.more(anchor, values),
  });
  const start = pointOf(blocks.start);
  const leadIn = blocks.leadIn.map(pointOf);
  const repeat = blocks.repeat.map(pointOf);
  mustRise([start.row, ...leadIn.map(({ row }) => row)], blocks.leadIn, leadRows, "the lead-in", values);
  const before = (leadIn.at(-1) ?? start).row - leadRows;
  mustRise([before, ...repeat.map(({ row }) => row)], blocks.repeat, repeatRows, "the repeat", values);
  return { name, start, leadIn, repeat, ...(next !== undefined && { next }) };
}

/** Each repeat must end where the next one goes on, on the same needle and in an earlier row. */
export function mustMeet(
  sources: readonly BlockSource[],
  traces: readonly BlockTrace[],
  { repeatRows }: BlockRows,
): void {
  traces.forEach((trace, index) => {
    const { blocks, values } = sources[index]!;
    const following = traces.find(({ name }) => name === trace.next) ?? trace;
    const began = (following.leadIn.at(-1) ?? following.start).needle;
    const [last, lastAnchor] = [trace.repeat.at(-1), blocks.repeat.at(-1)];
    if (!last || !lastAnchor) return;
    if (last.needle !== began)
      refuse(
        lastAnchor.needle,
        values,
        following === trace
          ? `the repeat must end where it began, at ${began}, and this comes out as ${last.needle}`
          : `the repeat must end where ${following.name} began, at ${began}, and this comes out as ${last.needle}`,
      );
    if (following.repeat[0]!.row <= last.row - repeatRows)
      refuse(
        lastAnchor.row,
        values,
        `the next repeat is hung at its row ${following.repeat[0]!.row}, so this row must lie below it, and it comes out as ${last.row} of ${repeatRows}`,
      );
  });
}

function mustRise(
  rows: readonly number[],
  anchors: readonly Anchor[],
  most: number,
  block: string,
  values: Values,
): void {
  anchors.forEach((anchor, index) => {
    const [before, row] = [rows[index]!, rows[index + 1]!];
    if (row <= before)
      refuse(anchor.row, values, `rows must rise from one hanging to the next, and row ${row} does not`);
    if (row > most) refuse(anchor.row, values, `${block} has ${most} rows, and this comes out as row ${row}`);
  });
}
