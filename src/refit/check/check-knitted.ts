import type { CountedPiece } from "../../cloth/counted-piece.ts";
import { type Breach, breach } from "../../fit/check/breach.ts";
import type { Fit, FittedPlacement } from "../../fit/fit.ts";
import { hungOn } from "./hung.ts";

/** Edges, marks, neck and hangings up to the present row are those that were knitted. */
export function checkKnitted(
  before: Fit,
  was: CountedPiece,
  now: Fit,
  piece: CountedPiece,
  row: number,
): readonly Breach[] {
  const breaches: Breach[] = [];
  const same = (what: string, one: unknown, other: unknown): void => {
    const [knitted, told] = [JSON.stringify(one), JSON.stringify(other)];
    if (knitted !== told) breaches.push(breach(piece.name, `${what} was ${knitted}, and ${told} is told`));
  };
  for (const side of ["left", "right"] as const)
    same(`${side} edge`, was[side].slice(0, row + 1), piece[side].slice(0, row + 1));
  same("carriage", was.carriage, piece.carriage);
  for (const [mark, at] of was.marks) {
    if (at <= row) same(`mark ${mark}`, at, piece.marks.get(mark));
    else if ((piece.marks.get(mark) ?? -1) < row)
      breaches.push(breach(piece.name, `mark ${mark} is still to come, and is told below row ${row}`));
  }
  if (was.neck && was.neck.row <= row) {
    const above = row - was.neck.row + 1;
    same("neck", was.neck.row, piece.neck?.row);
    for (const half of ["left", "right"] as const)
      same(`${half} neck edge`, was.neck[half].slice(0, above), piece.neck?.[half].slice(0, above));
  } else if (piece.neck && piece.neck.row <= row)
    breaches.push(breach(piece.name, `its neck is told at row ${piece.neck.row}, which is knitted`));
  const onPiece = before.placements.filter((placed) => placed.piece === piece.name);
  same(
    "motifs",
    onPiece.map(({ index }) => index),
    now.placements.map(({ index }) => index),
  );
  for (const placed of onPiece)
    same(
      `${placed.motif} so far`,
      soFar(placed, row),
      now.placements.filter(({ index }) => index === placed.index).flatMap((one) => soFar(one, row)),
    );
  return breaches;
}

const soFar = (placed: FittedPlacement, row: number): readonly unknown[] =>
  hungOn(placed)
    .filter((hung) => hung.row <= row)
    .map((hung) => [placed.panel.centres, hung.strand, hung.row, hung.from, hung.to, hung.pickup]);
