import type { Garment } from "../garment/garment.ts";
import type { Breach } from "./check/breach.ts";
import { checkCost } from "./check/check-cost.ts";
import { checkLook } from "./check/check-look.ts";
import { checkMeetings } from "./check/check-meetings.ts";
import { checkOnHand } from "./check/check-on-hand.ts";
import { checkPart } from "./check/check-part.ts";
import { checkPhases } from "./check/check-phases.ts";
import { checkPiece } from "./check/check-piece.ts";
import { checkPlacement } from "./check/check-placement.ts";
import { checkSteady } from "./check/check-steady.ts";
import { checkWearer } from "./check/check-wearer.ts";
import type { Fit } from "./fit.ts";

export { type Breach, describeBreaches } from "./check/breach.ts";

/**
 * Checks a fit against the garment's own rules, by code that shares nothing with the formulation: rows add up,
 * margins, ease and edges keep their limits (for every gauge, where that is asked for), every hanging finds its needles
 * in work, what is on hand lasts, the cost is what is told.
 *
 * @param engineCost what the engine says the fit costs
 * @returns every rule that is not kept; empty where the fit is right
 */
export function checkFit(garment: Garment, fit: Fit, engineCost: number): readonly Breach[] {
  return [
    ...fit.looks.flatMap((look) => checkLook(garment, look)),
    ...fit.placements.flatMap((placement) => checkPlacement(garment, fit, placement)),
    ...fit.placements.flatMap((placement) => checkPart(garment, fit, placement)),
    ...garment.pieces.flatMap((piece) => checkPiece(garment, fit, piece)),
    ...checkMeetings(fit),
    ...checkPhases(garment, fit),
    ...checkWearer(garment, fit),
    ...checkSteady(garment, fit),
    ...checkOnHand(garment, fit),
    ...checkCost(garment, fit, engineCost),
  ];
}
