import { type CountedPiece, fitsBed } from "../cloth/counted-piece.ts";
import { extraNeedlesForDrawIn } from "../cloth/draw-in.ts";
import type { Stitch } from "../cloth/gauge.ts";
import { allows, valuesUpTo } from "../garment/allowed.ts";
import type { Bed, Weights } from "../garment/garment.ts";
import type { Reach, Trace } from "../motif/trace.ts";
import { createPieceCounter, type Field, neighbours, relation, stretchOf } from "./field.ts";
import type { FittedSection } from "./fit.ts";
import { furthestReach, type Growth } from "./growth/growth.ts";
import { clearsNeck, narrowest, type Panel, panelOf } from "./panel.ts";
import { keepsMeetings, phasesOf } from "./phase.ts";
import { awayFrom, costOf, makeTerm, type Term } from "./terms.ts";

/** What of a look a layout depends on: looks with the same footing can lie in the same layouts. */
export interface Footing {
  readonly leadRows: number;
  readonly repeatRows: number;
  readonly reach: Reach;
  /** Stitches that one column of the motif crosses, and so draws in. */
  readonly crossedStitches: number;
  /** Tells looks apart that could lie alike, where a motif that is begun can go on with one and not with the other. */
  readonly goingOn?: string;
}

/** One way a placement can lie in its field under looks with one footing. */
export interface Layout {
  readonly field: Field;
  readonly footing: Footing;
  readonly repeats: number;
  readonly change: number;
  /**
   * Which of several ways to change the piece's length it belongs to, where they are told apart: all layouts that are
   * taken on one piece are of one variant.
   */
  readonly variant?: string;
  readonly bottom: number;
  readonly top: number;
  /** First row and rows of the motif, before fields below change its place. */
  readonly firstRow: number;
  readonly height: number;
  readonly columns: number;
  readonly gap: number;
  /** Rows from the beginning of a repeat at each row that is matched with another placement's. */
  readonly phases: readonly number[];
  /** Needles by which the panel stands to the right of the centre. */
  readonly shift: number;
  readonly panel: Panel;
  /** What is worked from the bottom up, where the motif grows; else the look that is chosen, all the way. */
  readonly sections?: readonly FittedSection[];
  readonly terms: readonly Term[];
  readonly cost: number;
}

export const footingOf = (trace: Trace): Footing => ({
  leadRows: trace.leadRows,
  repeatRows: trace.repeatRows,
  reach: trace.reach,
  crossedStitches: trace.cables.reduce((sum, { left, right }) => sum + left + right, 0),
});

export const footingKey = ({
  leadRows,
  repeatRows,
  reach,
  crossedStitches,
  goingOn = "",
}: Footing): string => {
  const edge = reach.edge ? ` edge ${reach.edge.left}|${reach.edge.right}` : "";
  return `${leadRows}+${repeatRows}n ${reach.left}|${reach.right}${edge} x${crossedStitches}${goingOn}`;
};

export type Surroundings = {
  readonly fields: readonly Field[];
  readonly stitch: Stitch;
  readonly weights: Weights;
  readonly bed: Bed;
  /** Stitches' width that one column of a placement's motif loses under a footing. */
  readonly lostPerColumn: (field: Field, footing: Footing) => number;
  /** Stitches' width that all other placements on the same piece lose. */
  readonly lostBeside: (field: Field) => number;
  /** One layout on each footing is enough: only whether something fits is asked. */
  readonly anyLayout: boolean;
  /**
   * How many layouts on each footing are kept, cheapest first. So many fits that differ never need more of one
   * placement that shares its piece with none: with one more there would be as many cheaper ones to take instead.
   */
  readonly keep: number;
};

/**
 * Enumerates the layouts of one placement. Of layouts that a knitter would call the same (repeats, change of
 * length, columns, gap) only the most balanced that keeps every limit is made, for each phase where its motif is
 * matched with another's, and at more than one place across where another motif on the piece may want the same rows:
 * no other rule that ties placements together reads the margins.
 */
export function createLayouts(
  surroundings: Surroundings,
): (field: Field, footing: Footing, fill?: Filling) => readonly Layout[] {
  const count = createPieceCounter(surroundings.stitch);
  return (field, footing, fill = candidatesIn) => {
    const others = neighbours(field, surroundings.fields);
    const company = others.filter((other) => relation(field, other) !== "apart").length;
    const candidates: Candidate[] = [];
    const enough = surroundings.anyLayout && others.length === 0 && field.matchedRows.length === 0;
    for (const change of changesOf(field)) {
      if (enough && candidates.length > 0) break;
      const rows = field.toRow - field.fromRow + change;
      for (const [columns, gap] of columnChoices(field)) {
        const lost = columns * surroundings.lostPerColumn(field, footing) + surroundings.lostBeside(field);
        const extra = extraNeedlesForDrawIn(lost);
        const pieces = shiftsFromBelow(field, others).map((shift) => ({
          piece: count(
            field.piece,
            [...(shift === 0 ? [] : [belowStretch(field, others, shift)]), stretchOf(field, change)].filter(
              (stretch) => stretch.change !== 0,
            ),
            extra,
          ),
          fromRow: field.fromRow + shift,
        }));
        const { weights, bed } = surroundings;
        if (!pieces.every(({ piece }) => fitsBed(piece, bed))) continue;
        candidates.push(...fill({ field, footing, change, rows, columns, gap, pieces, company, weights }));
      }
    }
    return (others.length === 0 ? cheapest(candidates, surroundings.keep) : candidates).map(layoutAt);
  };
}

/** So many of the cheapest in each phase: a match takes as many of a phase as there are fits to tell apart. */
function cheapest(candidates: Candidate[], keep: number): readonly Candidate[] {
  const kept = new Map<string, number>();
  return candidates.sort(byCostThenPlainness).filter(({ phases }) => {
    const alike = kept.get(phases.join()) ?? 0;
    kept.set(phases.join(), alike + 1);
    return alike < keep;
  });
}

/** Makes every way to fill a field whose length, columns and gap are settled. */
export type Filling = (room: Room) => readonly Candidate[];

/** The ways to fill a field with one look all the way. */
export const candidatesIn: Filling = (room) => {
  const { field, footing, rows, columns, gap, pieces } = room;
  const panel = panelOf({ columns, gap, mirror: field.placement.mirror }, footing.reach);
  if (!pieces.every(({ piece }) => couldHold(piece, panel))) return [];
  return valuesUpTo(field.placement.repeats.allowed, mostRepeats(rows, footing)).flatMap((repeats) =>
    placesFor({ ...room, repeats }),
  );
};

/** A layout as far as it is needed to tell whether it is among the cheapest: most are not. */
export interface Candidate {
  readonly place: Place;
  readonly bottom: number;
  readonly top: number;
  readonly phases: readonly number[];
  readonly shift: number;
  readonly growth?: Growth;
  readonly cost: number;
  readonly change: number;
  readonly repeats: number;
  readonly columns: number;
  readonly gap: number;
}

type Ranked = Pick<Layout, "cost" | "change" | "repeats" | "columns" | "gap">;

/** Where two layouts cost the same, the one that changes the piece less and takes less cord comes first. */
export const byCostThenPlainness = (a: Ranked, b: Ranked): number =>
  a.cost - b.cost ||
  Math.abs(a.change) - Math.abs(b.change) ||
  a.repeats - b.repeats ||
  a.columns - b.columns ||
  a.gap - b.gap ||
  a.change - b.change;

/** Whether a panel is no wider than the piece at its widest; a quick look before every row is measured. */
const couldHold = (piece: CountedPiece, { leftEdge, rightEdge }: Panel): boolean =>
  rightEdge - leftEdge <= Math.max(...piece.left) + Math.max(...piece.right);

/** Changes of length, the least first. */
function changesOf({ leastChange, mostChange }: Field): readonly number[] {
  const changes: number[] = [];
  for (let change = leastChange; change <= mostChange; change++) changes.push(change);
  return changes.sort((a, b) => Math.abs(a) - Math.abs(b));
}

export const mostRepeats = (rows: number, { leadRows, repeatRows }: Footing): number =>
  Math.floor((rows - leadRows) / repeatRows);

/** More columns than a bed has needles are never tried. */
const columnCeiling = 50;
const gapCeiling = 200;

export function columnChoices({ placement }: Field): readonly (readonly [columns: number, gap: number])[] {
  return valuesUpTo(placement.columns.allowed, columnCeiling).flatMap((columns) =>
    // With one column there is no gap to choose.
    (columns === 1
      ? valuesUpTo(placement.gap.allowed, gapCeiling).slice(0, 1)
      : valuesUpTo(placement.gap.allowed, gapCeiling)
    ).map((gap) => [columns, gap] as const),
  );
}

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
}

export interface Place extends Room {
  readonly repeats: number;
}

/**
 * The most balanced margins that keep every limit, at each place across the piece that may matter. Motifs that share
 * rows are laid side by side only: to try every height of one against every height of the other takes the program
 * out of what an engine solves in reasonable time and memory, and `examine` warns of it.
 */
function placesFor(place: Place): readonly Candidate[] {
  const height = heightOf(place);
  const found = new Map<string, readonly Candidate[]>();
  for (const { bottom, top, phases } of standingsIn(place)) {
    if (found.has(phases.join())) continue;
    const shifts = place.pieces
      .map(({ piece, fromRow }) => possibleShifts(place, piece, fromRow + bottom, fromRow + bottom + height))
      .reduce((all, some) => all.filter((shift) => some.includes(shift)));
    if (shifts.length === 0) continue;
    found.set(
      phases.join(),
      shiftsThatMatter(shifts, place.company).map((shift) => candidateAt(place, bottom, top, phases, shift)),
    );
    if (phases.length === 0) break;
  }
  return [...found.values()].flat();
}

/**
 * One place across the piece costs as much as another, so a motif by itself stands as near the centre as it can.
 * Of two that share rows the one on the left can always be moved to its leftmost place and the other to its
 * rightmost without meeting; with three or more every place may be needed.
 */
function shiftsThatMatter(shifts: readonly number[], company: number): readonly number[] {
  const central = [...shifts].sort((a, b) => Math.abs(a) - Math.abs(b) || a - b);
  if (company > 1) return central;
  if (company === 0) return central.slice(0, 1);
  return [...new Set([...central.slice(0, 1), ...shifts.slice(0, 1), ...shifts.slice(-1)])];
}

const heightOf = ({ footing, repeats }: Pick<Place, "footing" | "repeats">): number =>
  footing.leadRows + repeats * footing.repeatRows;

/** How so many repeats stand in their field. */
interface Standing {
  readonly bottom: number;
  readonly top: number;
  /** How the motif stands at matched marks. */
  readonly phases: readonly number[];
}

/** Where so many repeats may stand, most balanced first; made one by one, because most often the first is taken. */
export function* standingsIn(place: Place): Generator<Standing> {
  const { field, footing, change, rows } = place;
  const { leadRows, repeatRows } = footing;
  for (const [bottom, top] of splits(rows - heightOf(place), field)) {
    const standing = { leadRows, repeatRows, field, change, bottom };
    if (keepsMeetings(standing)) yield { bottom, top, phases: phasesOf(standing) };
  }
}

/** Ways to part the spare rows into bottom and top margin, most balanced first. */
function splits(spare: number, { placement }: Field): readonly (readonly [bottom: number, top: number])[] {
  return valuesUpTo(placement.margins.bottom, spare)
    .map((bottom) => [bottom, spare - bottom] as const)
    .filter(([, top]) => allows(placement.margins.top, top))
    .sort((a, b) => Math.abs(a[0] - a[1]) - Math.abs(b[0] - b[1]) || a[0] - b[0]);
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
  const centred = at(0);
  const fits = (shift: number): boolean => {
    const panel = at(shift);
    const left = edge.left + panel.leftEdge;
    const right = edge.right - panel.rightEdge;
    const keepsSides =
      sides.kind === "centred"
        ? left >= sides.least && right >= sides.least
        : left >= 0 && right >= 0 && allows(sides.left, left) && allows(sides.right, right);
    return keepsSides && clearsNeck(piece, panel, firstRow, lastRow);
  };
  if (sides.kind === "centred") return fits(0) ? [0] : [];
  const least = -(edge.left + centred.leftEdge);
  const most = edge.right - centred.rightEdge;
  const shifts: number[] = [];
  for (let shift = least; shift <= most; shift++) if (fits(shift)) shifts.push(shift);
  return shifts;
}

function candidateAt(
  place: Place,
  bottom: number,
  top: number,
  phases: readonly number[],
  shift: number,
): Candidate {
  const { change, repeats, columns, gap } = place;
  const cost = costOf(termsOf(place, bottom, top));
  return { place, bottom, top, phases, shift, cost, change, repeats, columns, gap };
}

/** What a layout gives up, without what it keeps. */
export function termsOf(
  { field, change, columns, gap, repeats, weights }: Omit<Place, "footing" | "rows" | "pieces" | "company">,
  bottom: number,
  top: number,
): readonly Term[] {
  const { placement } = field;
  const amounts = [
    ["length", Math.abs(change), "rows"],
    ["balance", Math.abs(bottom - top), "rows"],
    ["repeats", awayFrom(placement.repeats, repeats), "repeats"],
    ["columns", awayFrom(placement.columns, columns), "columns"],
    ["gap", columns > 1 ? awayFrom(placement.gap, gap) : 0, "needles"],
  ] as const;
  return amounts
    .filter(([, amount]) => amount > 0)
    .map(([term, amount, unit]) => makeTerm(term, amount, unit, weights, { placement: field.index }));
}

export function layoutAt({ place, bottom, top, phases, shift, growth }: Candidate): Layout {
  const { field, footing, change, variant, columns, gap, repeats, pieces } = place;
  const terms = [...termsOf(place, bottom, top), ...(growth?.terms ?? [])];
  return {
    field,
    footing,
    repeats,
    change,
    ...(variant !== undefined && { variant }),
    bottom,
    top,
    firstRow: pieces[0]!.fromRow + bottom,
    height: heightOf(place),
    columns,
    gap: columns > 1 ? gap : 0,
    phases,
    shift,
    panel: panelOf(
      { columns, gap, mirror: field.placement.mirror },
      growth ? furthestReach(growth) : footing.reach,
      shift,
    ),
    ...(growth && { sections: growth.sections }),
    terms,
    cost: costOf(terms),
  };
}

/**
 * By how many rows a change of the fields below may move this one, as far as it matters: an odd number of rows
 * brings the carriage to the other side, which moves steps of several needles by a row.
 */
function shiftsFromBelow(field: Field, others: readonly Field[]): readonly number[] {
  const below = belowOf(field, others);
  if (below.some((other) => other.mostChange > 0)) return [0, 1];
  return below.some((other) => other.leastChange < 0) ? [0, -1] : [0];
}

const belowOf = (field: Field, others: readonly Field[]): readonly Field[] =>
  others.filter((other) => relation(field, other) === "apart" && other.toRow <= field.fromRow);

const belowStretch = (field: Field, others: readonly Field[], change: number) =>
  stretchOf(
    belowOf(field, others).find((other) => (change > 0 ? other.mostChange > 0 : other.leastChange < 0))!,
    change,
  );
