import fc from "fast-check";
import type { GarmentFile, MarginsEntry, MotifEntry, PieceEntry, PlacementEntry } from "./garment-file.ts";
import { type Dice, thrown } from "./random/dice.ts";
import { type MotifKind, type RandomMotif, randomMotif } from "./random/motif.ts";
import { type RandomPiece, randomPiece } from "./random/piece.ts";
import { randomColumns, randomMargins, randomRepeats } from "./random/placement.ts";
import { randomSteadiness } from "./random/steady.ts";
import { randomWearer } from "./random/wearer.ts";
import { type Cloth, clothOf } from "./referee/cloth.ts";

export interface GarmentWishes {
  /** Fewest and most placements; 1 and 4 where it is left out. */
  readonly placements?: readonly [number, number];
  /** Most motifs; 3 where it is left out. */
  readonly motifs?: number;
  /** Every kind where it is left out. */
  readonly kinds?: readonly MotifKind[];
  /** Whether some pieces have a neck opening; they do where it is left out. */
  readonly necks?: boolean;
  /** Whether some pieces carry two placements; they do where it is left out. */
  readonly sharedPieces?: boolean;
  /** Whether some motifs must stand in a certain way at a mark, or alike on two pieces; not where it is left out. */
  readonly phases?: boolean;
  /** Whether most pieces lean to one side above their motif; none does where it is left out. */
  readonly leaning?: boolean;
  /** Whether half of the pieces are shaped on even rows only; none is where it is left out. */
  readonly evenRows?: boolean;
  /** Whether most motifs that may lie in several columns are mirrored; none is where it is left out. */
  readonly mirrored?: boolean;
  /** Whether most motifs are worked on in part above their last whole repeat; none is where it is left out. */
  readonly unfinished?: boolean;
  /** Whether most garments say who will wear them; none does where it is left out. */
  readonly wearers?: boolean;
  /** Whether garments have to hold for every gauge that their swatch leaves possible; they need not where it is left out. */
  readonly steady?: boolean;
}

/**
 * Garments of the file format `evenrow/1` as plain data, small enough for an exhaustive search; about three
 * of four have a fit.
 */
export function garmentArbitrary(wishes: GarmentWishes = {}): fc.Arbitrary<GarmentFile> {
  return thrown((dice) => randomGarment(dice, wishes));
}

/** The same garments for the same seed. */
export function sampleGarments(count: number, seed: number, wishes: GarmentWishes = {}): GarmentFile[] {
  return fc.sample(garmentArbitrary(wishes), { numRuns: count, seed });
}

const everyKind: readonly MotifKind[] = ["crossed cord", "crossed cord", "written cord", "cable"];
const motifNames = ["plait", "braid", "ladder"];
const pieceNames = ["front", "back", "sleeve", "collar"];
const beds = [100, 120, 150, 180, 200];

function randomGarment(dice: Dice, wishes: GarmentWishes): GarmentFile {
  const gauge = randomGauge(dice);
  const cloth = clothOf({ gauge } as GarmentFile);
  const [fewest, most] = wishes.placements ?? [1, 4];
  const placements = Math.min(dice.whole(fewest, most), dice.whole(fewest, most));
  const count = dice.whole(1, Math.min(wishes.motifs ?? 3, placements));
  const motifs = motifNames.slice(0, count).map((name) => {
    return randomMotif(dice, wishes.kinds ?? everyKind, name);
  });
  const pieces: Record<string, PieceEntry> = {};
  const place: PlacementEntry[] = [];
  let widest = 0;
  for (let index = 0; index < placements; index++) {
    const motif = motifs[index] ?? dice.pick(motifs);
    const name = pieceNames[index]!;
    const shares =
      (wishes.sharedPieces ?? true) && motif.kind !== "cable" && index === placements - 1 && dice.chance(10);
    const made = shares
      ? twoOnAPiece(dice, cloth, motif, name)
      : oneOnAPiece(dice, cloth, motif, name, wishes);
    pieces[name] = made.piece.entry;
    place.push(...made.place);
    widest = Math.max(widest, made.piece.widest);
  }
  const needles = beds.filter((bed) => bed >= 2 * (widest + 4));
  const worn = wishes.wearers ? randomWearer(dice, pieces) : { pieces };
  return {
    format: "evenrow/1",
    title: "Drawn by lot",
    bed: { needles: dice.pick(needles), ...(dice.chance(50) && { pitch: "5 mm" }) },
    ...(wishes.steady ? randomSteadiness(dice, gauge) : { gauge }),
    ...worn,
    motifs: Object.fromEntries(motifs.map(({ name, entry }): [string, MotifEntry] => [name, entry])),
    ...(wishes.phases ? withPhases(dice, place) : { place }),
    ...randomWeights(dice, motifs),
  };
}

/** Meetings for some placements, and a match for two that carry the same motif. */
function withPhases(dice: Dice, place: readonly PlacementEntry[]): Pick<GarmentFile, "place" | "match"> {
  const [one, ...others] = place;
  const twin = others.find(({ motif, on }) => motif === one!.motif && on !== one!.on);
  const matched = twin && one!.to === twin.to && dice.chance(70) ? [one!, twin] : [];
  return {
    place: place.map((placement) =>
      !matched.includes(placement) && dice.chance(50)
        ? { ...placement, meet: { mark: dice.pick([placement.from, placement.to]), at: phaseOf(dice) } }
        : placement,
    ),
    ...(matched.length > 0 && {
      match: [{ motif: one!.motif, on: matched.map(({ on }) => on), mark: one!.to }],
    }),
  };
}

const phaseOf = (dice: Dice): "whole" | "half" | number =>
  dice.pick(["whole", "half", dice.whole(0, 9)] as const);

function randomGauge(dice: Dice): GarmentFile["gauge"] {
  const stitches = dice.whole(14, 34);
  const rows = Math.min(50, Math.max(18, stitches + dice.whole(-2, 18)));
  const over = dice.pick(["10 cm", "10 cm", "100 mm", "4 in"]);
  return {
    ground: { stitches, rows, over },
    cord: { needles: dice.whole(3, 5), stitches: dice.whole(15, 32), over: "10 cm" },
  };
}

/** Weights for some of the terms that the garment can have, seldom 0. */
function randomWeights(dice: Dice, motifs: readonly RandomMotif[]): Pick<GarmentFile, "weights"> {
  if (dice.chance(40)) return {};
  const terms = new Set(["length", "balance", "ease", "repeats", "columns", "gap"]);
  for (const motif of motifs) for (const quantity of quantitiesOf(motif.entry)) terms.add(quantity);
  const weights: Record<string, number> = {};
  for (const term of terms) {
    if (dice.chance(45)) weights[term] = dice.chance(5) ? 0 : dice.whole(1, 40) / 10;
  }
  return { weights };
}

function quantitiesOf(motif: MotifEntry): string[] {
  if ("kind" in motif) return Object.keys(motif.quantities ?? {});
  return motif.like === "crossed cord" ? ["interval", "spread"] : ["interval"];
}

interface Made {
  readonly piece: RandomPiece;
  readonly place: readonly PlacementEntry[];
}

function oneOnAPiece(
  dice: Dice,
  cloth: Cloth,
  motif: RandomMotif,
  name: string,
  wishes: GarmentWishes,
): Made {
  const columns = randomColumns(dice);
  const likely = dice.whole(2, 4);
  const needed = columns.most * motif.reach + Math.ceil(((columns.most - 1) * columns.widestGap) / 2);
  const piece = randomPiece(dice, cloth, {
    fieldRows: likely * motif.repeatRows + dice.whole(8, 20),
    half: Math.max(4, needed + dice.whole(1, 12)),
    neck: (wishes.necks ?? true) && dice.chance(25),
    asymmetrical: dice.chance(15),
    straight: false,
    leaning: wishes.leaning === true && dice.chance(70),
    evenRows: wishes.evenRows === true && dice.chance(50),
  });
  const { from, to } = piece;
  return {
    piece,
    place: [
      {
        motif: motif.name,
        on: name,
        from,
        to,
        ...randomRepeats(dice, likely),
        ...(motif.kind === "band" ? repeatsAcross(dice) : columns.entry),
        ...(wishes.mirrored &&
          motif.kind !== "band" &&
          columns.most > 1 &&
          dice.chance(80) && { mirror: true }),
        ...(wishes.unfinished && dice.chance(85) && { unfinished: "part" as const }),
        ...randomMargins(dice),
      },
    ],
  };
}

/** Repeats of a band stand side by side without a gap. */
function repeatsAcross(dice: Dice): Pick<PlacementEntry, "columns"> {
  const least = dice.whole(1, 2);
  return {
    columns: dice.chance(70)
      ? { allow: `${least}..12`, prefer: dice.whole(least, 12) }
      : { allow: `${least}..12` },
  };
}

/** One motif twice on a straight piece: side by side in one field, or in two fields one above the other. */
function twoOnAPiece(dice: Dice, cloth: Cloth, motif: RandomMotif, name: string): Made {
  const fieldRows = 2 * motif.repeatRows + dice.whole(6, 14);
  const stacked = dice.chance(50);
  const piece = randomPiece(dice, cloth, {
    fieldRows: stacked ? 2 * fieldRows : fieldRows,
    half: 2 * motif.reach + dice.whole(2, 8),
    neck: false,
    asymmetrical: false,
    straight: true,
  });
  const on = { motif: motif.name, on: name, ...randomRepeats(dice, 2) };
  const margins = stacked
    ? // One row between the lower motif and the upper one, so that they never share a row.
      (): MarginsEntry => ({ bottom: `1..${dice.whole(6, 14)}`, side: { least: 1 } })
    : (): MarginsEntry => ({
        bottom: `0..${dice.whole(4, 12)}`,
        left: `0..${dice.whole(4, 40)}`,
        right: `0..${dice.whole(4, 40)}`,
      });
  const { from, middle, to } = piece;
  return {
    piece,
    place: [
      { ...on, from, to: stacked ? middle : to, margins: margins() },
      { ...on, from: stacked ? middle : from, to, margins: margins() },
    ],
  };
}
