import type { CountedPiece } from "../../cloth/counted-piece.ts";
import { extraNeedlesForDrawIn } from "../../cloth/draw-in.ts";
import { groundStitch } from "../../cloth/gauge.ts";
import type { Garment } from "../../garment/garment.ts";
import { timesMade } from "../../garment/times-made.ts";
import { stitchesIn } from "../../yarn/stitches.ts";
import type { Candidate } from "../candidates.ts";
import { createPieceCounter, type Field, stretchOf } from "../field.ts";
import type { Layout } from "../layouts.ts";
import type { Measure } from "../measure.ts";

/** Stitches of the ground of one piece, told by the layout that stands for it; 0 by every other one. */
export type GroundOfLayout = (candidate: Omit<Candidate, "amounts">) => number;

/** What the ground is taken from. */
interface GroundSupplies {
  readonly measures: readonly Measure[];
  /** Amounts of so many stitches of the ground, by measure. */
  readonly ofGround: (stitches: number) => readonly number[];
}

/**
 * The first placement of a piece on whose stretch its length can change stands for the piece, the first of all where it
 * cannot change. Where several stretches of it can change their length the number of its stitches hangs on all of these
 * changes together, and is told by {@link layoutsByLength} instead.
 */
export function groundOfLayouts(fields: readonly Field[]): GroundOfLayout {
  const known = new WeakMap<CountedPiece, number>();
  const tellers = new Set(
    [...piecesOf(fields).values()]
      .filter((onPiece) => !changesApart(onPiece))
      .map((onPiece) => onPiece.find(canChange) ?? onPiece[0]!),
  );
  return ({ place: { field, pieces } }) => {
    if (!tellers.has(field)) return 0;
    // No field of the piece changes it otherwise than this one: it is the piece as it will be knitted.
    const { piece } = pieces[0]!;
    const stitches = known.get(piece) ?? stitchesIn(piece);
    known.set(piece, stitches);
    return stitches;
  };
}

function piecesOf(fields: readonly Field[]): ReadonlyMap<Field["piece"], readonly Field[]> {
  const pieces = new Map<Field["piece"], Field[]>();
  for (const field of fields) pieces.set(field.piece, [...(pieces.get(field.piece) ?? []), field]);
  return pieces;
}

const stretchKey = ({ fromRow, toRow }: Field): string => `${fromRow}-${toRow}`;

/** One field for each stretch of a piece that can change by itself. */
const stretchesOn = (onPiece: readonly Field[]): readonly Field[] => [
  ...new Map(onPiece.map((field) => [stretchKey(field), field])).values(),
];

const canChange = ({ leastChange, mostChange }: Field): boolean => leastChange < 0 || mostChange > 0;

const changesApart = (onPiece: readonly Field[]): boolean =>
  stretchesOn(onPiece).filter(canChange).length > 1;

/**
 * Layouts with the stitches of the ground told where several stretches of a piece can change. Mostly each stretch adds so
 * many stitches whatever the others do; else there is a layout for each variant of the piece, since all layouts that are
 * taken on a piece are of one variant.
 *
 * @param lostOn stitches' width that all motifs of a piece draw in
 */
export function layoutsByLength(
  garment: Garment,
  fields: readonly Field[],
  layouts: readonly (readonly Layout[])[],
  supplies: GroundSupplies,
  lostOn: (onPiece: readonly Field[]) => number,
): readonly (readonly Layout[])[] {
  const count = createPieceCounter(groundStitch(garment.gauge));
  const changed = [...layouts];
  for (const [piece, onPiece] of piecesOf(fields)) {
    if (!changesApart(onPiece)) continue;
    const stretches = stretchesOn(onPiece);
    const extra = extraNeedlesForDrawIn(lostOn(onPiece));
    const variants = changesTogether(stretches).map((changes): Variant => {
      const counted = count(
        piece,
        stretches.map((field, index) => stretchOf(field, changes[index]!)),
        extra,
      );
      return { changes, stitches: timesMade(garment, piece.name) * stitchesIn(counted) };
    });
    const shares = sharesIn(variants, stretches.length);
    for (const field of onPiece) {
      const stretch = stretches.findIndex((one) => stretchKey(one) === stretchKey(field));
      const tells = stretches[stretch] === field;
      changed[field.index] = layouts[field.index]!.flatMap((layout): readonly Layout[] => {
        if (shares) {
          const share = shares[stretch]!.get(layout.change);
          return share === undefined ? [] : tells ? [taking(layout, share, supplies)] : [layout];
        }
        return variants
          .filter(({ changes }) => changes[stretch] === layout.change)
          .map(({ changes, stitches }) => ({
            ...taking(layout, field === onPiece[0] ? stitches : 0, supplies),
            variant: changes.join(),
          }));
      });
    }
  }
  return changed;
}

/** A piece with so many rows more or fewer on each of its stretches. */
interface Variant {
  readonly changes: readonly number[];
  readonly stitches: number;
}

/** Changes of all stretches that keep the limits of the whole piece. */
function changesTogether(stretches: readonly Field[]): readonly (readonly number[])[] {
  const { steadyChanges } = stretches[0]!;
  const most = Math.min(
    Math.max(...stretches.map(({ mostChange }) => mostChange)),
    steadyChanges?.most ?? Number.POSITIVE_INFINITY,
  );
  const least = Math.max(
    Math.min(...stretches.map(({ leastChange }) => leastChange)),
    steadyChanges?.least ?? Number.NEGATIVE_INFINITY,
  );
  let ways: readonly (readonly number[])[] = [[]];
  for (const { leastChange, mostChange } of stretches) {
    const changes = Array.from({ length: mostChange - leastChange + 1 }, (_, index) => leastChange + index);
    ways = ways.flatMap((way) => changes.map((change) => [...way, change]));
  }
  return ways.filter((way) => {
    const sum = way.reduce((total, change) => total + change, 0);
    return sum >= least && sum <= most;
  });
}

/**
 * Stitches that each stretch adds by its change, the whole piece among those of the first; undefined where what one adds
 * hangs on what another does.
 */
function sharesIn(
  variants: readonly Variant[],
  stretches: number,
): readonly ReadonlyMap<number, number>[] | undefined {
  const plain = variants.find(({ changes }) => changes.every((change) => change === 0));
  if (!plain) return undefined;
  const shares = Array.from({ length: stretches }, (_, stretch) => {
    const alone = variants.filter(({ changes }) =>
      changes.every((change, other) => other === stretch || change === 0),
    );
    return new Map(
      alone.map(({ changes, stitches }) => [
        changes[stretch]!,
        stitches - (stretch === 0 ? 0 : plain.stitches),
      ]),
    );
  });
  const isSum = ({ changes, stitches }: Variant): boolean =>
    changes.reduce((sum, change, stretch) => sum + (shares[stretch]!.get(change) ?? Number.NaN), 0) ===
    stitches;
  return variants.every(isSum) ? shares : undefined;
}

/** The layout with so many stitches of the ground among what it takes. */
function taking(layout: Layout, stitches: number, { measures, ofGround }: GroundSupplies): Layout {
  const more = ofGround(stitches);
  return {
    ...layout,
    amounts: layout.amounts.map((amount, index) => amount + (more[index] ?? 0)),
    cost: more.reduce((cost, amount, index) => cost + amount * (measures[index]!.costEach ?? 0), layout.cost),
  };
}
