import { fitsBed } from "../cloth/counted-piece.ts";
import { extraNeedlesForDrawIn } from "../cloth/draw-in.ts";
import type { Stitch } from "../cloth/gauge.ts";
import { valuesUpTo } from "../garment/allowed.ts";
import type { Bed, Weights } from "../garment/garment.ts";
import { weightOf } from "../garment/weights.ts";
import { goOn, hold } from "./allowance.ts";
import {
  byCostThenPlainness,
  type Candidate,
  candidatesIn,
  type Filling,
  heightOf,
  type Place,
  termsOf,
} from "./candidates.ts";
import { createPieceCounter, type Field, neighbours, relation, stretchOf } from "./field.ts";
import type { FittedSection } from "./fit.ts";
import type { Footing } from "./footing.ts";
import { furthestReach } from "./growth/growth.ts";
import type { Measure } from "./measure.ts";
import { type Panel, panelOf } from "./panel.ts";
import type { Term } from "./terms.ts";

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
  /**
   * Rows from the beginning of a repeat at each row that is matched with another placement's; then, for each end of the
   * field whose row another field shares, 1 where the motif stands on it and 0 where it does not.
   */
  readonly phases: readonly number[];
  /** Needles by which the panel stands to the right of the centre. */
  readonly shift: number;
  readonly panel: Panel;
  /** What is worked from the bottom up, where the motif grows; else the look that is chosen, all the way. */
  readonly sections?: readonly FittedSection[];
  readonly terms: readonly Term[];
  readonly cost: number;
  /** By measure, in the order in which they were asked for. */
  readonly amounts: readonly number[];
}

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
  /** What else is read of a layout: so many of the cheapest are kept of those alike in all of it. */
  readonly measures: readonly Measure[];
};

/**
 * Enumerates the layouts of one placement. Of layouts that a knitter would call the same (repeats, change of
 * length, columns, gap) only the most balanced that keeps every limit is made, for each phase where its motif is
 * matched with another's, on a row that another field shares and off it, and at more than one place across where another
 * motif on the piece may want the same rows:
 * no other rule that ties placements together reads the margins. Where something is measured that depends on more of a
 * look than its footing, a layout is made for each of the footings `alike`, on which it can stand just as well.
 */
export function createLayouts(
  surroundings: Surroundings,
): (field: Field, footing: Footing, fill?: Filling, alike?: readonly Footing[]) => readonly Layout[] {
  const count = createPieceCounter(surroundings.stitch);
  return (field, footing, fill = candidatesIn, alike = [footing]) => {
    const others = neighbours(field, surroundings.fields);
    const company = others.filter((other) => relation(field, other) !== "apart").length;
    let candidates: Settled[] = [];
    const { measures } = surroundings;
    const measuredOn = (filled: readonly Candidate[]): readonly Candidate[] =>
      measures.length === 0
        ? filled
        : alike.flatMap((one) => filled.map((candidate) => measured(candidate, one, measures)));
    const enough =
      surroundings.anyLayout &&
      others.length === 0 &&
      field.matchedRows.length === 0 &&
      measures.length === 0;
    // What is kept for something else than its cost is made whatever it costs.
    const isKeptByCost = others.length === 0 && field.matchedRows.length === 0 && measures.length === 0;
    const cheapestCosts = isKeptByCost ? leastOf(surroundings.keep) : allOf;
    for (const change of changesOf(field)) {
      if (enough && candidates.length > 0) break;
      // Later changes cost no less.
      if (lengthCost(change, surroundings.weights) > cheapestCosts.greatest()) break;
      const rows = field.toRow - field.fromRow + change;
      for (const [columns, gap] of columnChoices(field)) {
        goOn();
        const lost = columns * surroundings.lostPerColumn(field, footing) + surroundings.lostBeside(field);
        const extra = extraNeedlesForDrawIn(lost);
        const pieces = shiftsFromBelow(field, others).map((shift) => ({
          piece: count(
            field.piece,
            [...(shift === 0 ? [] : [belowStretch(field, others, shift)]), stretchOf(field, change)],
            extra,
          ),
          fromRow: field.fromRow + shift,
        }));
        const { weights, bed } = surroundings;
        if (!pieces.every(({ piece }) => fitsBed(piece, bed))) continue;
        const filled = measuredOn(
          fill({
            field,
            footing,
            change,
            rows,
            columns,
            gap,
            pieces,
            company,
            weights,
            dearest: cheapestCosts.greatest(),
          }),
        );
        for (const candidate of filled) candidates.push(withoutRows(candidate));
        for (const { cost } of filled) cheapestCosts.take(cost);
        if (others.length > 0) hold(filled.length);
        else if (candidates.length > manyCandidates) candidates = cheapest(candidates, surroundings.keep);
      }
    }
    if (others.length > 0) return candidates.map(layoutAt);
    const kept = cheapest(candidates, surroundings.keep);
    hold(kept.length);
    return kept.map(layoutAt);
  };
}

const lengthCost = (change: number, weights: Weights): number =>
  weightOf(weights, "length") * Math.abs(change);

interface Least {
  /** The greatest of those that are kept, so that what is greater need not be made. */
  readonly greatest: () => number;
  readonly take: (value: number) => void;
}

/** The least so many of the numbers it takes; their greatest is infinite while there are fewer. */
function leastOf(keep: number): Least {
  const least: number[] = [];
  const greatest = (): number => (least.length < keep ? Number.POSITIVE_INFINITY : least.at(-1)!);
  return {
    greatest,
    take(value) {
      if (value >= greatest()) return;
      least.push(value);
      least.sort((a, b) => a - b);
      if (least.length > keep) least.pop();
    },
  };
}

/** Where all are kept, whatever they are. */
const allOf: Least = { greatest: () => Number.POSITIVE_INFINITY, take: () => {} };

/** A candidate once its piece was looked at. */
interface Settled extends Omit<Candidate, "place"> {
  readonly place: Omit<Place, "pieces"> & { readonly pieces: readonly { readonly fromRow: number }[] };
}

/**
 * Lets go of the counted rows of a candidate's pieces, of which no more is read than the first row of its field: a piece
 * that may have many lengths is counted in each, and its rows take more than all else that is kept.
 */
const withoutRows = ({ place, ...rest }: Candidate): Settled => ({
  ...rest,
  place: { ...place, pieces: place.pieces.map(({ fromRow }) => ({ fromRow })) },
});

/** Where only the cheapest are kept, the others are let go whenever there are more than so many. */
const manyCandidates = 20_000;

/** A candidate on one of the footings on which it can stand alike, with what is measured of it there. */
function measured(one: Candidate, footing: Footing, measures: readonly Measure[]): Candidate {
  const candidate = { ...one, place: { ...one.place, footing } };
  const amounts = measures.map(({ ofLayout }) => ofLayout(candidate));
  const cost = amounts.reduce(
    (sum, amount, index) => sum + amount * (measures[index]!.costEach ?? 0),
    candidate.cost,
  );
  return { ...candidate, amounts, cost };
}

/**
 * So many of the cheapest in each phase and with each amount of what is measured: a match takes as many of a phase as
 * there are fits to tell apart, and so does a rule that reads an amount.
 */
function cheapest(candidates: Settled[], keep: number): Settled[] {
  const kept = new Map<string, number>();
  return candidates.sort(byCostThenPlainness).filter(({ phases, amounts, place: { footing } }) => {
    const alike = `${phases.join()}|${amounts?.join()}|${footing.goingOn}`;
    const count = kept.get(alike) ?? 0;
    kept.set(alike, count + 1);
    return count < keep;
  });
}

/** Changes of length, the least first. */
function changesOf({ leastChange, mostChange }: Field): readonly number[] {
  const changes: number[] = [];
  for (let change = leastChange; change <= mostChange; change++) changes.push(change);
  return changes.sort((a, b) => Math.abs(a) - Math.abs(b));
}

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

/** The layout that a candidate stands for, with all that is told of it. */
export function layoutAt({ place, bottom, top, phases, shift, growth, cost, amounts = [] }: Settled): Layout {
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
    cost,
    amounts,
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
  others.filter((other) => other.toRow <= field.fromRow);

const belowStretch = (field: Field, others: readonly Field[], change: number) =>
  stretchOf(
    belowOf(field, others).find((other) => (change > 0 ? other.mostChange > 0 : other.leastChange < 0))!,
    change,
  );
