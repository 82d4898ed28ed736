import type { CountedPiece } from "../../cloth/counted-piece.ts";
import type { Garment, Piece, Side } from "../../garment/garment.ts";
import type { Fit } from "../fit.ts";
import { type Breach, breach } from "./breach.ts";

/** The piece as it will be knitted against its outline: length in limits, edges near the outline, steps a bed can do. */
export function checkPiece(garment: Garment, fit: Fit, piece: Piece): readonly Breach[] {
  const counted = fit.pieces.find(({ name }) => name === piece.name);
  if (!counted) return [breach(piece.name, "is missing")];
  return [
    ...checkLength(garment, fit, piece, counted),
    ...checkSteps(garment, counted, "left"),
    ...checkSteps(garment, counted, "right"),
  ];
}

function checkLength(garment: Garment, fit: Fit, piece: Piece, counted: CountedPiece): readonly Breach[] {
  const rowMm = garment.gauge.ground.overMm / garment.gauge.ground.rows;
  const rowOf = (heightMm: number): number => rowAt(heightMm, rowMm);
  const changed = counted.rows - rowOf(piece.outline.at(-1)!.heightMm);
  const breaches: Breach[] = [];
  if (changed * rowMm > piece.growMm + lengthTolerance || -changed * rowMm > piece.shrinkMm + lengthTolerance)
    breaches.push(breach(piece.name, `its length changes by ${changed} rows, more than it may`));
  const markRow = (called: string): number =>
    rowOf(piece.marks.find(({ name }) => name === called)!.heightMm);
  // One field has one change, whatever its marks are called; fields that overlap in part have none.
  const asked = new Map<string, number>();
  for (const { index, change } of fit.placements.filter((placement) => placement.piece === piece.name)) {
    const { from, to } = garment.placements[index]!;
    const field = `${markRow(from)}..${markRow(to)}`;
    const before = asked.get(field) ?? change;
    if (before !== change)
      breaches.push(breach(piece.name, `${from} to ${to} changes by ${change} rows, and by ${before}`));
    asked.set(field, change);
  }
  const sum = [...asked.values()].reduce((all, change) => all + change, 0);
  if (sum !== changed)
    breaches.push(breach(piece.name, `${sum} rows are asked for, and its length changes by ${changed}`));
  return breaches;
}

/** A hundredth of a millimetre: far below a row, far above what the sums lose. */
export const lengthTolerance = 0.01;

/** The row nearest to a height, halves upward; a height that comes to half a row is that however its last digits fall. */
export const rowAt = (heightMm: number, rowMm: number): number => Math.floor(heightMm / rowMm + 0.5 + 1e-9);

/** Needles that the bed has, and steps that the carriage can knit. */
export function checkSteps(garment: Garment, piece: CountedPiece, side: Side): readonly Breach[] {
  const breaches: Breach[] = [];
  const edge = piece[side];
  const bedSide = side === "left" ? Math.floor(garment.bed.needles / 2) : Math.ceil(garment.bed.needles / 2);
  for (let row = 0; row <= piece.rows; row++) {
    if (edge[row]! > bedSide)
      breaches.push(
        breach(piece.name, `row ${row}: ${edge[row]} needles on the ${side}, the bed has ${bedSide}`),
      );
    const startsThere = (row % 2 === 0) === (piece.carriage === side);
    // Before row 0 there is no edge to step from.
    if (Math.abs(edge[row]! - (edge[row - 1] ?? edge[row]!)) > 1 && !startsThere)
      breaches.push(
        breach(piece.name, `row ${row}: several needles change on the ${side}, away from the carriage`),
      );
  }
  return breaches;
}
