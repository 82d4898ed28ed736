import { otherSide } from "../cloth/carriage.ts";
import type { Side } from "../garment/garment.ts";
import { phrasesOf } from "../sheet/document/phrases.ts";
import type { Action, SheetPiece, SheetRow } from "../sheet/sheet.ts";
import { briefsOf } from "./brief.ts";

/** One place at which a knitter can stand: so many rows are knitted, and something may be to do before the next. */
export interface Step {
  /** Rows knitted, counted from the cast-on edge. */
  readonly row: number;
  /** Counts from 1; above a neck the second half is part 2, and its rows start again from the neck's. */
  readonly part: number;
  /** Where the carriage rests. */
  readonly carriage: Side;
  /** What to do here before the next row, in working order; empty at a plain row. */
  readonly phrases: readonly string[];
  /** The same in as few words as can be read from the machine. */
  readonly briefs: readonly string[];
}

const known = new WeakMap<SheetPiece, readonly Step[]>();

/** Every step of a piece in working order, plain rows included; never empty. */
export function stepsOf(piece: SheetPiece): readonly Step[] {
  const before = known.get(piece);
  if (before) return before;
  const steps = makeSteps(piece);
  known.set(piece, steps);
  return steps;
}

function makeSteps(piece: SheetPiece): readonly Step[] {
  const columns = columnsOf(piece);
  const steps: Step[] = [];
  for (const sheetRow of piece.rows) {
    const last = steps.at(-1);
    const isNewPart = last !== undefined && sheetRow.row <= last.row;
    if (last && !isNewPart) steps.push(...plainSteps(last, sheetRow.row));
    steps.push({
      row: sheetRow.row,
      part: (last?.part ?? 1) + (isNewPart ? 1 : 0),
      carriage: sheetRow.carriage,
      phrases: phrasesOf(sheetRow.do, columns),
      briefs: briefsOf(sheetRow.do, columns),
    });
  }
  return steps;
}

/** The rows between, at which nothing is done. */
const plainSteps = ({ row, part, carriage }: Step, end: number): readonly Step[] =>
  Array.from({ length: end - row - 1 }, (_, index) => ({
    row: row + index + 1,
    part,
    carriage: index % 2 === 0 ? otherSide(carriage) : carriage,
    phrases: [],
    briefs: [],
  }));

/** Columns of each motif as far as the sheet tells: a column that is worked is named in an action. */
function columnsOf(piece: SheetPiece): (motif: string) => number {
  const most = new Map<string, number>();
  for (const action of piece.rows.flatMap((row: SheetRow): readonly Action[] => row.do))
    if ("motif" in action) most.set(action.motif, Math.max(most.get(action.motif) ?? 1, action.column));
  return (motif) => most.get(motif) ?? 1;
}

/** How many parts a piece is worked in: 2 above a neck, else 1. */
export const partsOf = (piece: SheetPiece): number => stepsOf(piece).at(-1)!.part;

/** Where among a piece's steps so many rows of a part are knitted; undefined where there is no such step. */
export function stepAt(piece: SheetPiece, row: number, part: number): number | undefined {
  const index = stepsOf(piece).findIndex((step) => step.row === row && step.part === part);
  return index < 0 ? undefined : index;
}

/** The parts in which a row is worked. */
export const partsWith = (piece: SheetPiece, row: number): readonly number[] =>
  stepsOf(piece)
    .filter((step) => step.row === row)
    .map(({ part }) => part);
