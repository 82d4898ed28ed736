import { type CountedPiece, countPiece, rowOf, type Stretch } from "../cloth/counted-piece.ts";
import { groundStitch, type Stitch, wholeWithin } from "../cloth/gauge.ts";
import type { Bounds } from "../cloth/gauge-range.ts";
import { allows } from "../garment/allowed.ts";
import type { Garment, Phase, Piece, Placement } from "../garment/garment.ts";
import { steadyChanges } from "./steady/length.ts";

/** The rows of a piece in which one placement may lie, and what shares the piece with it. */
export interface Field {
  readonly index: number;
  readonly placement: Placement;
  readonly piece: Piece;
  /** Rows of the two marks before any change of length. */
  readonly fromRow: number;
  readonly toRow: number;
  /** Rows by which the field may become shorter (at most 0) and longer. */
  readonly leastChange: number;
  readonly mostChange: number;
  /** Rows by which the piece as a whole may become longer, where its length has to keep its limits for every gauge. */
  readonly steadyChanges?: Bounds;
  /** What the motif has to meet, with the rows of the marks before any change of length. */
  readonly meetings: readonly { readonly row: number; readonly at: Phase }[];
  /** Rows of the marks at which it has to stand as another placement does, in the order of the garment's matches. */
  readonly matchedRows: readonly number[];
  /** Whether a motif of a field that ends where this one begins, or begins where it ends, may want that row as well. */
  readonly sharedRows?: SharedRows;
}

/** The first row of a field and its last. */
interface SharedRows {
  readonly first: boolean;
  readonly last: boolean;
}

/** How two fields of one piece lie to each other. */
export type Relation = "apart" | "same" | "overlapping";

export function fieldsOf(garment: Garment): readonly Field[] {
  const stitch = groundStitch(garment.gauge);
  const fields = garment.placements.map((placement, index) => fieldOf(garment, placement, index, stitch));
  // Two fields that overlap without being one would each stretch part of the other: neither may change then.
  return fields.map((field) => {
    const relations = neighbours(field, fields).map((other) => relation(field, other));
    const changing = relations.includes("overlapping") ? { ...field, leastChange: 0, mostChange: 0 } : field;
    const shared = sharedRowsOf(field, neighbours(field, fields));
    const sharing = shared.first || shared.last ? { ...changing, sharedRows: shared } : changing;
    // The changes of several fields keep it together.
    return relations.includes("apart") ? sharing : keepingSteady(sharing);
  });
}

/** A row between two fields is wanted by both motifs only where neither has to leave a margin at it. */
function sharedRowsOf(field: Field, others: readonly Field[]): SharedRows {
  const { margins } = field.placement;
  return {
    first:
      allows(margins.bottom, 0) &&
      others.some(({ toRow, placement }) => toRow === field.fromRow && allows(placement.margins.top, 0)),
    last:
      allows(margins.top, 0) &&
      others.some(({ fromRow, placement }) => fromRow === field.toRow && allows(placement.margins.bottom, 0)),
  };
}

/** A field that changes as its piece does; where no change is left, its least is above its most. */
const keepingSteady = (field: Field): Field =>
  field.steadyChanges
    ? {
        ...field,
        leastChange: Math.max(field.leastChange, field.steadyChanges.least),
        mostChange: Math.min(field.mostChange, field.steadyChanges.most),
      }
    : field;

export const neighbours = (field: Field, fields: readonly Field[]): readonly Field[] =>
  fields.filter((other) => other.index !== field.index && other.piece === field.piece);

export function relation(one: Field, other: Field): Relation {
  if (one.fromRow === other.fromRow && one.toRow === other.toRow) return "same";
  return one.toRow <= other.fromRow || other.toRow <= one.fromRow ? "apart" : "overlapping";
}

function fieldOf(garment: Garment, placement: Placement, index: number, stitch: Stitch): Field {
  const piece = garment.pieces.find(({ name }) => name === placement.piece)!;
  const markRow = (name: string): number =>
    rowOf(piece.marks.find((mark) => mark.name === name)!.heightMm, stitch);
  const fromRow = markRow(placement.from);
  const toRow = markRow(placement.to);
  const steady = steadyChanges(garment, piece);
  return {
    index,
    placement,
    piece,
    fromRow,
    toRow,
    // A field never shrinks to nothing.
    leastChange: -Math.min(wholeWithin(piece.shrinkMm / stitch.heightMm), Math.max(0, toRow - fromRow - 1)),
    mostChange: wholeWithin(piece.growMm / stitch.heightMm),
    ...(steady && { steadyChanges: steady }),
    meetings: placement.meet.map(({ mark, at }) => ({ row: markRow(mark), at })),
    matchedRows: garment.matches
      .filter(({ placements }) => placements.includes(index))
      .map(({ mark }) => markRow(mark)),
  };
}

export const stretchOf = (field: Field, change: number): Stretch => ({
  fromRow: field.fromRow,
  toRow: field.toRow,
  change,
});

/** The stretches of a piece once every field on it has its change; fields that are one stretch once. */
export function stretchesOf(
  fields: readonly Field[],
  changeOf: (field: Field) => number,
): readonly Stretch[] {
  const stretches = new Map<string, Stretch>();
  for (const field of fields) {
    const change = changeOf(field);
    if (change !== 0) stretches.set(`${field.fromRow}-${field.toRow}`, stretchOf(field, change));
  }
  return [...stretches.values()];
}

/** Rows of counted pieces that are kept: about 150 MB. */
const usualRowsKept = 5_000_000;

/** Counts pieces once for each set of stretches that is asked for, as far as there is room to keep them. */
export function createPieceCounter(
  stitch: Stitch,
  mostRowsKept = usualRowsKept,
): (piece: Piece, stretches: readonly Stretch[], extraNeedles: number) => CountedPiece {
  const counted = new Map<string, CountedPiece>();
  let rowsKept = 0;
  return (piece, stretches, extraNeedles) => {
    // As it was drawn it is the same piece, whichever of its stretches is asked about.
    const changing = stretches.filter(({ change }) => change !== 0);
    const key = JSON.stringify([piece.name, changing, extraNeedles]);
    const known = counted.get(key);
    if (known) return known;
    const made = countPiece(piece, stitch, changing, extraNeedles);
    rowsKept += made.rows;
    if (rowsKept > mostRowsKept) {
      counted.clear();
      rowsKept = made.rows;
    }
    counted.set(key, made);
    return made;
  };
}
