import { type CountedPiece, fitsBed } from "../cloth/counted-piece.ts";
import { extraNeedlesForDrawIn } from "../cloth/draw-in.ts";
import { byCostThenPlainness, type Candidate, candidatesIn } from "../fit/candidates.ts";
import { type Field, neighbours, relation } from "../fit/field.ts";
import type { FittedLook } from "../fit/fit.ts";
import { type Footing, footingKey, footingOf } from "../fit/footing.ts";
import type { Choices } from "../fit/formulate.ts";
import { columnChoices, type Layout, layoutAt } from "../fit/layouts.ts";
import type { Look } from "../fit/looks.ts";
import { type Allowed, anyFrom, only } from "../garment/allowed.ts";
import { isForbidden } from "../safety/cord-rules.ts";
import { canFollow, joinsTo, type OpenLook, openLooks } from "./going-on.ts";
import { type Lengths, lengthsOf } from "./lengths.ts";
import { canBeKnitted, recount } from "./recount.ts";
import { type GoneOn, standingLayouts } from "./standing-layouts.ts";
import { lossOf, type Undertaking } from "./undertaking.ts";

/** Every look and layout for what is left of a piece, and the footing on which each look lets layouts stand. */
export interface OpenChoices extends Choices {
  readonly footingUnder: (look: Look) => Footing;
}

/** Works out what can still be chosen. */
export function openChoices(undertaking: Undertaking): OpenChoices {
  const open = undertaking.looks.map((now) => {
    const placements = undertaking.placed.flatMap((one, index) =>
      one.motif === now.motif.name ? [index] : [],
    );
    const standing = placements.flatMap((index) => undertaking.standing[index] ?? []);
    const fresh = standing.length < placements.length;
    const motif = undertaking.garment.motifs.find(({ name }) => name === now.motif.name)!;
    const all = openLooks(motif, now, standing, fresh, undertaking.circumstances(motif.name));
    const looks = undertaking.keepsValues(now.motif.name)
      ? all.filter(({ look }) => hasValuesOf(look, now))
      : all;
    return { motif: now.motif.name, looks, isBegun: standing.length > 0 };
  });
  const footings = new Map<Look, Footing>(
    open.flatMap(({ looks, isBegun }) =>
      looks.map((one): [Look, Footing] => [one.look, footingFor(one, isBegun)]),
    ),
  );
  const pieceWith = pieceCounter(undertaking);
  const lengths = lengthsOf(undertaking);
  return {
    matches: [],
    measures: [],
    limits: [],
    looks: open.map(({ looks }) => looks.map(({ look }) => look).sort((one, other) => one.cost - other.cost)),
    layouts: undertaking.fields.map((field) => {
      const { looks } = open.find(({ motif }) => motif === field.placement.motif)!;
      const onFootings = new Map(looks.map((one) => [footingKey(footings.get(one.look)!), one]));
      return [...onFootings.values()]
        .flatMap((one) => layoutsUnder(undertaking, field, one, footings.get(one.look)!, lengths, pieceWith))
        .sort(byPresentThenCost(undertaking));
    }),
    footingUnder: (look) => footings.get(look)!,
  };
}

/** Whether two looks of a motif have the same quantities. */
export const hasValuesOf = (look: FittedLook, { values }: FittedLook): boolean =>
  [...values].every(([name, value]) => look.values.get(name) === value);

/** Where a motif is begun, which look follows matters beyond the rows and needles it takes. */
function footingFor({ look, finishing }: OpenLook, isBegun: boolean): Footing {
  const footing = footingOf(look.trace);
  if (!isBegun) return footing;
  const values = [...look.values].map(([name, value]) => `${name} ${value}`).join(", ");
  return { ...footing, goingOn: finishing ? ", nothing added" : `, ${values}` };
}

type PieceWith = (lengths: Lengths, lostHere: number, index: number) => CountedPiece | undefined;

/** The piece for each change of its length and what is drawn in on it, counted once. */
function pieceCounter(undertaking: Undertaking): PieceWith {
  const { placed, looks, begun, garment } = undertaking;
  const known = new Map<string, CountedPiece | undefined>();
  return (lengths, lostHere, index) => {
    const lostBeside = placed.reduce((sum, one, at) => {
      const look = looks.find(({ motif }) => motif.name === one.motif)!;
      return at === index ? sum : sum + lossOf(look, one.columns);
    }, 0);
    const extraNeedles = extraNeedlesForDrawIn(lostHere + lostBeside);
    const key = `${lengths.key} ${extraNeedles}`;
    if (!known.has(key)) {
      const stitch = {
        widthMm: garment.gauge.ground.overMm / garment.gauge.ground.stitches,
        heightMm: garment.gauge.ground.overMm / garment.gauge.ground.rows,
      };
      const piece = recount(begun, { stitch, stretches: lengths.stretches, extraNeedles });
      known.set(key, piece && canBeKnitted(piece, garment.bed) ? piece : undefined);
    }
    return known.get(key);
  };
}

function layoutsUnder(
  undertaking: Undertaking,
  field: Field,
  open: OpenLook,
  footing: Footing,
  lengths: readonly Lengths[],
  pieceWith: PieceWith,
): readonly Layout[] {
  const others = neighbours(field, undertaking.fields);
  const company = others.filter((other) => relation(field, other) !== "apart").length;
  const variant = (one: Lengths): { variant: string } | undefined =>
    others.length > 0 ? { variant: one.key } : undefined;
  const standing = undertaking.standing[field.index];
  const loss = (columns: number): number => lossOf(open.look, columns);
  if (standing) {
    const goneOn = repeatsAfter(undertaking, field, open);
    return lengths.flatMap((one) => {
      const piece = pieceWith(one, loss(standing.placed.columns), field.index);
      if (!piece) return [];
      return standingLayouts(undertaking, field, standing, footing, goneOn, piece, {
        change: one.changes[field.index]!,
        ...variant(one),
      });
    });
  }
  if (open.finishing || isForbidden(undertaking.garment, field.placement)) return [];
  const candidates = lengths.flatMap((one) =>
    columnChoices(field).flatMap(([columns, gap]) => {
      const piece = pieceWith(one, loss(columns), field.index);
      return piece
        ? freshCandidates(undertaking, field, footing, company, piece, {
            change: one.changes[field.index]!,
            ...variant(one),
            columns,
            gap,
          })
        : [];
    }),
  );
  return keptOf(candidates, company > 0, byPresentThenCost(undertaking)).map(layoutAt);
}

/** Which numbers of repeats may be added to a standing motif under a look. */
function repeatsAfter(undertaking: Undertaking, field: Field, { look, finishing }: OpenLook): GoneOn {
  const standing = undertaking.standing[field.index]!;
  if (standing.done) return { none: true, some: false };
  if (finishing) return { none: true, some: false };
  const alike = undertaking.fields.filter(({ placement }) => placement.motif === field.placement.motif);
  const stillOpen = alike.filter(({ index }) => undertaking.standing[index]?.done !== true);
  return {
    // Alone it would have the finishing look for that.
    none: stillOpen.length > 1,
    some:
      canFollow(standing, look.trace) &&
      joinsTo(standing, look, undertaking.circumstances(field.placement.motif)) !== undefined,
  };
}

function freshCandidates(
  { garment, begun }: Undertaking,
  field: Field,
  footing: Footing,
  company: number,
  piece: CountedPiece,
  settled: {
    readonly change: number;
    readonly variant?: string;
    readonly columns: number;
    readonly gap: number;
  },
): readonly Candidate[] {
  const { placement } = field;
  const fromRow = piece.marks.get(placement.from)!;
  const rows = piece.marks.get(placement.to)! - fromRow;
  // What is hung at the present row is hung already.
  const bottom = atLeast(placement.margins.bottom, begun.row + 1 - fromRow);
  const room = {
    ...settled,
    field: {
      ...field,
      placement: { ...placement, margins: { ...placement.margins, bottom } },
      // The marks stand where this piece has them: what changes its length is thought below them all.
      fromRow,
      toRow: Number.NEGATIVE_INFINITY,
      meetings: placement.meet.map(({ mark, at }) => ({
        row: piece.marks.get(mark)! - settled.change,
        at,
      })),
    },
    footing,
    rows,
    pieces: [{ piece, fromRow }],
    company,
    weights: garment.weights,
  };
  return fitsBed(piece, garment.bed) ? candidatesIn(room) : [];
}

const atLeast = (allowed: Allowed, least: number): Allowed =>
  allowed.kind === "from"
    ? anyFrom(Math.max(least, allowed.least))
    : only(...allowed.values.filter((value) => value >= least));

/** Where no other motif may want the same rows, only the first of each change of length can be part of the best. */
function keptOf(
  candidates: readonly Candidate[],
  inCompany: boolean,
  order: (one: Ranked, other: Ranked) => number,
): readonly Candidate[] {
  if (inCompany) return candidates;
  const first = new Map<string | undefined, Candidate>();
  for (const candidate of [...candidates].sort(order))
    if (!first.has(candidate.place.variant)) first.set(candidate.place.variant, candidate);
  return [...first.values()];
}

type Ranked = Pick<Layout, "cost" | "change" | "repeats" | "columns" | "gap" | "bottom" | "shift"> & {
  readonly field?: Field;
  readonly place?: { readonly field: Field };
};

/** Among layouts that cost the same, what was planned stays. */
const byPresentThenCost =
  ({ placed }: Undertaking) =>
  (one: Ranked, other: Ranked): number => {
    const planned = ({ field, place, ...layout }: Ranked): number => {
      const now = placed[(field ?? place!.field).index]!;
      const stays =
        layout.change === now.change &&
        layout.repeats === now.repeats &&
        layout.columns === now.columns &&
        layout.bottom === now.margins.bottom;
      return stays ? 0 : 1;
    };
    const dearer = one.cost - other.cost;
    if (Math.abs(dearer) > sameCost) return dearer;
    return planned(one) - planned(other) || byCostThenPlainness(one, other);
  };

/** Sums of a few products that are equal on paper differ by far less. */
const sameCost = 1e-9;
