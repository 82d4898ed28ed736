import type { CountedPiece } from "../../cloth/counted-piece.ts";
import { type Breach, breach } from "../../fit/check/breach.ts";
import { lengthTolerance, rowAt } from "../../fit/check/check-piece.ts";
import type { Fit, FittedPlacement } from "../../fit/fit.ts";

/**
 * The piece's end and the marks of its motifs at the rows that the measured gauge asks for, moved by the changes told;
 * and those changes within what the piece may grow or shrink, or what they were already when they were knitted.
 */
export function checkLengths(
  before: Fit,
  was: CountedPiece,
  now: Fit,
  piece: CountedPiece,
  row: number,
): readonly Breach[] {
  const { garment } = now;
  const rowMm = garment.gauge.ground.overMm / garment.gauge.ground.rows;
  const { outline, marks, growMm, shrinkMm } = garment.pieces.find(({ name }) => name === piece.name)!;
  const heightOf = (mark: string): number => marks.find(({ name }) => name === mark)!.heightMm;
  const rowOf = (heightMm: number): number => rowAt(heightMm, rowMm);
  // One field has one change, whatever its marks are called.
  const fieldOf = ({ index }: FittedPlacement): string => {
    const { from, to } = garment.placements[index]!;
    return `${rowOf(heightOf(from))}..${rowOf(heightOf(to))}`;
  };
  const fields = new Map(now.placements.map((placed) => [fieldOf(placed), placed]));
  const changeUpTo = (heightMm: number): number =>
    [...fields.values()].reduce(
      (sum, { index, change }) =>
        rowOf(heightOf(garment.placements[index]!.to)) <= rowOf(heightMm) ? sum + change : sum,
      0,
    );
  const breaches: Breach[] = [];
  const expect = (what: string, told: number, heightMm: number): void => {
    // Nothing is done at a row that is knitted, so a neck opens above it at the soonest.
    const soonest = what === "neck" ? row + 1 : row;
    const expected = Math.max(soonest, rowOf(heightMm) + changeUpTo(heightMm));
    if (told !== expected)
      breaches.push(breach(piece.name, `${what} is told at row ${told}, and it is at row ${expected}`));
  };
  expect("bind-off", piece.rows, outline.at(-1)!.heightMm);
  for (const to of new Set(now.placements.map(({ index }) => garment.placements[index]!.to)))
    if (was.marks.get(to)! > row) expect(to, piece.marks.get(to)!, heightOf(to));
  const changed = [...fields.values()].reduce((sum, { change }) => sum + change, 0);
  const settled = before.placements
    .filter(
      (placed) => placed.piece === piece.name && was.marks.get(garment.placements[placed.index]!.to)! <= row,
    )
    .reduce((sums, placed) => sums.set(fieldOf(placed), placed.change), new Map<string, number>());
  const knitted = [...settled.values()].reduce((sum, change) => sum + change, 0);
  const most = Math.max(growMm, knitted * rowMm) + lengthTolerance;
  const least = Math.min(-shrinkMm, knitted * rowMm) - lengthTolerance;
  if (changed * rowMm > most || changed * rowMm < least)
    breaches.push(breach(piece.name, `its length changes by ${changed} rows, more than it may`));
  return breaches;
}
