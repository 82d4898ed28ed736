import type { ShapeDescription } from "../../shape/description.ts";
import type { MadeShape } from "../../shape/make-shape.ts";
import type { Taken } from "../../shape/measuring.ts";
import type { BodyLength, Size } from "../../sizes/body.ts";
import { FITS } from "../../sizes/fits.ts";
import { type Cursor, type Reading, report, type Table } from "./cursor.ts";
import { inCm } from "./numbers.ts";

/** What a shape was made from. */
export interface ShapeOrigin {
  readonly description: ShapeDescription;
  readonly made: MadeShape;
  readonly size: Size | undefined;
  readonly fit: string | undefined;
  readonly written: ReadonlyMap<string, number>;
}

/** Says what was taken from where: the size's table and its uncertain values, the fit, and every assumption. */
export function noteTaken(reading: Reading, table: Table, origin: ShapeOrigin): void {
  const note = noting(reading, table);
  noteSize(note, origin);
  noteEase(note, origin);
  for (const taken of origin.made.taken)
    if (taken.from === "assumption" && isWorthTelling(taken, origin))
      note("like", "from-assumption", `${taken.measurement} ${shortCm(taken.mm)}: ${taken.because}`);
}

type Note = (
  key: string,
  code: "from-size" | "uncertain-size" | "from-assumption" | "no-ease",
  message: string,
) => void;

const noting =
  (reading: Reading, table: Table): Note =>
  (key, code, message) => {
    // What is true of every piece of one size is told at the first.
    if (reading.diagnostics.some((told) => told.code === code && told.message === message)) return;
    const cursor: Cursor = table.at(key) ?? table.cursor;
    report(reading, cursor, { severity: "note", code, message, found: "" });
  };

function noteSize(note: Note, { size, made }: ShapeOrigin): void {
  if (!size) return;
  const lengths = made.taken.flatMap((taken) => {
    const length = taken.from === "size" ? size.lengths.get(taken.measurement) : undefined;
    return length ? [{ measurement: taken.measurement, length }] : [];
  });
  if (lengths.length > 0)
    note(
      "size",
      "from-size",
      `${size.name}: ${lengths.map(({ measurement, length }) => `${measurement} ${withRange(length)}`).join(", ")}; ${size.source}`,
    );
  for (const { measurement, length } of lengths)
    if (length.uncertain !== undefined)
      note("size", "uncertain-size", `the ${measurement} of ${size.name} is uncertain: ${length.uncertain}`);
}

function noteEase(note: Note, { description, fit, written }: ShapeOrigin): void {
  if (!description.measurements.ease?.orFit || written.has("ease")) return;
  if (fit === undefined)
    note("like", "no-ease", "no ease is written, so the piece is made to the body's own measurements");
  else {
    const { leastMm, mostMm, mm, source } = FITS.get(fit)!;
    note(
      "ease",
      "from-assumption",
      `${fit} fit: ${withRange({ leastMm, mostMm, mm })} beyond the chest; ${source}`,
    );
  }
}

/** An ease of nothing, because none was written, has been told already. */
const isWorthTelling = (
  taken: Extract<Taken, { from: "assumption" }>,
  { fit, description }: ShapeOrigin,
): boolean => !(taken.measurement === "ease" && description.measurements.ease?.orFit && fit === undefined);

const withRange = ({ mm, leastMm, mostMm }: Omit<BodyLength, "uncertain">): string =>
  leastMm === mostMm
    ? shortCm(mm)
    : `${shortCm(mm)} (the middle of ${Math.round(leastMm) / 10} to ${shortCm(mostMm)})`;

/** To a millimetre, as bodies are measured. */
const shortCm = (mm: number): string => inCm(Math.round(mm));
