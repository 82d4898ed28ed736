import type { CountedPiece } from "../../cloth/counted-piece.ts";
import type { Allowed } from "../../garment/allowed.ts";
import type { Garment, Placement } from "../../garment/garment.ts";
import type { Fit, FittedPlacement } from "../fit.ts";
import { type Breach, breach } from "./breach.ts";
import { lastsFor } from "./check-on-hand.ts";
import { amountTaken, countTaken } from "./taken.ts";
import { type Extent, numberOf, walk } from "./walk.ts";

/** What is told to be worked above the last whole repeat: as far as it goes and no further, needle by needle. */
export function checkPart(garment: Garment, fit: Fit, fitted: FittedPlacement): readonly Breach[] {
  const placement = garment.placements[fitted.index]!;
  const where = `${fitted.motif} on ${fitted.piece}`;
  const piece = fit.pieces.find(({ name }) => name === fitted.piece);
  const { part, lastRow } = fitted;
  if (placement.unfinished === "plain" || !piece || fitted.sections.length === 0)
    return part ? [breach(where, "is worked in part where rows are to stay plain")] : [];
  const found = partIn(cellsFree(fit, fitted, placement, piece), fitted);
  if (!part && wouldNotLast(garment, fit, fitted, found)) return [];
  const toldTo = part?.lastRow ?? lastRow;
  const breaches: Breach[] = [];
  if (part && part.rows !== part.lastRow - lastRow)
    breaches.push(breach(where, "rows of its part do not add up"));
  if (toldTo !== found.lastRow)
    breaches.push(breach(where, `its part is told to row ${toldTo}, and it goes to row ${found.lastRow}`));
  if (part && plainCounts(part.columns) !== plainCounts(found.columns))
    breaches.push(
      breach(
        where,
        `its part is told as ${plainCounts(part.columns)}, and it is ${plainCounts(found.columns)}`,
      ),
    );
  return breaches;
}

/** Whether there is too little on hand to work a part that there is room for. */
function wouldNotLast(
  garment: Garment,
  fit: Fit,
  fitted: FittedPlacement,
  { lastRow, columns }: Found,
): boolean {
  const { onHand } = garment;
  if (!onHand) return false;
  const part = { lastRow, rows: lastRow - fitted.lastRow, columns };
  const worked = fit.placements.map((one) => (one === fitted ? { ...fitted, part } : one));
  const taken = countTaken(garment, { ...fit, placements: worked }, true);
  return !onHand.supplies.every((supply) => lastsFor(supply, amountTaken(garment, supply, taken)));
}

/** By column, whatever the order of its strands. */
const plainCounts = (columns: Found["columns"]): string =>
  columns
    .map((counts) =>
      Object.entries(counts)
        .map(([name, count]) => `${name} ${count}`)
        .sort()
        .join(", "),
    )
    .join("; ");

/** What may be taken of a piece. */
interface Free {
  /** Whether needles keep the field and the side margins at a row. */
  readonly keeps: (extent: Extent, row: number) => boolean;
  /** Whether nothing else lies on needles from one row to another, and no neck opens there at the latter. */
  readonly clear: (extent: Extent, row: number, fromRow: number) => boolean;
}

interface Found {
  readonly lastRow: number;
  readonly columns: readonly Readonly<Record<string, number>>[];
}

function partIn(free: Free, fitted: FittedPlacement): Found {
  const { sections, panel, firstRow, lastRow } = fitted;
  const { motif } = sections[0]!.look;
  const runs = sections.map(({ look: { values }, repeats }) => ({ values, repeats }));
  const one = walk(motif, [...runs, { ...runs.at(-1)!, repeats: 1 }]);
  const repeatRows = numberOf(motif.repeat, runs.at(-1)!.values);
  if (motif.kind === "band") {
    const rows = rowsFree(free, [{ from: panel.leftEdge, to: panel.rightEdge }], lastRow, repeatRows);
    return { lastRow: lastRow + (motif.colours > 1 ? 2 * Math.floor(rows / 2) : rows), columns: [] };
  }
  const whole = walk(motif, runs);
  let last = lastRow;
  const columns = panel.centres.map((centre, column) => {
    const turned = column >= panel.centres.length - panel.mirrored;
    const onPiece = ({ from, to }: Extent): Extent =>
      turned ? { from: centre - to, to: centre - from } : { from: centre + from, to: centre + to };
    const standing = one.standing.map(onPiece);
    const laddersTo = lastRow + rowsFree(free, standing, lastRow, repeatRows);
    return Object.fromEntries(
      one.strands.map(({ name, points }, strand) => {
        const done = whole.strands[strand]!.points.length;
        let next = done;
        while (next < points.length) {
          const [from, to] = [points[next - 1]!, points[next]!];
          const row = firstRow + to.row;
          if (row > laddersTo) break;
          const stretch = hull(onPiece(from), onPiece(to));
          if (!free.keeps(onPiece(to), row) || !free.clear(stretch, row, firstRow + from.row + 1)) break;
          last = Math.max(last, row);
          next++;
        }
        return [name, next - done];
      }),
    );
  });
  return { lastRow: last, columns };
}

function rowsFree(free: Free, extents: readonly Extent[], lastRow: number, most: number): number {
  for (let rows = 1; rows <= most; rows++)
    if (
      !extents.every(
        (extent) => free.keeps(extent, lastRow + rows) && free.clear(extent, lastRow + rows, lastRow + rows),
      )
    )
      return rows - 1;
  return most;
}

const hull = (one: Extent, other: Extent): Extent => ({
  from: Math.min(one.from, other.from),
  to: Math.max(one.to, other.to),
});

/** Every needle's left boundary. */
const cellsOf = ({ from, to }: Extent): readonly number[] =>
  Array.from({ length: to - from }, (_, index) => from + index);

function cellsFree(fit: Fit, fitted: FittedPlacement, placement: Placement, piece: CountedPiece): Free {
  const { sides, top } = placement.margins;
  const [left, right] =
    sides.kind === "centred" ? [sides.least, sides.least] : [leastOf(sides.left), leastOf(sides.right)];
  const highest = piece.marks.get(placement.to)! - leastOf(top);
  const others = fit.placements.filter(
    ({ index, piece: name }) => index !== fitted.index && name === fitted.piece,
  );
  const taken = (cell: number, row: number): boolean =>
    others.some(
      ({ firstRow, lastRow, panel }) =>
        row >= firstRow && row <= lastRow && cell >= panel.leftEdge && cell < panel.rightEdge,
    );
  return {
    keeps: (extent, row) =>
      row <= highest &&
      cellsOf(extent).every(
        (cell) => cell >= left - piece.left[row]! && cell + 1 <= piece.right[row]! - right,
      ),
    clear: (extent, row, fromRow) => {
      const cells = cellsOf(extent);
      if (!onOneHalf(piece, row, cells)) return false;
      for (let at = fromRow; at <= row; at++) if (cells.some((cell) => taken(cell, at))) return false;
      return true;
    },
  };
}

/** Whether above a neck all needles lie on one half; below it there is nothing between them. */
function onOneHalf({ neck }: CountedPiece, row: number, cells: readonly number[]): boolean {
  if (!neck || row <= neck.row) return true;
  const above = row - neck.row;
  return (
    cells.every((cell) => cell + 1 <= -neck.left[above]!) || cells.every((cell) => cell >= neck.right[above]!)
  );
}

const leastOf = (allowed: Allowed): number =>
  allowed.kind === "from" ? allowed.least : Math.min(...allowed.values);
