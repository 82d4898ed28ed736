import type { Mark, NeckStation, Piece, Side, Station } from "../garment.ts";
import { type Cursor, listAt, type Reading, report, tableAt, wordAt } from "./cursor.ts";
import * as limits from "./limits.ts";
import { lengthAt } from "./numbers.ts";

const pieceKeys = ["outline", "marks", "neck", "grow", "shrink", "carriage"];
const outlineExample = "- { height: 0 cm, width: 20 cm } and more, upward";

/** Marks that every piece has of itself. */
export const ownMarks = ["cast-on", "bind-off", "neck"];

export function pieceAt(
  reading: Reading,
  cursor: Cursor,
  name: string,
  bedCarriage: Side,
): Piece | undefined {
  const table = tableAt(reading, cursor, `the piece ${name}`, pieceKeys, `outline: ${outlineExample}`);
  if (!table) return undefined;
  const outlineCursor = table.need("outline", outlineExample);
  const outline = outlineCursor && outlineAt(reading, outlineCursor);
  const topMm = outline?.at(-1)?.heightMm;
  const neckCursor = table.at("neck");
  const neck = neckCursor ? neckAt(reading, neckCursor, topMm) : [];
  const marksCursor = table.at("marks");
  const marks = marksCursor ? marksAt(reading, marksCursor, topMm) : [];
  const growCursor = table.at("grow");
  const shrinkCursor = table.at("shrink");
  const growMm = growCursor ? lengthAt(reading, growCursor, "how much it may grow", limits.pieceMm) : 0;
  const shrinkMm = shrinkCursor
    ? lengthAt(reading, shrinkCursor, "how much it may shrink", limits.pieceMm)
    : 0;
  const carriageCursor = table.at("carriage");
  const carriage =
    carriageCursor && wordAt(reading, carriageCursor, "the carriage's side", ["left", "right"]);
  if (!outline || topMm === undefined) return undefined;
  return {
    name,
    path: cursor.path,
    outline,
    marks: [
      { name: "cast-on", heightMm: 0 },
      ...marks,
      ...(neck[0] ? [{ name: "neck", heightMm: neck[0].heightMm }] : []),
      { name: "bind-off", heightMm: topMm },
    ],
    neck,
    growMm: growMm ?? 0,
    shrinkMm: shrinkMm ?? 0,
    carriage: carriage ?? bedCarriage,
  };
}

function outlineAt(reading: Reading, cursor: Cursor): readonly Station[] | undefined {
  const items = listAt(reading, cursor, "an outline", outlineExample);
  if (!items) return undefined;
  const stations = items.map((item) => stationAt(reading, item));
  checkRise(reading, items, stations, "an outline");
  const first = stations[0];
  if (items[0] && first && first.heightMm !== 0)
    report(reading, items[0], {
      code: "outline-not-at-zero",
      message: "an outline starts at the cast-on edge, at height 0",
      found: `${first.heightMm / 10} cm`,
      expected: "0 cm",
    });
  if (items.length < 2)
    return report(reading, cursor, {
      code: "outline-too-short",
      message: "an outline has at least two heights",
      expected: outlineExample,
    });
  return stations.every((station) => station !== undefined) ? stations : undefined;
}

function stationAt(reading: Reading, cursor: Cursor): Station | undefined {
  const example = "{ height: 33 cm, width: 31 cm }";
  const table = tableAt(
    reading,
    cursor,
    "a height of an outline",
    ["height", "width", "left", "right"],
    example,
  );
  if (!table) return undefined;
  const length = (key: string): number | undefined => {
    const inner = table.need(key, example);
    return inner && lengthAt(reading, inner, `the ${key}`, limits.pieceMm);
  };
  const heightMm = length("height");
  const widthCursor = table.at("width");
  const sides = table.at("left") ?? table.at("right");
  if (widthCursor && sides)
    return report(reading, sides, {
      code: "conflicting-keys",
      message: "a height has either a width or a left and a right",
      expected: "width alone, or left and right",
    });
  if (sides) {
    const [leftMm, rightMm] = [length("left"), length("right")];
    if (heightMm === undefined || leftMm === undefined || rightMm === undefined) return undefined;
    return { heightMm, leftMm, rightMm };
  }
  const widthMm = length("width");
  return heightMm === undefined || widthMm === undefined ? undefined : { heightMm, widthMm };
}

function neckAt(reading: Reading, cursor: Cursor, topMm: number | undefined): readonly NeckStation[] {
  const example = "- { height: 50 cm, width: 8 cm } and more, upward";
  const items = listAt(reading, cursor, "a neck", example) ?? [];
  const stations = items.map((item): NeckStation | undefined => {
    const table = tableAt(reading, item, "a height of the neck", ["height", "width"], example);
    const heightCursor = table?.need("height", example);
    const widthCursor = table?.need("width", example);
    const heightMm = heightCursor && lengthAt(reading, heightCursor, "the height", limits.pieceMm);
    const widthMm = widthCursor && lengthAt(reading, widthCursor, "the width", limits.pieceMm);
    if (heightCursor && heightMm !== undefined && topMm !== undefined && (heightMm > topMm || heightMm <= 0))
      report(reading, heightCursor, {
        code: "neck-outside",
        message: "a neck lies inside its piece",
        expected: `a height above 0 and up to ${topMm / 10} cm`,
      });
    return heightMm === undefined || widthMm === undefined ? undefined : { heightMm, widthMm };
  });
  checkRise(reading, items, stations, "a neck");
  if (items.length === 0)
    report(reading, cursor, {
      code: "empty-range",
      message: "a neck has at least one height",
      expected: example,
    });
  return stations.filter((station) => station !== undefined);
}

/** Heights rise; two alike are a step, three are not. */
function checkRise(
  reading: Reading,
  items: readonly Cursor[],
  stations: readonly ({ readonly heightMm: number } | undefined)[],
  what: string,
): void {
  for (let index = 1; index < items.length; index++) {
    const [before, now] = [stations[index - 1], stations[index]];
    if (!before || !now || now.heightMm > before.heightMm) continue;
    const third = stations[index - 2]?.heightMm === now.heightMm;
    if (now.heightMm === before.heightMm && !third) continue;
    report(reading, items[index]!, {
      code: "outline-not-rising",
      message: `${what} goes upward, and this height does not`,
      found: `${now.heightMm / 10} cm after ${before.heightMm / 10} cm`,
      expected: `more than ${before.heightMm / 10} cm${third ? "" : ", or the same once for a step"}`,
    });
  }
}

function marksAt(reading: Reading, cursor: Cursor, topMm: number | undefined): readonly Mark[] {
  const table = tableAt(reading, cursor, "the marks", undefined, "{ rib top: 4 cm, underarm: 33 cm }");
  return (table?.keys() ?? []).flatMap((name): Mark[] => {
    const inner = table!.at(name)!;
    const heightMm = lengthAt(reading, inner, `the mark ${name}`, limits.pieceMm);
    if (ownMarks.includes(name)) {
      report(reading, inner, {
        code: "mark-reserved",
        message: `every piece has the mark ${name} of itself`,
        expected: "another name",
        ...(inner.keyPlace && { place: inner.keyPlace }),
      });
      return [];
    }
    if (heightMm === undefined) return [];
    if (topMm !== undefined && heightMm > topMm)
      report(reading, inner, {
        code: "mark-outside",
        message: `the mark ${name} lies above the piece`,
        expected: `a height up to ${topMm / 10} cm`,
      });
    return [{ name, heightMm }];
  });
}
