import { type GaugeRange, gaugeRange } from "../cloth/gauge-range.ts";
import { gaugeOff } from "../cloth/gauge-uncertainty.ts";
import type { Fit } from "../fit/fit.ts";
import type { FittedSegment } from "../fit/looks.ts";
import { countLimits, keepsLoopOver, keepsOver } from "../fit/steady/counts.ts";
import { keepsLength } from "../fit/steady/length.ts";
import type { Garment } from "../garment/garment.ts";
import { workedOf } from "./ranges.ts";

/** A share of what the swatch leaves open is known to this: far finer than it is ever told. */
export const shareGrain = 1e-9;

/** Further than this many times the range nothing is looked at. */
const furthestShare = 10;

/**
 * The greatest share of what the swatch leaves open over which a fit keeps its limits of ease, loops and length, to
 * `shareGrain`: it keeps them over what is answered, and not over more; 0 where it does not at the gauge as told, which
 * rounding to whole rows can be the cause of.
 */
export const slackOf = (fit: Fit): number => slackWith(fit, (motif) => workedOf(fit, motif));

/** What gives way first: the length of a piece, the ease of a motif, or how long its loops may be. */
export interface Broken {
  readonly what: "length" | "ease" | "loop";
  readonly of: string;
}

/** What a fit does not keep over a share of what the swatch leaves open; undefined where it keeps all. */
export const brokenAt = (fit: Fit, share: number): Broken | undefined =>
  brokenOver(fit, (motif) => workedOf(fit, motif), gaugeRange(fit.garment.gauge, share));

/**
 * The same with every stretch that the motif's looks have counts for, as fitting asks for them: those of a lead-in too
 * where a look follows on another, and of a second repeat where there is only one.
 */
export const slackAsFitted = (fit: Fit): number =>
  slackWith(fit, (motif) =>
    fit.placements
      .filter((placement) => placement.motif === motif)
      .flatMap(({ sections }) => sections.flatMap(({ look, joins }) => [...joins, ...look.segments])),
  );

type SegmentsOf = (motif: string) => readonly FittedSegment[];

function slackWith(fit: Fit, segmentsOf: SegmentsOf): number {
  // They are asked for at every share that is tried.
  const segments = new Map(fit.looks.map(({ motif: { name } }) => [name, segmentsOf(name)]));
  const holds = (share: number): boolean =>
    brokenOver(fit, (motif) => segments.get(motif)!, gaugeRange(fit.garment.gauge, share)) === undefined;
  const furthest = furthestShareOf(fit.garment);
  if (holds(furthest)) return furthest;
  let [kept, broken] = [0, furthest];
  // The ranges lie within one another, so what a share breaks every greater one does.
  while (broken - kept > shareGrain / 4) {
    const middle = (kept + broken) / 2;
    if (holds(middle)) kept = middle;
    else broken = middle;
  }
  return kept;
}

/** A count can't be off by all of itself. */
function furthestShareOf({ gauge }: Garment): number {
  const { stitches, rows, cord = 0 } = gaugeOff(gauge);
  return Math.min(furthestShare, 0.9 / Math.max(stitches, rows, cord));
}

/** What a fit does not keep for some gauge of a range; undefined where it keeps all. */
function brokenOver(fit: Fit, segmentsOf: SegmentsOf, range: GaugeRange): Broken | undefined {
  const { garment } = fit;
  for (const piece of garment.pieces) {
    const counted = fit.pieces.find(({ name }) => name === piece.name);
    if (counted && !keepsLength(piece, counted.rows, range)) return { what: "length", of: piece.name };
  }
  for (const { motif } of fit.looks) {
    if (motif.kind !== "cord") continue;
    const limits = countLimits(garment, motif.name);
    for (const segment of segmentsOf(motif.name)) {
      if (keepsOver(segment, motif.ease, range, limits, garment.gauge.cord?.thicknessMm)) continue;
      const isLoop = !keepsLoopOver(segment, range, limits.mostLoopMm);
      return { what: isLoop ? "loop" : "ease", of: motif.name };
    }
  }
  return undefined;
}
