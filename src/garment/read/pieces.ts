import type { Stitch } from "../../cloth/gauge.ts";
import { BODY_PARTS, type Mark, type Piece, SHAPING_ROWS, type Side } from "../garment.ts";
import { keysOf } from "../keys.ts";
import { type Cursor, type Reading, report, tableAt, wordAt } from "./cursor.ts";
import { drawnOutlineAt } from "./drawn-outline.ts";
import * as limits from "./limits.ts";
import { inCm, lengthAt, wholeAt } from "./numbers.ts";
import { neckAt, outlineAt, outlineExample } from "./outline.ts";
import { shapeAt } from "./shape.ts";

/** Marks that every piece has of itself. */
const OWN_MARKS = ["cast-on", "bind-off", "neck"];

/** A piece as far as it could be read. */
export interface ReadPiece {
  readonly name: string;
  readonly piece?: Piece;
  /** Every mark, with its height where that could be read; not known where the marks are not written as such. */
  readonly marks?: ReadonlyMap<string, number | undefined>;
}

/** What a piece takes from the rest of its garment. */
export interface AroundPiece {
  /** Where the carriage rests if the piece does not say. */
  readonly carriage: Side;
  /** One stitch of the ground, where the gauge could be read. */
  readonly stitch?: Stitch;
}

export function pieceAt(reading: Reading, cursor: Cursor, name: string, around: AroundPiece): ReadPiece {
  const example = `outline: ${outlineExample}`;
  const table = tableAt(reading, cursor, `the piece ${name}`, keysOf("piece"), example);
  const shapeCursor = table?.at("shape");
  const outlineCursor = shapeCursor ? table?.at("outline") : table?.need("outline", outlineExample);
  if (shapeCursor && outlineCursor) outlineBesideShape(reading, outlineCursor);
  const shaped = shapeCursor && shapeAt(reading, shapeCursor, around.stitch);
  const isDrawn = outlineCursor?.written.kind === "table";
  const drawn = isDrawn ? drawnOutlineAt(reading, outlineCursor, around.stitch) : undefined;
  const made = shaped ?? drawn;
  const outline = outlineCursor && !isDrawn ? outlineAt(reading, outlineCursor) : (made ?? {});
  const { topMm } = outline;
  const neckCursor = table?.at("neck");
  if (neckCursor && drawn?.neck.stations) twoNecks(reading, neckCursor);
  const neck = neckCursor
    ? neckAt(reading, neckCursor, topMm)
    : made?.neck.stations
      ? made.neck
      : { stations: [] };
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
    around.carriage;
  const shapingCursor = table?.at("shaping");
  const shapingOn =
    shapingCursor && wordAt(reading, shapingCursor, "the rows on which a piece is shaped", SHAPING_ROWS);
  const makeCursor = table?.at("make");
  const make = makeCursor && wholeAt(reading, makeCursor, "how many of a piece are knitted", limits.make);
  const partCursor = table?.at("part");
  const part = partCursor
    ? wordAt(reading, partCursor, "where on the body a piece lies", BODY_PARTS)
    : shaped?.part;
  // A drawing may bring marks, so without it nobody knows which marks there are.
  if (!table || !written || (isDrawn && !drawn)) return { name };
  const marks = new Map([
    ["cast-on", 0],
    ...(made?.marks ?? []),
    ...written,
    ...(neckCursor || neck.firstMm !== undefined ? [["neck", neck.firstMm] as const] : []),
    ["bind-off", topMm],
  ]);
  if (!outline.stations || !neck.stations) return { name, marks };
  const piece: Piece = {
    name,
    path: cursor.path,
    ...(make !== undefined && { make }),
    ...(part && { part }),
    ...(shapingOn && { shapingOn }),
    outline: outline.stations,
    marks: [...marks].filter((mark): mark is [string, number] => mark[1] !== undefined).map(toMark),
    neck: neck.stations,
    ...(shapeCursor && { outlinePath: shapeCursor.path }),
    ...(isDrawn && { outlinePath: outlineCursor.path }),
    growMm,
    shrinkMm,
    ...((table.at("grow") || table.at("shrink")) && { limitsLength: true }),
    carriage,
  };
  return { name, piece, marks };
}

const outlineBesideShape = (reading: Reading, cursor: Cursor): undefined =>
  report(reading, cursor, {
    code: "conflicting-keys",
    message: "a piece has either an outline or a shape",
    expected: "one of the two",
    found: "",
    ...(cursor.keyPlace && { place: cursor.keyPlace }),
  });

const twoNecks = (reading: Reading, cursor: Cursor): undefined =>
  report(reading, cursor, {
    code: "conflicting-keys",
    message: "the drawing has a neck of its own",
    expected: "the drawing's neck, or a drawing that is closed at the top",
    found: "",
    ...(cursor.keyPlace && { place: cursor.keyPlace }),
  });

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
