import type { Stitch } from "../../cloth/gauge.ts";
import { quoted } from "../../diagnostics/shown.ts";
import { type DrawingKind, type DrawnShape, isProblem } from "../../drawing-file/drawing.ts";
import { drawnOutline } from "../../drawing-file/outline/drawn-outline.ts";
import { shapesAsked } from "../../drawing-file/shapes-asked.ts";
import type { NeckStation, Station } from "../garment.ts";
import { keysOf } from "../keys.ts";
import { type Cursor, nameAt, type Reading, report, type Table, tableAt } from "./cursor.ts";
import * as limits from "./limits.ts";
import { lengthAt, wholeAt } from "./numbers.ts";
import type { ReadHeights } from "./outline.ts";

const svgExample = "{ svg: front.svg, id: front }";
const dxfExample = "{ dxf: pattern.dxf, piece: FRONT, size: M }";

/** What a piece takes from a drawing, in the form of heights that are written out. */
export interface ReadDrawing extends ReadHeights<Station> {
  readonly neck: ReadHeights<NeckStation>;
  readonly marks: readonly (readonly [name: string, heightMm: number])[];
}

/**
 * An outline that lies in a file of its own.
 *
 * @param stitch of the garment; without it a line cannot be simplified, and the gauge's own mistake is told already
 */
export function drawnOutlineAt(
  reading: Reading,
  cursor: Cursor,
  stitch: Stitch | undefined,
): ReadDrawing | undefined {
  const kind: DrawingKind =
    cursor.written.kind === "table" && cursor.written.entries.has("dxf") ? "dxf" : "svg";
  const example = kind === "svg" ? svgExample : dxfExample;
  const table = tableAt(reading, cursor, "an outline from a drawing", keysOf(`${kind} outline`), example);
  const fileCursor = table?.need(kind, example);
  const file = fileCursor && nameAt(reading, fileCursor, "the drawing's file");
  const turn = turnAt(reading, table);
  const centreCursor = table?.at("centre");
  const centreMm = centreCursor && lengthAt(reading, centreCursor, "the centre", limits.signedPieceMm);
  if (!table || !fileCursor || file === undefined) return undefined;
  const shape = shapeAt(reading, table, fileCursor, file, kind);
  if (!shape || !stitch || turn === undefined) return undefined;
  const drawn = drawnOutline(shape, { stitch, turn, ...(centreMm !== undefined && { centreMm }) });
  if ("problem" in drawn)
    return report(reading, fileCursor, {
      code: "drawing-not-knittable",
      message: `${nameOf(shape, file)} cannot be knitted as one piece: ${drawn.problem}`,
      ...(drawn.expected !== undefined && { expected: drawn.expected }),
    });
  for (const remark of [...shape.remarks, ...drawn.remarks])
    report(reading, fileCursor, {
      code: "drawing-remark",
      severity: "warning",
      message: `${nameOf(shape, file)}: ${remark}`,
    });
  const { outline, neck, marks } = drawn;
  const [lowest] = neck;
  return {
    stations: outline,
    topMm: outline.at(-1)!.heightMm,
    neck: lowest ? { stations: neck, firstMm: lowest.heightMm } : {},
    marks: marks.map(({ name, heightMm }) => [name, heightMm]),
  };
}

const nameOf = ({ name }: DrawnShape, file: string): string => (name === "" ? file : `${name} in ${file}`);

function turnAt(reading: Reading, table: Table | undefined): 0 | 90 | 180 | 270 | undefined {
  const cursor = table?.at("turn");
  if (!cursor) return 0;
  const turn = wholeAt(reading, cursor, "the turn", limits.turn);
  if (turn === undefined || turn === 0 || turn === 90 || turn === 180 || turn === 270) return turn;
  return report(reading, cursor, {
    code: "wrong-word",
    message: "a drawing is turned by quarter turns, clockwise",
    expected: "90, 180 or 270",
  });
}

/** The line that is asked for, out of all that the drawing offers. */
function shapeAt(
  reading: Reading,
  table: Table,
  fileCursor: Cursor,
  file: string,
  kind: DrawingKind,
): DrawnShape | undefined {
  const nameCursor = table.at(kind === "svg" ? "id" : "piece");
  const name = nameCursor && nameAt(reading, nameCursor, kind === "svg" ? "the id" : "the piece's name");
  const sizeCursor = table.at("size");
  const size = sizeCursor && nameAt(reading, sizeCursor, "the size");
  if ((nameCursor && name === undefined) || (sizeCursor && size === undefined)) return undefined;
  const drawing = reading.drawing?.(file, kind) ?? { problem: "drawings cannot be read here" };
  if (isProblem(drawing))
    return report(reading, fileCursor, {
      code: "drawing-unreadable",
      message: `the drawing ${quoted(file)} cannot be used: ${drawing.problem}`,
      ...(drawing.expected !== undefined && { expected: drawing.expected }),
    });
  for (const remark of drawing.remarks)
    report(reading, fileCursor, {
      code: "drawing-remark",
      severity: "warning",
      message: `${file}: ${remark}`,
    });
  const found = shapesAsked(drawing.shapes, kind, {
    ...(name !== undefined && { name }),
    ...(size !== undefined && { size }),
  });
  if ("problem" in found)
    return report(reading, (found.about === "size" ? sizeCursor : undefined) ?? nameCursor ?? fileCursor, {
      code: "drawing-unknown-shape",
      message: `${file} ${found.problem}`,
      expected: found.expected,
    });
  if (found.refusal !== undefined)
    return report(reading, nameCursor ?? fileCursor, {
      code: "drawing-unusable",
      message: `${nameOf(found, file)} cannot be an outline: ${found.refusal}`,
    });
  return found;
}
