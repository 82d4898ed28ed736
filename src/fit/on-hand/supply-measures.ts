import { countPiece } from "../../cloth/counted-piece.ts";
import { groundStitch } from "../../cloth/gauge.ts";
import type { Garment, OnHand, Supply } from "../../garment/garment.ts";
import { timesMade } from "../../garment/times-made.ts";
import { weightOf } from "../../garment/weights.ts";
import { mostOf, type Rates, ratesOf } from "../../on-hand/rates.ts";
import { stitchesIn } from "../../yarn/stitches.ts";
import type { Limit } from "../formulate.ts";
import type { KeepWays } from "../looks.ts";
import type { Measure } from "../measure.ts";
import { cordPart, createCordCounts, waysByUsage } from "./cord-counts.ts";
import type { GroundOfLayout } from "./ground.ts";

/** What is on hand as what a fit's choices add up to. */
export interface SupplyMeasures {
  /** One for each supply, in the order of the file. */
  readonly measures: readonly Measure[];
  /** By index of these measures. */
  readonly limits: readonly Limit[];
  /** What the best fit would cost if nothing were taken of any supply; each choice costs that much less. */
  readonly costOfAll: number;
  readonly readsCord: boolean;
  readonly readsGround: boolean;
  /** Whether it is never worse to take less. */
  readonly lessIsBetter: boolean;
  /** Which ways to count a cord may be the best; all that are nearest to the preferred ease where cord is not read. */
  readonly keepWays?: KeepWays;
  /** Amounts of so many stitches of the ground, by measure. */
  readonly ofGround: (stitches: number) => readonly number[];
}

/** Undefined where all is on hand that it takes. */
export function supplyMeasures(
  garment: Garment,
  onHand: OnHand | undefined,
  groundOf: GroundOfLayout,
): SupplyMeasures | undefined {
  if (!onHand) return undefined;
  const { supplies, leastWaste } = onHand;
  const weight = leastWaste ? weightOf(garment.weights, "waste") : 0;
  const rates = supplies.map((supply) => ratesOf(garment, supply));
  const cordOf = createCordCounts();
  const measures = supplies.map((supply, index) =>
    measureOf(garment, supply, rates[index]!, weight, cordOf, groundOf),
  );
  const plain = plainStitches(garment);
  const readsCord = rates.some(({ cordStitch }) => cordStitch > 0);
  return {
    measures,
    limits: supplies.map(
      (supply, index): Limit => ({
        measure: index,
        name: `${supply.of} on hand`,
        relation: "<=",
        bound: mostOf(supply) - plain * rates[index]!.groundStitch + roundingTolerance,
      }),
    ),
    costOfAll: supplies.reduce(
      (sum, { amount }, index) => sum + weight * (100 - (100 * plain * rates[index]!.groundStitch) / amount),
      0,
    ),
    readsCord,
    readsGround: rates.some(({ groundStitch: each }) => each > 0),
    lessIsBetter: weight === 0,
    ...(readsCord && { keepWays: waysByUsage(weight === 0) }),
    ofGround: (stitches) => rates.map(({ groundStitch: each }) => stitches * each),
  };
}

/** What two ways to add up the same amounts may differ by, far below one stitch of anything. */
const roundingTolerance = 1e-9;

function measureOf(
  garment: Garment,
  { of, amount }: Supply,
  rates: Rates,
  weight: number,
  cordOf: ReturnType<typeof createCordCounts>,
  groundOf: GroundOfLayout,
): Measure {
  const motifs = new Map(garment.motifs.map((motif) => [motif.name, motif]));
  return {
    name: `${of} on hand`,
    ofLook: () => 0,
    ofLayout: (candidate) => {
      const { placement } = candidate.place.field;
      const motif = motifs.get(placement.motif)!;
      const times = timesMade(garment, placement.piece);
      const cord = motif.kind === "cord" ? cordOf(motif, candidate) : undefined;
      const ground = rates.groundStitch > 0 ? groundOf(candidate) : 0;
      return (
        times *
        ((cord ? cord.stitches * rates.cordStitch + cord.cords * rates.cord : 0) +
          ground * rates.groundStitch)
      );
    },
    ...(rates.cordStitch > 0 && { lookPart: cordPart }),
    ...(weight > 0 && { costEach: (-100 * weight) / amount }),
  };
}

/** Stitches of the pieces on which no motif is laid; whatever is chosen, they stay as they are. */
const plainStitches = (garment: Garment): number =>
  garment.pieces
    .filter(({ name }) => !garment.placements.some(({ piece }) => piece === name))
    .reduce(
      (sum, piece) =>
        sum + timesMade(garment, piece.name) * stitchesIn(countPiece(piece, groundStitch(garment.gauge))),
      0,
    );
