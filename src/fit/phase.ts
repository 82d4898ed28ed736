import { stretched } from "../cloth/counted-piece.ts";
import type { Phase } from "../garment/garment.ts";
import { type Field, stretchOf } from "./field.ts";

/** A motif in its field, as far as it matters where in its repeat it stands at a row. */
interface Standing {
  readonly field: Field;
  readonly change: number;
  readonly bottom: number;
  readonly leadRows: number;
  readonly repeatRows: number;
}

/**
 * Rows from the beginning of a repeat at each row at which the motif has to stand as another does: 0 where it is
 * whole. Beyond its first and last row the motif is thought on.
 */
export const phasesOf = (standing: Standing): readonly number[] =>
  standing.field.matchedRows.map((row) => phaseAt(standing, row));

/**
 * For the first row of a field and for its last, where another field's motif may want it as well, 1 if the motif stands
 * on it and 0 if not.
 */
export const endsTaken = ({ sharedRows }: Field, bottom: number, top: number): readonly number[] => [
  ...(sharedRows?.first ? [Number(bottom === 0)] : []),
  ...(sharedRows?.last ? [Number(top === 0)] : []),
];

/** Whether the motif stands at each of its marks as it should. */
export const keepsMeetings = (standing: Standing): boolean =>
  standing.field.meetings.every(
    ({ row, at }) => phaseAt(standing, row) === rowsInto(at, standing.repeatRows),
  );

function phaseAt({ field, change, bottom, leadRows, repeatRows }: Standing, markRow: number): number {
  const row = stretched(markRow, [stretchOf(field, change)]) - field.fromRow;
  return rowsIntoRepeat(row - bottom - leadRows, repeatRows);
}

/** Whether a row so many rows above the beginning of a repeat is where a phase asks for it. */
export const isAtPhase = (rows: number, phase: Phase, repeatRows: number): boolean =>
  rowsIntoRepeat(rows, repeatRows) === rowsInto(phase, repeatRows);

/** A phase in rows from the beginning of a repeat; no number where a repeat of odd rows has no middle. */
const rowsInto = (phase: Phase, repeatRows: number): number => {
  if (phase === "whole") return 0;
  return phase === "half" ? repeatRows / 2 : rowsIntoRepeat(phase.rows, repeatRows);
};

/** Rows from the beginning of the repeat that holds a row, so many rows above the first repeat's beginning or below it. */
export const rowsIntoRepeat = (rows: number, repeatRows: number): number =>
  ((rows % repeatRows) + repeatRows) % repeatRows;
