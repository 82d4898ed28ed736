import { countPiece } from "../../cloth/counted-piece.ts";
import { extraNeedlesForDrawIn } from "../../cloth/draw-in.ts";
import { groundStitch } from "../../cloth/gauge.ts";
import { cordsOf, stitchesToMake } from "../../cord/cord.ts";
import { only, valuesUpTo } from "../../garment/allowed.ts";
import type { Garment, Piece, Placement } from "../../garment/garment.ts";
import { timesMade } from "../../garment/times-made.ts";
import { growingQuantity } from "../../motif/growing-quantity.ts";
import type { CordMotif, Motif } from "../../motif/motif.ts";
import { ratesOf } from "../../on-hand/rates.ts";
import { stitchesIn } from "../../yarn/stitches.ts";
import { placedMotifs } from "../enumerate.ts";
import { type Field, fieldsOf, stretchOf } from "../field.ts";
import { type Footing, footingKey, footingOf } from "../footing.ts";
import { type KeepWays, type Look, looksOf } from "../looks.ts";
import { cordPart } from "../on-hand/cord-counts.ts";
import { type SupplyMeasures, supplyMeasures } from "../on-hand/supply-measures.ts";
import { countLimits } from "../steady/counts.ts";
import { type Amounts, isNoMore, leastOf, sumsOf } from "./amounts.ts";
import type { Room } from "./room.ts";

/**
 * Whether something fits that takes no more than is on hand, whatever it costs; undefined where placements are tied in
 * more than that, so that an engine has to tell.
 *
 * A fit takes least where each placement takes least. So for every look, counted as sparingly as its ease allows, the
 * fewest repeats and columns and the shortest piece are sought that there is room for; of several supplies all ways that
 * no other surpasses.
 */
export function createLasts(room: Room): (garment: Garment) => boolean | undefined {
  const looksFor = rememberedLooks();
  const known = new WeakMap<Placement, WeakMap<Piece, Map<string, readonly Amounts[]>>>();
  return (garment) => {
    const supplies = supplyMeasures(garment, garment.onHand, () => 0);
    if (!supplies || !isSimple(garment)) return undefined;
    const bounds = supplies.limits.map(({ bound }) => bound);
    const within = (ways: readonly Amounts[]): readonly Amounts[] =>
      leastOf(ways.filter((way) => way.every((amount, index) => amount <= bounds[index]!)));
    const fields = fieldsOf(garment);
    const sparing = createSparing(garment, room, bounds, supplies);
    const waysOf = (field: Field, look: Look): readonly Amounts[] => {
      const ofPlacement = known.get(field.placement) ?? new WeakMap<Piece, Map<string, readonly Amounts[]>>();
      known.set(field.placement, ofPlacement);
      const ofPiece = ofPlacement.get(field.piece) ?? new Map<string, readonly Amounts[]>();
      ofPlacement.set(field.piece, ofPiece);
      const key = `${garment.bed.needles} ${bounds.join()} ${keyOf(look)}`;
      const ways = ofPiece.get(key) ?? sparing(field, look);
      ofPiece.set(key, ways);
      return ways;
    };
    let taken: readonly Amounts[] = [bounds.map(() => 0)];
    for (const motif of placedMotifs(garment)) {
      const own = fields.filter(({ placement }) => placement.motif === motif.name);
      const ways = looksFor(garment, motif).flatMap((look): readonly Amounts[] => {
        if (!own.every((field) => room.mayBe(field, footingOf(look.trace)))) return [];
        return own.reduce(
          (sums, field) => (sums.length === 0 ? sums : within(sumsOf(sums, waysOf(field, look)))),
          [bounds.map(() => 0)] as readonly Amounts[],
        );
      });
      taken = within(sumsOf(taken, leastOf(ways)));
      if (taken.length === 0) return false;
    }
    return true;
  };
}

/** Nothing ties placements but their motifs and what is on hand, and no motif grows. */
const isSimple = (garment: Garment): boolean =>
  garment.steady === undefined &&
  garment.matches.length === 0 &&
  new Set(garment.placements.map(({ piece }) => piece)).size === garment.placements.length &&
  placedMotifs(garment).every((motif) => growingQuantity(motif) === undefined);

/** Counts are tried from the fewest up, and each segment by itself: the first way has the fewest on every segment. */
const fewest: KeepWays = () => (ways) => ways.slice(0, 1);

function rememberedLooks(): (garment: Garment, motif: Motif) => readonly Look[] {
  const known = new WeakMap<Motif, Map<string, readonly Look[]>>();
  return (garment, motif) => {
    const limits = countLimits(garment, motif.name);
    const ofMotif = known.get(motif) ?? new Map<string, readonly Look[]>();
    known.set(motif, ofMotif);
    const key = JSON.stringify(limits);
    const looks =
      ofMotif.get(key) ?? alikeOnce(looksOf(motif, garment.gauge, garment.weights, 1, limits, fewest));
    ofMotif.set(key, looks);
    return looks;
  };
}

const none = { stitches: 0, cords: 0 };

/** Cord to make for one column. */
function cordOf({ reserve }: CordMotif, look: Look, repeats: number): typeof none {
  const cords = cordsOf([{ look, repeats, joins: [] }]);
  return {
    stitches: cords.reduce((sum, { used }) => sum + stitchesToMake(used, reserve), 0),
    cords: cords.length,
  };
}

const keyOf = (look: Look): string => `${footingKey(footingOf(look.trace))} ${cordPart(look)}`;

const alikeOnce = (looks: readonly Look[]): readonly Look[] => [
  ...new Map(looks.map((look) => [keyOf(look), look])).values(),
];

/** Makes all that one placement can take under a look, as far as nothing takes less and it is no more than there is. */
function createSparing(
  garment: Garment,
  room: Room,
  bounds: Amounts,
  { readsGround, readsCord }: Pick<SupplyMeasures, "readsGround" | "readsCord">,
): (field: Field, look: Look) => readonly Amounts[] {
  const stitch = groundStitch(garment.gauge);
  const rates = garment.onHand!.supplies.map((supply) => ratesOf(garment, supply));
  const lengthsOf = createLengths();
  const isRoom = (field: Field, footing: Footing): boolean => room.is(field, footing, garment.bed);
  const isWorthwhile = (amounts: Amounts, found: readonly Amounts[]): boolean =>
    isNoMore(amounts, bounds) && !found.some((other) => isNoMore(other, amounts));
  return (field, look) => {
    const footing = footingOf(look.trace);
    const { placement, piece } = field;
    if (!isRoom(field, footing)) return [];
    const times = timesMade(garment, piece.name);
    const { motif } = look;
    const lost = motif.kind === "cable" ? motif.drawIn * footing.crossedStitches : 0;
    const found: Amounts[] = [];
    const rows = field.toRow - field.fromRow + field.mostChange - footing.leadRows;
    for (const columns of valuesUpTo(placement.columns.allowed, garment.bed.needles)) {
      const lengths = readsGround ? lengthsOf(field, extraNeedlesForDrawIn(columns * lost)) : [undefined];
      const shortest = lengths[0]?.stitches ?? 0;
      for (const repeats of valuesUpTo(placement.repeats.allowed, Math.floor(rows / footing.repeatRows))) {
        const cord = readsCord && motif.kind === "cord" ? cordOf(motif, look, repeats) : none;
        const taking = (stitches: number): Amounts =>
          rates.map(
            (each) =>
              times *
              (stitches * each.groundStitch +
                columns * (cord.stitches * each.cordStitch + cord.cords * each.cord)),
          );
        // More repeats take no less.
        if (!isWorthwhile(taking(shortest), found)) break;
        for (const length of lengths) {
          const amounts = taking(length?.stitches ?? 0);
          if (!isWorthwhile(amounts, found)) continue;
          const narrowed: Field = {
            ...field,
            placement: {
              ...placement,
              columns: { allowed: only(columns) },
              repeats: { allowed: only(repeats) },
            },
            ...(length && { leastChange: length.change, mostChange: length.change }),
          };
          if (isRoom(narrowed, footing)) found.push(amounts);
        }
      }
    }
    return found;
  };

  function createLengths() {
    const known = new Map<string, readonly { readonly change: number; readonly stitches: number }[]>();
    return (field: Field, extra: number) => {
      const key = `${field.index} ${extra}`;
      const lengths =
        known.get(key) ??
        Array.from({ length: field.mostChange - field.leastChange + 1 }, (_, index) => {
          const change = field.leastChange + index;
          const counted = countPiece(field.piece, stitch, [stretchOf(field, change)], extra);
          return { change, stitches: stitchesIn(counted) };
        }).sort((a, b) => a.stitches - b.stitches);
      known.set(key, lengths);
      return lengths;
    };
  }
}
