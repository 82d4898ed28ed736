import type { Stitch } from "../../cloth/gauge.ts";
import { BUILT_IN_SHAPES } from "../../shape/builtin/index.ts";
import type { Choices } from "../../shape/chosen.ts";
import type { Measurement, ShapeDescription } from "../../shape/description.ts";
import { makeShape, measurementsOf } from "../../shape/make-shape.ts";
import type { ShapeTrouble } from "../../shape/trouble.ts";
import { SIZES, type Size } from "../../sizes/body.ts";
import { FITS } from "../../sizes/fits.ts";
import type { BodyPart, NeckStation, Station } from "../garment.ts";
import { keysOf } from "../keys.ts";
import {
  type Cursor,
  knownNameAt,
  type Reading,
  report,
  type Table,
  tableAt,
  unknownKey,
  wordAt,
} from "./cursor.ts";
import * as limits from "./limits.ts";
import { type Limits, lengthAt } from "./numbers.ts";
import type { ReadHeights } from "./outline.ts";
import { noteTaken } from "./shape-notes.ts";

const example = "{ like: body front, size: woman M, ease: standard }";

/** What a piece takes from a shape, in the form of heights that are written out. */
export interface ReadShape extends ReadHeights<Station> {
  readonly neck: ReadHeights<NeckStation>;
  readonly marks: readonly (readonly [name: string, heightMm: number])[];
  readonly part: BodyPart;
}

/**
 * Makes the form of a piece from the shape it names and the measurements beside it.
 *
 * @param stitch one stitch of the ground, which necklines and curves are made to; where it is not known (and that has
 *   been told) the shape is read, but not made
 */
export function shapeAt(reading: Reading, cursor: Cursor, stitch: Stitch | undefined): ReadShape | undefined {
  const table = tableAt(reading, cursor, "a shape", undefined, example);
  const likeCursor = table?.need("like", example);
  const name =
    likeCursor && knownNameAt(reading, likeCursor, "shape", "unknown-shape", [...BUILT_IN_SHAPES.keys()]);
  const description = name === undefined ? undefined : BUILT_IN_SHAPES.get(name);
  if (!table || name === undefined || !description) return undefined;
  const before = reading.diagnostics.length;
  const choices = choicesAt(reading, table, description);
  const measurements = measurementsOf(description, choices);
  refuseUnknownKeys(reading, table, name, [
    ...keysOf("shape"),
    ...Object.keys(description.choices ?? {}),
    ...Object.keys(measurements),
  ]);
  const size = sizeAt(reading, table);
  const { fit, written } = writtenAt(reading, table, measurements);
  if (!stitch || reading.diagnostics.length > before) return undefined;
  const fitMm = fit === undefined ? 0 : FITS.get(fit)!.mm;
  const measures = { written, choices, fitMm, stitch, ...(size && { size }) };
  const made = makeShape(name, description, measures);
  if ("trouble" in made) return refuse(reading, table, made.trouble);
  noteTaken(reading, table, { description, made, size, fit, written });
  const [lowest] = made.neck;
  return {
    stations: made.outline,
    topMm: made.outline.at(-1)!.heightMm,
    neck: lowest ? { stations: made.neck, firstMm: lowest.heightMm } : {},
    marks: made.marks.map(({ name: mark, heightMm }) => [mark, heightMm]),
    part: description.part,
  };
}

function choicesAt(reading: Reading, table: Table, { choices = {} }: ShapeDescription): Choices {
  return new Map(
    Object.entries(choices).map(([key, { words }]) => {
      const cursor = table.at(key);
      return [key, (cursor && wordAt(reading, cursor, key, words)) ?? words[0]];
    }),
  );
}

function refuseUnknownKeys(reading: Reading, table: Table, name: string, known: readonly string[]): void {
  if (table.cursor.written.kind !== "table") return;
  for (const [key, entry] of table.cursor.written.entries)
    if (!known.includes(key)) unknownKey(reading, table.cursor, key, entry, `a ${name}`, known);
}

function sizeAt(reading: Reading, table: Table): Size | undefined {
  const cursor = table.at("size");
  const name = cursor && knownNameAt(reading, cursor, "size", "unknown-size", [...SIZES.keys()]);
  return name === undefined ? undefined : SIZES.get(name);
}

/** The measurements that are written; a fit's name may stand for an ease. */
function writtenAt(
  reading: Reading,
  table: Table,
  measurements: Readonly<Record<string, Measurement>>,
): { readonly fit?: string; readonly written: ReadonlyMap<string, number> } {
  const written = new Map<string, number>();
  let fit: string | undefined;
  for (const [name, measurement] of Object.entries(measurements)) {
    const cursor = table.at(name);
    if (!cursor) continue;
    if (measurement.orFit && isWord(cursor)) {
      fit = knownNameAt(reading, cursor, "fit", "wrong-word", [...FITS.keys()]);
      continue;
    }
    const mm = lengthAt(reading, cursor, `the ${name}`, limitsOf(measurement));
    if (mm !== undefined) written.set(name, mm);
  }
  return { written, ...(fit !== undefined && { fit }) };
}

const isWord = ({ written }: Cursor): boolean => written.kind === "text" && !/\d/.test(written.text);

const limitsOf = ({ from }: Measurement): Limits =>
  from === "below nothing" ? limits.easeMm : from === "nothing" ? limits.pieceMm : limits.pieceWidthMm;

/** Tells a trouble at the first key to blame that is written, else at the shape itself. */
function refuse(reading: Reading, table: Table, { blame, ...trouble }: ShapeTrouble): undefined {
  const cursor = blame.map((key) => table.at(key)).find((at) => at !== undefined);
  const place = cursor ? undefined : table.cursor.keyPlace;
  return report(reading, cursor ?? table.cursor, { ...trouble, ...(place && { place }) });
}
