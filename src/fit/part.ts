import type { CountedPiece } from "../cloth/counted-piece.ts";
import { least } from "../garment/allowed.ts";
import type { Garment, Placement } from "../garment/garment.ts";
import { mirrored } from "../motif/mirror.ts";
import { pointsOver, rowsOver, type Section, type SectionPoint } from "../motif/sections.ts";
import type { LadderTrace, Trace } from "../motif/trace.ts";
import type { FittedPart, FittedPlacement } from "./fit.ts";
import { isMirrored } from "./panel.ts";

/** Where a part may lie: its piece and its field, the motif that it follows, and what else lies on the piece. */
interface Room {
  readonly piece: CountedPiece;
  readonly placement: Placement;
  readonly fitted: FittedPlacement;
  readonly others: readonly FittedPlacement[];
}

/** From one boundary to another, counted from the centre of the piece. */
interface Extent {
  readonly from: number;
  readonly to: number;
}

/** Adds to each placement what its garment asks to be worked of the repeat that cannot be finished. */
export function withParts(
  garment: Garment,
  placements: readonly FittedPlacement[],
  pieces: readonly CountedPiece[],
): readonly FittedPlacement[] {
  return placements.map((fitted) => {
    const part = partOf({
      placement: garment.placements[fitted.index]!,
      piece: pieces.find(({ name }) => name === fitted.piece)!,
      fitted,
      others: placements.filter((other) => other !== fitted && other.piece === fitted.piece),
    });
    return part ? { ...fitted, part } : fitted;
  });
}

/**
 * Above its last whole repeat each strand or cable of each column goes on through one repeat more, with the look of the
 * last section, up to its first hanging or crossing that does not keep to all of these:
 *
 * - it is made in the field, and leaves as many rows free above as the top margin asks for at least;
 * - at its row its needles leave as many free beside them, to the piece's edges, as the side margins ask for at least;
 * - above a neck it lies on one half, and so does the hanging before it;
 * - the stretch to it keeps clear of every other motif on the piece;
 * - the ladders of its column keep to the same at every row up to it.
 *
 * A band goes on for so many rows as the whole of it keeps to them. The part costs nothing and ties nothing.
 */
function partOf(room: Room): FittedPart | undefined {
  const { placement, fitted } = room;
  if (placement.unfinished === "plain") return undefined;
  const { motif } = fitted.sections[0]!.look;
  if (motif.kind === "band") return bandPart(room, motif.colours);
  const kind = motif.kind === "cord" ? "strands" : "cables";
  const columns = fitted.panel.centres.map((centre, column) => columnPart(room, kind, centre, column));
  const lastRow = Math.max(fitted.lastRow, ...columns.map((column) => column.lastRow));
  return lastRow === fitted.lastRow
    ? undefined
    : { lastRow, rows: lastRow - fitted.lastRow, columns: columns.map(({ more }) => more) };
}

/** Rows of a pattern; its yarns lie at one side, so in several colours it is worked forth and back. */
function bandPart({ fitted, ...room }: Room, colours: number): FittedPart | undefined {
  const { lastRow, panel, sections } = fitted;
  const extent = { from: panel.leftEdge, to: panel.rightEdge };
  const most = sections.at(-1)!.look.trace.repeatRows;
  let rows = 0;
  while (rows < most && isFree({ ...room, fitted }, lastRow + rows + 1, extent, extent)) rows++;
  if (colours > 1) rows -= rows % 2;
  return rows === 0 ? undefined : { lastRow: lastRow + rows, rows, columns: [] };
}

function columnPart(
  room: Room,
  kind: "strands" | "cables",
  centre: number,
  column: number,
): { readonly more: Readonly<Record<string, number>>; readonly lastRow: number } {
  const { firstRow, sections, panel } = room.fitted;
  const turned = isMirrored(panel, column);
  const runs = sections.map(
    ({ look: { trace }, repeats }): Section => ({
      trace: turned ? mirrored(trace) : trace,
      repeats,
    }),
  );
  const { trace } = runs.at(-1)!;
  const endOfLadders = laddersEnd(room, trace, centre, firstRow + rowsOver(runs));
  let lastRow = 0;
  const counts = runs[0]!.trace[kind].map(({ name }) => {
    const points = pointsOver(runs, kind, name, Number.POSITIVE_INFINITY);
    const whole = pointsOver(runs, kind, name).length;
    let index = whole;
    for (; index < points.length; index++) {
      const [before, point] = [points[index - 1]!, points[index]!];
      const row = firstRow + point.row;
      const here = placeOf(trace, name, point, centre);
      const last = placeOf(trace, name, before, centre);
      if (row > endOfLadders || !isFree(room, row, here, last, firstRow + before.row + 1)) break;
      lastRow = row;
    }
    return [name, index - whole] as const;
  });
  return { more: Object.fromEntries(counts), lastRow };
}

/** The last row up to which every ladder of a column, and the needle outward of it, has its room. */
function laddersEnd(room: Room, { ladders }: Trace, centre: number, lastRow: number): number {
  if (ladders.length === 0) return Number.POSITIVE_INFINITY;
  const free = (row: number): boolean =>
    ladders.every((ladder) => {
      const extent = ladderExtent(ladder, centre);
      return isFree(room, row, extent, extent);
    });
  let row = lastRow;
  while (free(row + 1)) row++;
  return row;
}

function ladderExtent({ needle }: LadderTrace, centre: number): Extent {
  const { from, to } = needleExtent(needle, centre);
  return needle < 0 ? { from: from - 1, to } : { from, to: to + 1 };
}

/** The needle that is hung on, or those that cross. */
function placeOf({ cables }: Trace, name: string, { needle }: SectionPoint, centre: number): Extent {
  const cable = cables.find((one) => one.name === name);
  return cable
    ? { from: centre + needle - cable.left, to: centre + needle + cable.right }
    : needleExtent(needle, centre);
}

function needleExtent(needle: number, centre: number): Extent {
  const to = centre + (needle > 0 ? needle : needle + 1);
  return { from: to - 1, to };
}

/**
 * Whether something may be worked at a row.
 *
 * @param before where the stretch that leads to it comes from
 * @param fromRow first row of that stretch
 */
function isFree(room: Room, row: number, here: Extent, before: Extent, fromRow = row): boolean {
  const { piece, placement, others } = room;
  const { top, sides } = placement.margins;
  if (row > piece.marks.get(placement.to)! - least(top)) return false;
  const [left, right] =
    sides.kind === "centred" ? [sides.least, sides.least] : [least(sides.left), least(sides.right)];
  if (piece.left[row]! + here.from < left || piece.right[row]! - here.to < right) return false;
  const span = { from: Math.min(here.from, before.from), to: Math.max(here.to, before.to) };
  return (
    onOneHalf(piece, row, span) &&
    others.every(
      ({ firstRow, lastRow, panel }) =>
        row < firstRow || fromRow > lastRow || span.to <= panel.leftEdge || span.from >= panel.rightEdge,
    )
  );
}

function onOneHalf({ neck }: CountedPiece, row: number, { from, to }: Extent): boolean {
  if (!neck || row <= neck.row) return true;
  return to <= -neck.left[row - neck.row]! || from >= neck.right[row - neck.row]!;
}
