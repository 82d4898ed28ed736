import type { CountedPiece } from "../cloth/counted-piece.ts";
import { allows, greatest, least, valuesUpTo } from "../garment/allowed.ts";
import type { Weights } from "../garment/garment.ts";
import { goOn } from "./allowance.ts";
import type { Field } from "./field.ts";
import type { Footing } from "./footing.ts";
import type { Growth } from "./growth/growth.ts";
import { clearsNeck, narrowest, type Panel, panelOf } from "./panel.ts";
import { endsTaken, keepsMeetings, phasesOf } from "./phase.ts";
import { awayFrom, costOf, makeTerm, type Term } from "./terms.ts";

export interface Room {
  readonly field: Field;
  readonly footing: Footing;
  readonly change: number;
  readonly variant?: string;
  readonly rows: number;
  readonly columns: number;
  readonly gap: number;
  readonly pieces: readonly { readonly piece: CountedPiece; readonly fromRow: number }[];
  /** How many other placements of the piece may want the same rows and needles. */
  readonly company: number;
  readonly weights: Weights;
  /** What costs more than this is let go in any case, so it need not be made. */
  readonly dearest?: number;
}

export interface Place extends Room {
  readonly repeats: number;
}

/** A layout as far as it is needed to tell whether it is among the cheapest: most are not. */
export interface Candidate {
  readonly place: Place;
  readonly bottom: number;
  readonly top: number;
  /** See `Layout`. */
  readonly phases: readonly number[];
  readonly shift: number;
  readonly growth?: Growth;
  readonly cost: number;
  /** By measure, where any are asked for. */
  readonly amounts?: readonly number[];
  readonly change: number;
  readonly repeats: number;
  readonly columns: number;
  readonly gap: number;
}

type Ranked = Pick<Candidate, "cost" | "change" | "repeats" | "columns" | "gap">;

/** Where two layouts cost the same, the one that changes the piece less and takes less cord comes first. */
export const byCostThenPlainness = (a: Ranked, b: Ranked): number =>
  a.cost - b.cost ||
  Math.abs(a.change) - Math.abs(b.change) ||
  a.repeats - b.repeats ||
  a.columns - b.columns ||
  a.gap - b.gap ||
  a.change - b.change;

/** Makes every way to fill a field whose length, columns and gap are settled. */
export type Filling = (room: Room) => readonly Candidate[];

/** The ways to fill a field with one look all the way. */
export const candidatesIn: Filling = (room) => {
  const { field, footing, columns, gap, pieces } = room;
  const panel = panelOf({ columns, gap, mirror: field.placement.mirror }, footing.reach);
  if (!pieces.every(({ piece }) => couldHold(piece, panel))) return [];
  return repeatsIn(room).flatMap((repeats) => placesFor({ ...room, repeats }));
};

/** Numbers of repeats that leave no fewer rows spare, and no more, than the margins below and above may take together. */
export function repeatsIn({
  field: { placement },
  footing: { leadRows, repeatRows },
  rows,
}: Room): readonly number[] {
  const { bottom, top } = placement.margins;
  const spare = rows - leadRows;
  const most = Math.floor((spare - least(bottom) - least(top)) / repeatRows);
  return valuesUpTo(placement.repeats.allowed, most).filter(
    (repeats) => spare - repeats * repeatRows <= greatest(bottom) + greatest(top),
  );
}

/** Whether a panel is no wider than the piece at its widest; a quick look before every row is measured. */
const couldHold = (piece: CountedPiece, { leftEdge, rightEdge }: Panel): boolean =>
  rightEdge - leftEdge <= Math.max(...piece.left) + Math.max(...piece.right);

/**
 * The most balanced margins that keep every limit, at each place across the piece that may matter. Motifs that share
 * rows are laid side by side only: to try every height of one against every height of the other takes the program
 * out of what an engine solves in reasonable time and memory, and `examine` warns of it.
 */
function placesFor(place: Place): readonly Candidate[] {
  const height = heightOf(place);
  const { dearest = Number.POSITIVE_INFINITY } = place;
  const found = new Map<string, readonly Candidate[]>();
  for (const { bottom, top, phases } of standingsIn(place)) {
    if (found.has(phases.join())) continue;
    const cost = costOf(termsOf(place, bottom, top));
    // Later ways to part the spare rows are less balanced still.
    if (cost > dearest) break;
    const shifts = place.pieces
      .map(({ piece, fromRow }) => possibleShifts(place, piece, fromRow + bottom, fromRow + bottom + height))
      .reduce((all, some) => all.filter((shift) => some.includes(shift)));
    if (shifts.length === 0) continue;
    const taken = endsTaken(place.field, bottom, top).filter((isTaken) => isTaken > 0).length;
    found.set(
      phases.join(),
      shiftsThatMatter(shifts, place.company + taken).map((shift) =>
        candidateAt(place, { bottom, top, phases }, shift, cost),
      ),
    );
    if (phases.length === 0) break;
  }
  return [...found.values()].flat();
}

/**
 * One place across the piece costs as much as another, so a motif by itself stands as near the centre as it can.
 * Of two that share rows the one on the left can always be moved to its leftmost place and the other to its
 * rightmost without meeting; with three or more every place may be needed.
 *
 * @param shifts from left to right
 */
function shiftsThatMatter(shifts: readonly number[], company: number): readonly number[] {
  const central = [...shifts].sort((a, b) => Math.abs(a) - Math.abs(b));
  if (company > 1) return central;
  if (company === 0) return central.slice(0, 1);
  return [...new Set([...central.slice(0, 1), ...shifts.slice(0, 1), ...shifts.slice(-1)])];
}

export const heightOf = ({ footing, repeats }: Pick<Place, "footing" | "repeats">): number =>
  footing.leadRows + repeats * footing.repeatRows;

/** How so many repeats stand in their field. */
interface Standing {
  readonly bottom: number;
  readonly top: number;
  /** How the motif stands at matched marks, then whether it stands on rows that other fields share. */
  readonly phases: readonly number[];
}

/** Where so many repeats may stand, most balanced first; made one by one, because most often the first is taken. */
export function* standingsIn(place: Place): Generator<Standing> {
  const { field, footing, change, rows } = place;
  const { leadRows, repeatRows } = footing;
  for (const [bottom, top] of splits(rows - heightOf(place), field)) {
    goOn();
    const standing = { leadRows, repeatRows, field, change, bottom };
    if (keepsMeetings(standing))
      yield { bottom, top, phases: [...phasesOf(standing), ...endsTaken(field, bottom, top)] };
  }
}

/** Ways to part the spare rows into bottom and top margin, most balanced first, from the middle outward. */
function* splits(
  spare: number,
  { placement: { margins } }: Field,
): Generator<readonly [bottom: number, top: number]> {
  const lowest = Math.max(least(margins.bottom), spare - greatest(margins.top));
  const highest = Math.min(greatest(margins.bottom), spare - least(margins.top));
  let below = Math.min(Math.floor(spare / 2), highest);
  let above = Math.max(below + 1, lowest);
  while (below >= lowest || above <= highest) {
    const isBelow = above > highest || (below >= lowest && spare - 2 * below <= 2 * above - spare);
    const bottom = isBelow ? below-- : above++;
    if (allows(margins.bottom, bottom) && allows(margins.top, spare - bottom)) yield [bottom, spare - bottom];
  }
}

/** Every place across the piece at which a panel keeps its side margins over the rows it covers. */
function possibleShifts(
  place: Place,
  piece: CountedPiece,
  firstRow: number,
  lastRow: number,
): readonly number[] {
  const { columns, gap, footing } = place;
  const { mirror, margins } = place.field.placement;
  const { sides } = margins;
  const edge = narrowest(piece, firstRow, lastRow);
  const at = (shift: number): Panel => panelOf({ columns, gap, mirror }, footing.reach, shift);
  const clears = (shift: number): boolean => clearsNeck(piece, at(shift), firstRow, lastRow);
  const centred = at(0);
  const [left, right] = [edge.left + centred.leftEdge, edge.right - centred.rightEdge];
  if (sides.kind === "centred") return left >= sides.least && right >= sides.least && clears(0) ? [0] : [];
  return valuesUpTo(sides.left, left + right)
    .filter((margin) => allows(sides.right, left + right - margin))
    .map((margin) => margin - left)
    .filter(clears);
}

function candidateAt(place: Place, standing: Standing, shift: number, cost: number): Candidate {
  const { change, repeats, columns, gap } = place;
  return { place, ...standing, shift, cost, change, repeats, columns, gap };
}

/** What a layout gives up, without what it keeps. */
export function termsOf(
  { field, change, columns, gap, repeats, weights }: Omit<Place, "footing" | "rows" | "pieces" | "company">,
  bottom: number,
  top: number,
): readonly Term[] {
  const { placement } = field;
  const terms: Term[] = [];
  const giveUp = (term: string, amount: number, unit: string): void => {
    if (amount > 0) terms.push(makeTerm(term, amount, unit, weights, { placement: field.index }));
  };
  giveUp("length", Math.abs(change), "rows");
  giveUp("balance", Math.abs(bottom - top), "rows");
  giveUp("repeats", awayFrom(placement.repeats, repeats), "repeats");
  giveUp("columns", awayFrom(placement.columns, columns), "columns");
  if (columns > 1) giveUp("gap", awayFrom(placement.gap, gap), "needles");
  return terms;
}
