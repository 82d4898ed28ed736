import { holdsNeedle, type NeedleRange, needlesBetween } from "../cloth/bed.ts";
import { carriageAt, otherSide } from "../cloth/carriage.ts";
import { type CountedNeck, type CountedPiece, halfNeedlesAt, needlesAt } from "../cloth/counted-piece.ts";
import type { Fit } from "../fit/fit.ts";
import type { Side } from "../garment/garment.ts";
import { timesMade } from "../garment/times-made.ts";
import { type ActionsByRow, motifActions } from "./motif-actions.ts";
import type { Action, OrnamentAction, Sheet, SheetPiece, SheetRow } from "./sheet.ts";

/** The working sheet of a fit, piece by piece in the order of the file. */
export const buildSheet = (fit: Fit): Sheet => ({
  pieces: fit.pieces.map((piece) => buildPiece(fit, piece)),
});

function buildPiece(fit: Fit, piece: CountedPiece): SheetPiece {
  const ornament = motifActions(fit, piece.name);
  const needlesAtStart = needlesAt(piece, 0);
  const [from, to] = needlesAtStart;
  const rows = hasNeck(piece) ? rowsWithNeck(piece, ornament) : plainRows(piece, ornament);
  const make = timesMade(fit.garment, piece.name);
  const castOn: Action = { act: "cast-on", from, to };
  const [first, ...rest] = rows[0]!.row === 0 ? rows : [rowAt(piece, 0, needlesAtStart, []), ...rows];
  return {
    piece: piece.name,
    ...(make > 1 && { make }),
    needlesAtStart,
    rowsInAll: piece.rows,
    rows: [{ ...first!, do: [castOn, ...first!.do] }, ...rest],
  };
}

const hasNeck = (piece: CountedPiece): piece is CountedPiece & { neck: CountedNeck } =>
  piece.neck !== undefined;

function plainRows(piece: CountedPiece, ornament: ActionsByRow): readonly SheetRow[] {
  const rows: SheetRow[] = [];
  for (let row = 0; row <= piece.rows; row++) {
    const needles = needlesAt(piece, row);
    const actions = wholeRowActions(piece, row, ornament);
    if (row === piece.rows) actions.push({ act: "bind-off", from: needles[0], to: needles[1] });
    if (actions.length > 0) rows.push(rowAt(piece, row, needles, actions));
  }
  return rows;
}

/** Ornament first, while nothing moves at the edges; but what lies on needles that the row adds has to wait for them. */
function wholeRowActions(piece: CountedPiece, row: number, ornament: ActionsByRow): Action[] {
  const worked = ornament.get(row) ?? [];
  const shaped = sideShaping(piece, row, ["left", "right"]);
  const before = needlesAt(piece, rowBefore(row));
  return worked.every((action) => liesOn(action, before)) ? [...worked, ...shaped] : [...shaped, ...worked];
}

/**
 * Up to the neck the piece is one; then the half on the carriage's side is knitted to its bind-off while the other
 * is held, because needles on hold must be away from the carriage (machine-knitting mailing list, 21 Oct 1998).
 */
function rowsWithNeck(
  piece: CountedPiece & { neck: CountedNeck },
  ornament: ActionsByRow,
): readonly SheetRow[] {
  const { neck } = piece;
  const rows: SheetRow[] = [];
  for (let row = 0; row < neck.row; row++) {
    const actions = wholeRowActions(piece, row, ornament);
    if (actions.length > 0) rows.push(rowAt(piece, row, needlesAt(piece, row), actions));
  }
  const first = carriageAt(piece.carriage, neck.row);
  const second = otherSide(first);
  const held = halfNeedlesAt(piece, second, neck.row);
  rows.push(
    rowAt(piece, neck.row, halfNeedlesAt(piece, first, neck.row), [
      ...wholeRowActions(piece, neck.row, ornament),
      ...centreBindOff(neck),
      { act: "hold", from: held[0], to: held[1] },
    ]),
    ...halfRows(piece, first, ornament),
    rowAt(piece, neck.row, held, [{ act: "work", from: held[0], to: held[1] }]),
    ...halfRows(piece, second, ornament),
  );
  return rows;
}

function centreBindOff(neck: CountedNeck): readonly Action[] {
  const half = neck.left[0]!;
  if (half === 0) return [];
  const [from, to] = needlesBetween(-half, half);
  return [{ act: "bind-off", from, to, yarn: "separate" }];
}

function halfRows(
  piece: CountedPiece & { neck: CountedNeck },
  half: Side,
  ornament: ActionsByRow,
): readonly SheetRow[] {
  const rows: SheetRow[] = [];
  for (let row = piece.neck.row + 1; row <= piece.rows; row++) {
    const needles = halfNeedlesAt(piece, half, row);
    const actions = [
      ...(ornament.get(row) ?? []).filter((action) => liesOn(action, needles)),
      ...sideShaping(piece, row, [half]),
      ...neckShaping(piece, half, row),
    ];
    if (row === piece.rows) actions.push({ act: "bind-off", from: needles[0], to: needles[1] });
    if (actions.length > 0) rows.push(rowAt(piece, row, needles, actions));
  }
  return rows;
}

const liesOn = (action: OrnamentAction, needles: NeedleRange): boolean =>
  needlesOf(action).every((needle) => holdsNeedle(needles, needle));

function needlesOf(action: OrnamentAction): readonly number[] {
  switch (action.act) {
    case "hang":
    case "finish":
      return [action.needle];
    case "out":
      return [action.needle, action.onto];
    case "in":
      return [action.needle, action.from];
    case "cross":
    case "pattern":
    case "plain":
      return [action.from, action.to];
  }
}

function sideShaping(piece: CountedPiece, row: number, sides: readonly Side[]): readonly Action[] {
  return sides.flatMap((side) => shaping(side, piece[side][row]! - piece[side][rowBefore(row)]!));
}

/** Nothing changes at the cast-on edge. */
const rowBefore = (row: number): number => Math.max(0, row - 1);

/** At a neck's edge needles go out of work where the opening widens, and its side of the half faces the centre. */
function neckShaping(
  piece: CountedPiece & { neck: CountedNeck },
  half: Side,
  row: number,
): readonly Action[] {
  const edge = piece.neck[half];
  const index = row - piece.neck.row;
  return shaping(otherSide(half), edge[index - 1]! - edge[index]!).map(
    (action): Action => ({ ...action, edge: "neck" }),
  );
}

/** @param change needles added (above 0) or taken away at that side */
function shaping(side: Side, change: number): readonly Extract<Action, { side: Side }>[] {
  if (change > 1) return [{ act: "cast-on", side, needles: change }];
  if (change < -1) return [{ act: "bind-off", side, needles: -change }];
  if (change === 1) return [{ act: "increase", side, needles: 1 }];
  return change === -1 ? [{ act: "decrease", side, needles: 1 }] : [];
}

const rowAt = (
  piece: CountedPiece,
  row: number,
  needles: NeedleRange,
  actions: readonly Action[],
): SheetRow => ({
  row,
  carriage: carriageAt(piece.carriage, row),
  // The bind-off at the end of a block leaves nothing in work.
  needles: row === piece.rows ? [] : needles,
  do: actions,
});
