import { BODY_PARTS, type Mark, type Piece, type Side } from "../garment.ts";
import { keysOf } from "../keys.ts";
import { type Cursor, type Reading, report, tableAt, wordAt } from "./cursor.ts";
import * as limits from "./limits.ts";
import { inCm, lengthAt } from "./numbers.ts";
import { neckAt, outlineAt, outlineExample } from "./outline.ts";

/** Marks that every piece has of itself. */
const OWN_MARKS = ["cast-on", "bind-off", "neck"];

/** A piece as far as it could be read. */
export interface ReadPiece {
  readonly name: string;
  readonly piece?: Piece;
  /** Every mark, with its height where that could be read; not known where the marks are not written as such. */
  readonly marks?: ReadonlyMap<string, number | undefined>;
}

/**
 * @param bedCarriage where the carriage rests if the piece does not say
 */
export function pieceAt(reading: Reading, cursor: Cursor, name: string, bedCarriage: Side): ReadPiece {
  const example = `outline: ${outlineExample}`;
  const table = tableAt(reading, cursor, `the piece ${name}`, keysOf("piece"), example);
  const outlineCursor = table?.need("outline", outlineExample);
  const outline = outlineCursor ? outlineAt(reading, outlineCursor) : {};
  const { topMm } = outline;
  const neckCursor = table?.at("neck");
  const neck = neckCursor ? neckAt(reading, neckCursor, topMm) : { stations: [] };
  const marksCursor = table?.at("marks");
  const written = marksCursor ? marksAt(reading, marksCursor, topMm) : new Map<string, number | undefined>();
  const change = (key: "grow" | "shrink"): number => {
    const inner = table?.at(key);
    return (inner && lengthAt(reading, inner, `how much it may ${key}`, limits.pieceMm)) ?? 0;
  };
  const [growMm, shrinkMm] = [change("grow"), change("shrink")];
  const carriageCursor = table?.at("carriage");
  const carriage =
    (carriageCursor && wordAt(reading, carriageCursor, "the carriage's side", ["left", "right"])) ??
    bedCarriage;
  const partCursor = table?.at("part");
  const part = partCursor && wordAt(reading, partCursor, "where on the body a piece lies", BODY_PARTS);
  if (!table || !written) return { name };
  const marks = new Map([
    ["cast-on", 0],
    ...written,
    ...(neckCursor ? [["neck", neck.firstMm] as const] : []),
    ["bind-off", topMm],
  ]);
  if (!outline.stations || !neck.stations) return { name, marks };
  const piece: Piece = {
    name,
    path: cursor.path,
    ...(part && { part }),
    outline: outline.stations,
    marks: [...marks].filter((mark): mark is [string, number] => mark[1] !== undefined).map(toMark),
    neck: neck.stations,
    growMm,
    shrinkMm,
    carriage,
  };
  return { name, piece, marks };
}

const toMark = ([name, heightMm]: readonly [string, number]): Mark => ({ name, heightMm });

function marksAt(
  reading: Reading,
  cursor: Cursor,
  topMm: number | undefined,
): ReadonlyMap<string, number | undefined> | undefined {
  const table = tableAt(reading, cursor, "the marks", undefined, "{ rib top: 4 cm, underarm: 33 cm }");
  if (!table) return undefined;
  const marks = new Map<string, number | undefined>();
  for (const name of table.keys()) {
    const inner = table.at(name)!;
    const heightMm = lengthAt(reading, inner, `the mark ${name}`, limits.pieceMm);
    if (OWN_MARKS.includes(name)) {
      report(reading, inner, {
        code: "mark-reserved",
        message: `every piece has the mark ${name} of itself`,
        found: name,
        expected: "another name",
        ...(inner.keyPlace && { place: inner.keyPlace }),
      });
      continue;
    }
    marks.set(name, heightMm);
    if (heightMm !== undefined && topMm !== undefined && heightMm > topMm)
      report(reading, inner, {
        code: "mark-outside",
        message: `the mark ${name} lies above the piece`,
        expected: `a height up to ${inCm(topMm)}`,
      });
  }
  return marks;
}
