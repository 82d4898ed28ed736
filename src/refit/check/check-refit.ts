import { type Breach, breach } from "../../fit/check/breach.ts";
import { checkCost } from "../../fit/check/check-cost.ts";
import { checkMeetings } from "../../fit/check/check-meetings.ts";
import { checkSteps } from "../../fit/check/check-piece.ts";
import { checkChoices, checkPlace } from "../../fit/check/check-placement.ts";
import { checkSteady } from "../../fit/check/check-steady.ts";
import { checkWearer } from "../../fit/check/check-wearer.ts";
import type { Fit, FittedPlacement } from "../../fit/fit.ts";
import type { Garment } from "../../garment/garment.ts";
import { checkKnitted } from "./check-knitted.ts";
import { checkLengths } from "./check-lengths.ts";
import { checkRest, freshFrom } from "./check-rest.ts";

/**
 * Checks a piece that is fitted anew against what is knitted and against the garment's own rules, by arithmetic of
 * its own: knitted rows as they were, motifs gone on with from where they stand and whole at their marks, margins,
 * edges and ease within their limits at the gauge as measured, the cost what is told.
 *
 * @param before the fit that the piece was knitted by, up to `row`
 * @param engineCost what the engine says the new fit costs
 * @param isSteady whether what is new has to hold for every gauge that the measurement leaves possible
 * @returns every rule that is not kept; empty where the fit is right
 */
export function checkRefit(
  before: Fit,
  now: Fit,
  row: number,
  engineCost: number,
  isSteady = now.garment.steady !== undefined,
): readonly Breach[] {
  const [piece] = now.pieces;
  const was = before.pieces.find(({ name }) => name === piece?.name);
  if (!piece || !was) return [breach("piece", "is missing")];
  const { garment } = now;
  return [
    ...checkKnitted(before, was, now, piece, row),
    ...checkLengths(before, was, now, piece, row),
    ...checkSteps(garment, piece, "left"),
    ...checkSteps(garment, piece, "right"),
    ...now.placements.flatMap((placed) => [
      ...checkPlace(garment.placements[placed.index]!, placed, piece),
      ...limitsOf(before, now, placed, row),
      ...checkRest(before, now, placed, row),
    ]),
    ...checkMeetings(now),
    // What is hung already was held to its wearer's limits before; the gauge may have moved it past them since.
    ...checkWearer(garment, { ...now, placements: now.placements.filter(({ firstRow }) => firstRow > row) }),
    ...(isSteady ? checkSteady(garment, now, isNew(before, row)) : []),
    // What the garment as a whole leaves over is nothing that one piece is fitted anew by.
    ...checkCost(withoutSupplies(garment), now, engineCost),
  ];
}

const withoutSupplies = ({ onHand: _, ...garment }: Garment): Garment => garment;

/** Sections that are not begun; what is hung already stands as it was planned. */
const isNew =
  (before: Fit, row: number) =>
  ({ index, sections }: FittedPlacement, section: number): boolean => {
    const was = before.placements.find((one) => one.index === index)!;
    return was.firstRow > row || section >= freshFrom(was, sections);
  };

/** A motif that was done already keeps limits only as far as they were kept when it was planned. */
function limitsOf(before: Fit, now: Fit, placed: Fit["placements"][number], row: number): readonly Breach[] {
  const was = before.placements.find(({ index }) => index === placed.index);
  if (was && was.lastRow <= row) return [];
  return checkChoices(now.garment.placements[placed.index]!, placed, `${placed.motif} on ${placed.piece}`);
}
