import type { NeckStation, Station } from "../garment.ts";
import { keysOf } from "../keys.ts";
import { type Cursor, listAt, type Reading, report, type Table, tableAt } from "./cursor.ts";
import * as limits from "./limits.ts";
import { inCm, type Limits, lengthAt } from "./numbers.ts";

export const outlineExample = "- { height: 0 cm, width: 20 cm } and more, upward";
const neckExample = "- { height: 50 cm, width: 8 cm } and more, upward";

/** An outline or a neck as far as it could be read: a mistake in one height does not hide those in the others. */
export interface ReadHeights<Kind> {
  /** Present only where every height could be read. */
  readonly stations?: readonly Kind[];
  /** The greatest height, where the topmost could be read and there is one above 0. */
  readonly topMm?: number;
  /** The first height, where it could be read. */
  readonly firstMm?: number;
}

/** A height, and all that stands at it where that could be read too. */
interface ReadHeight<Kind> {
  readonly heightMm?: number;
  readonly station?: Kind;
}

export function outlineAt(reading: Reading, cursor: Cursor): ReadHeights<Station> {
  const items = listAt(reading, cursor, "an outline", outlineExample);
  if (!items) return {};
  const read = items.map((item) => stationAt(reading, item));
  checkRise(reading, items, read, "an outline");
  const firstMm = read[0]?.heightMm;
  if (items[0] && firstMm !== undefined && firstMm !== 0)
    report(reading, heightOf(items[0]), {
      code: "outline-not-at-zero",
      message: "an outline starts at the cast-on edge, at height 0 cm",
      found: inCm(firstMm),
      expected: "0 cm",
    });
  if (items.length < 2)
    report(reading, cursor, {
      code: "outline-too-short",
      message: "an outline has at least two heights",
      expected: outlineExample,
    });
  else if (read.every(({ heightMm }) => heightMm === 0))
    report(reading, cursor, {
      code: "outline-not-rising",
      message: "an outline without a height above 0 cm has no rows",
      expected: outlineExample,
    });
  return heightsOf(read);
}

/**
 * @param topMm height of the piece, where it is known
 */
export function neckAt(
  reading: Reading,
  cursor: Cursor,
  topMm: number | undefined,
): ReadHeights<NeckStation> {
  const items = listAt(reading, cursor, "a neck", neckExample);
  if (!items) return {};
  const read = items.map((item): ReadHeight<NeckStation> => {
    const table = tableAt(reading, item, "a height of the neck", keysOf("neck station"), neckExample);
    const heightMm = table && sizeAt(reading, table, "height", limits.pieceMm, neckExample);
    const widthMm = table && sizeAt(reading, table, "width", limits.pieceMm, neckExample);
    if (heightMm !== undefined && topMm !== undefined && (heightMm > topMm || heightMm <= 0))
      report(reading, heightOf(item), {
        code: "neck-outside",
        message: "a neck lies inside its piece",
        expected: `a height above 0 cm and up to ${inCm(topMm)}`,
      });
    return heightAnd(
      heightMm,
      widthMm === undefined || heightMm === undefined ? undefined : { heightMm, widthMm },
    );
  });
  checkRise(reading, items, read, "a neck");
  if (items.length === 0)
    report(reading, cursor, {
      code: "empty-range",
      message: "a neck has at least one height",
      expected: neckExample,
    });
  return heightsOf(read);
}

function stationAt(reading: Reading, cursor: Cursor): ReadHeight<Station> {
  const example = "{ height: 33 cm, width: 31 cm }";
  const table = tableAt(reading, cursor, "a height of an outline", keysOf("station"), example);
  if (!table) return {};
  const heightMm = sizeAt(reading, table, "height", limits.pieceMm, example);
  const sides = table.at("left") ?? table.at("right");
  if (!sides) {
    const widthMm = sizeAt(reading, table, "width", limits.pieceWidthMm, example);
    return heightAnd(
      heightMm,
      heightMm === undefined || widthMm === undefined ? undefined : { heightMm, widthMm },
    );
  }
  if (table.at("width"))
    report(reading, sides, {
      code: "conflicting-keys",
      message: "a height has either a width or a left and a right",
      expected: "width alone, or left and right",
      ...(sides.keyPlace && { place: sides.keyPlace }),
    });
  const sidesExample = "{ height: 33 cm, left: 15 cm, right: 16 cm }";
  const leftMm = sizeAt(reading, table, "left", limits.signedPieceMm, sidesExample);
  const rightMm = sizeAt(reading, table, "right", limits.signedPieceMm, sidesExample);
  if (heightMm === undefined || leftMm === undefined || rightMm === undefined)
    return heightAnd<Station>(heightMm, undefined);
  if (leftMm + rightMm < limits.pieceWidthMm.least)
    report(reading, sides, {
      code: "zero-size",
      message: "left and right together leave the piece no width",
      expected: "a left or a right of more than 0 cm",
    });
  return { heightMm, station: { heightMm, leftMm, rightMm } };
}

function sizeAt(
  reading: Reading,
  table: Table,
  key: string,
  range: Limits,
  example: string,
): number | undefined {
  const cursor = table.need(key, example);
  return cursor && lengthAt(reading, cursor, `the ${key}`, range);
}

/** Heights rise; two alike are a step, three are not. */
function checkRise(
  reading: Reading,
  items: readonly Cursor[],
  read: readonly ReadHeight<unknown>[],
  what: string,
): void {
  for (const [index, item] of items.entries()) {
    const now = read[index]?.heightMm;
    const before = read[index - 1]?.heightMm;
    if (now === undefined || before === undefined || now > before) continue;
    const isThird = read[index - 2]?.heightMm === now;
    if (now === before && !isThird) continue;
    report(reading, heightOf(item), {
      code: "outline-not-rising",
      message: `${what} goes upward, and this height does not`,
      found: `${inCm(now)} after ${inCm(before)}`,
      expected: `more than ${inCm(before)}${isThird ? "" : ", or the same once for a step"}`,
    });
  }
}

/** The value of the key height, at which its mistakes are shown. */
function heightOf(item: Cursor): Cursor {
  const entry = item.written.kind === "table" ? item.written.entries.get("height") : undefined;
  return entry ? { written: entry.value, path: [...item.path, "height"] } : item;
}

const heightAnd = <Kind>(heightMm: number | undefined, station: Kind | undefined): ReadHeight<Kind> => ({
  ...(heightMm !== undefined && { heightMm }),
  ...(station !== undefined && { station }),
});

function heightsOf<Kind>(read: readonly ReadHeight<Kind>[]): ReadHeights<Kind> {
  const stations = read.map(({ station }) => station);
  const heights = read.map(({ heightMm }) => heightMm).filter((heightMm) => heightMm !== undefined);
  const firstMm = read[0]?.heightMm;
  const topMm = read.at(-1)?.heightMm === undefined ? 0 : Math.max(...heights);
  return {
    ...(stations.every((station) => station !== undefined) && { stations }),
    ...(topMm > 0 && { topMm }),
    ...(firstMm !== undefined && { firstMm }),
  };
}
