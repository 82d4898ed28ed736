import type {
  AllowEntry,
  GarmentFile,
  MarginsEntry,
  MeetingEntry,
  PlacementEntry,
  SideName,
} from "../garment-file.ts";
import {
  type Cloth,
  holdsLength,
  markRow,
  neckEdge,
  type Stretch,
  stretchedRow,
  wantedEdge,
  wholeRows,
} from "./cloth.ts";
import { allowedBetween, choice, isAllowed } from "./entries.ts";
import type { Look } from "./looks.ts";
import { amountBeside, weightOf } from "./weights.ts";

/** One way to lay a look on a piece. */
export interface Layout {
  readonly piece: string;
  readonly motif: string;
  readonly repeats: number;
  readonly columns: number;
  readonly gap: number;
  readonly rowsChanged: number;
  readonly firstRow: number;
  readonly lastRow: number;
  readonly margins: {
    readonly bottom: number;
    readonly top: number;
    readonly left: number;
    readonly right: number;
  };
  /** Where the panel begins and ends, in needles from the piece's centre line; left of it is negative. */
  readonly panel: { readonly from: number; readonly to: number };
  readonly cost: number;
}

/**
 * Needles between the centre line and one side's edge at a row (0 = cast-on), for a piece made longer by so
 * many rows, without the needles a cable's draw-in adds: the referee adds those itself.
 */
export type Edges = (piece: string, lengthChange: number, side: SideName, row: number) => number;

/** The field of a placement in the unchanged piece, as a stretch of no rows yet. */
export function fieldOf(garment: GarmentFile, cloth: Cloth, placement: PlacementEntry): Stretch {
  const piece = garment.pieces[placement.on]!;
  const from = markRow(piece, placement.from, cloth);
  const to = markRow(piece, placement.to, cloth);
  return { from, to, change: 0 };
}

/** Every length change that the piece's `grow` and `shrink` allow, in rows, rising. */
export function lengthChanges(garment: GarmentFile, cloth: Cloth, pieceName: string): number[] {
  const piece = garment.pieces[pieceName]!;
  const rows = markRow(piece, "bind-off", cloth);
  return fieldChanges(garment, cloth, pieceName).filter((change) => holdsLength(piece, rows + change, cloth));
}

/** The same for one field of several on a piece: what they come to together is not looked at. */
export function fieldChanges(garment: GarmentFile, cloth: Cloth, pieceName: string): number[] {
  const piece = garment.pieces[pieceName]!;
  return allowedBetween(undefined, -wholeRows(piece.shrink, cloth), wholeRows(piece.grow, cloth));
}

/**
 * Every layout of a placement under one look, on a piece stretched so: `field` is the placement's own field
 * with its change, `others` are stretches elsewhere on the piece.
 */
export function* layoutsOf(
  garment: GarmentFile,
  cloth: Cloth,
  placement: PlacementEntry,
  look: Look,
  edges: Edges | undefined,
  field: Stretch,
  others: readonly Stretch[] = [],
): Generator<Layout> {
  const piece = garment.pieces[placement.on]!;
  const rows = field.to - field.from + field.change;
  if (rows <= 0) return;
  const stretches = [field, ...others];
  const lengthened = stretches.reduce((total, { change }) => total + change, 0);
  const edgeOf = (side: SideName): Narrowest =>
    edges
      ? knownEdge(edges, placement.on, lengthened, side)
      : new Narrowest(wantedEdge(piece, cloth, stretches, side));
  yield* layoutsInField(garment, placement, look, {
    rows,
    firstRow: stretchedRow(field.from, others),
    change: field.change,
    left: edgeOf("left"),
    right: edgeOf("right"),
    neck: neckEdge(piece, cloth, stretches),
    markRow: (name) => stretchedRow(markRow(piece, name, cloth), stretches),
  });
}

/** Given edges are the same for every look, so that what was measured on them once need not be measured again. */
function knownEdge(edges: Edges, piece: string, lengthened: number, side: SideName): Narrowest {
  const measured = measuredEdges.get(edges) ?? new Map<string, Narrowest>();
  measuredEdges.set(edges, measured);
  const key = `${piece} ${lengthened} ${side}`;
  const known = measured.get(key) ?? new Narrowest((row) => edges(piece, lengthened, side, row));
  measured.set(key, known);
  return known;
}

const measuredEdges = new WeakMap<Edges, Map<string, Narrowest>>();

interface Field {
  readonly rows: number;
  readonly firstRow: number;
  readonly change: number;
  readonly left: Narrowest;
  readonly right: Narrowest;
  readonly neck: (row: number) => number | undefined;
  readonly markRow: (name: string) => number;
}

function* layoutsInField(
  garment: GarmentFile,
  placement: PlacementEntry,
  look: Look,
  field: Field,
): Generator<Layout> {
  const weights = garment.weights ?? {};
  const repeatsChoice = choice(placement.repeats);
  const margins = placement.margins ?? {};
  const bottoms = new Set(allowedBetween(margins.bottom, 0, field.rows));
  const numbersOfColumns = allowedBetween(
    choice(placement.columns ?? 1).allow,
    1,
    Math.min(garment.bed.needles, mostColumns),
  );
  const tops = new Set(allowedBetween(margins.top, 0, field.rows));
  for (const repeats of allowedBetween(repeatsChoice.allow, 1, field.rows)) {
    const slack = field.rows - look.leadRows - repeats * look.repeatRows;
    for (let bottom = 0; bottom <= slack; bottom++) {
      const top = slack - bottom;
      if (!bottoms.has(bottom) || !tops.has(top)) continue;
      const firstRow = field.firstRow + bottom;
      const lastRow = field.firstRow + field.rows - top;
      const { meet } = placement;
      if (meet && !meets(rowsInto(look, firstRow, field.markRow(meet.mark)), meet.at, look.repeatRows))
        continue;
      const upright =
        weightOf(weights, "length") * Math.abs(field.change) +
        weightOf(weights, "balance") * Math.abs(bottom - top) +
        weightOf(weights, "repeats") * amountBeside(repeatsChoice.prefer, repeats);
      for (const across of panelsOf(garment, placement, look, field, firstRow, lastRow, numbersOfColumns)) {
        yield {
          piece: placement.on,
          motif: placement.motif,
          repeats,
          columns: across.columns,
          gap: across.gap,
          rowsChanged: field.change,
          firstRow,
          lastRow,
          margins: { bottom, top, left: across.left, right: across.right },
          panel: { from: across.from, to: across.to },
          cost: upright + across.cost,
        };
      }
    }
  }
}

/** Rows from the last whole repeat of a motif to a row, the motif thought on below and above itself. */
export function rowsInto(look: Look, firstRow: number, row: number): number {
  const rows = (row - firstRow - look.leadRows) % look.repeatRows;
  return rows < 0 ? rows + look.repeatRows : rows;
}

function meets(rows: number, at: MeetingEntry["at"], repeatRows: number): boolean {
  if (at === "whole") return rows === 0;
  return at === "half" ? 2 * rows === repeatRows : rows === at % repeatRows;
}

interface Panel {
  readonly columns: number;
  readonly gap: number;
  readonly from: number;
  readonly to: number;
  readonly left: number;
  readonly right: number;
  readonly cost: number;
}

/** No garment that is judged has room for more columns. */
const mostColumns = 50;

/** Every number of columns, gap and place across the piece that fits between two rows, both included. */
function* panelsOf(
  garment: GarmentFile,
  placement: PlacementEntry,
  look: Look,
  field: Field,
  firstRow: number,
  lastRow: number,
  numbersOfColumns: readonly number[],
): Generator<Panel> {
  const weights = garment.weights ?? {};
  const columnsChoice = choice(placement.columns ?? 1);
  const gapChoice = choice(placement.gap ?? 0);
  const width = look.leftReach + look.rightReach;
  const leftEdge = field.left.between(firstRow, lastRow);
  const rightEdge = field.right.between(firstRow, lastRow);
  for (const columns of numbersOfColumns) {
    const extra = Math.round((columns * look.drawnIn) / 2);
    const [leftMost, rightMost] = [leftEdge + extra, rightEdge + extra];
    // What is drawn in is cast on wider. No garment that is judged is wider anywhere than where its motif lies, and as
    // wide as the bed.
    if (extra > 0 && Math.max(leftMost, rightMost) > garment.bed.needles / 2) continue;
    if (columns * width > leftMost + rightMost) break;
    // One column has no gap beside it, so there is none to choose and none to prefer.
    const gaps = columns === 1 ? [0] : allowedBetween(gapChoice.allow, 0, leftMost + rightMost);
    for (const gap of gaps) {
      const half = ((columns - 1) * (width + gap)) / 2;
      const cost =
        weightOf(weights, "columns") * amountBeside(columnsChoice.prefer, columns) +
        (columns === 1 ? 0 : weightOf(weights, "gap") * amountBeside(gapChoice.prefer, gap));
      const total = columns * width + (columns - 1) * gap;
      const [edgeLeft, edgeRight] = look.edge ?? [0, 0];
      // With a mirrored column the panel is balanced as a whole, as one with edge stitches is.
      for (const { from, to } of look.edge || (placement.mirror && columns > 1)
        ? banded(placement.margins, total + edgeLeft + edgeRight, leftMost, rightMost)
        : centresOf(placement.margins, half, leftMost, rightMost).map((centre) => ({
            from: centre - half - look.leftReach,
            to: centre + half + look.rightReach,
          }))) {
        const [left, right] = [leftMost + from, rightMost - to];
        if (!marginsFit(placement.margins, left, right)) continue;
        if (meetsNeck(field.neck, firstRow, lastRow, from, to)) continue;
        yield { columns, gap, from, to, left, right, cost };
      }
    }
  }
}

const isFree = (margins: MarginsEntry | undefined): boolean =>
  margins?.left !== undefined || margins?.right !== undefined;

/** Where a panel may lie that stands about the centre as a whole, half a needle to the left where it must. */
function banded(
  margins: MarginsEntry | undefined,
  total: number,
  leftEdge: number,
  rightEdge: number,
): { from: number; to: number }[] {
  const central = Math.floor(-total / 2);
  if (!isFree(margins)) return [{ from: central, to: central + total }];
  const places: { from: number; to: number }[] = [];
  for (let from = -leftEdge; from + total <= rightEdge; from++) places.push({ from, to: from + total });
  return places;
}

/**
 * Where the panel's centre may lie so that every column's centre is between two needles; a panel in the centre that
 * asks for half a needle stands half a needle to the left.
 */
function centresOf(
  margins: MarginsEntry | undefined,
  half: number,
  leftEdge: number,
  rightEdge: number,
): number[] {
  const beside = Number.isInteger(half) ? 0 : 0.5;
  if (!isFree(margins)) return [0 - beside];
  const centres: number[] = [];
  for (let centre = -leftEdge - beside; centre <= rightEdge; centre++) centres.push(centre);
  return centres;
}

function marginsFit(margins: MarginsEntry | undefined, left: number, right: number): boolean {
  if (!isFree(margins)) return Math.min(left, right) >= (margins?.side?.least ?? 0);
  return inRange(margins?.left, left) && inRange(margins?.right, right);
}

const inRange = (allow: AllowEntry | undefined, margin: number): boolean =>
  margin >= 0 && isAllowed(allow, margin);

function meetsNeck(
  neck: Field["neck"],
  firstRow: number,
  lastRow: number,
  from: number,
  to: number,
): boolean {
  for (let row = firstRow; row <= lastRow; row++) {
    const half = neck(row);
    if (half !== undefined && from < half && to > -half) return true;
  }
  return false;
}

/** The narrowest edge between two rows; every row looked at is remembered, as many layouts ask for it. */
class Narrowest {
  readonly #edgeAt: (row: number) => number;
  readonly #edges = new Map<number, number>();
  readonly #least = new Map<number, number>();

  constructor(edgeAt: (row: number) => number) {
    this.#edgeAt = edgeAt;
  }

  between(firstRow: number, lastRow: number): number {
    const key = firstRow * 100_000 + lastRow;
    let least = this.#least.get(key);
    if (least === undefined) {
      least = Number.POSITIVE_INFINITY;
      for (let row = firstRow; row <= lastRow; row++) least = Math.min(least, this.#edge(row));
      this.#least.set(key, least);
    }
    return least;
  }

  #edge(row: number): number {
    let edge = this.#edges.get(row);
    if (edge === undefined) {
      edge = this.#edgeAt(row);
      this.#edges.set(row, edge);
    }
    return edge;
  }
}
