import { type CountedSection, cordsOf, stitchesToMake } from "../../cord/cord.ts";
import type { CordMotif } from "../../motif/motif.ts";
import type { Candidate } from "../candidates.ts";
import type { KeepWays, Look } from "../looks.ts";
import { cheapestOfEach } from "./cheapest-of-each.ts";
import { distinctPasses, stitchesOver, usageOf, usageText } from "./cord-usage.ts";

/** Cord to make for one layout: cord stitches, reserve included, and the number of cords. */
export interface CordToMake {
  readonly stitches: number;
  readonly cords: number;
}

/** What the layouts of a garment's motifs need in cord; the same question is worked out once. */
export function createCordCounts(): (motif: CordMotif, candidate: Omit<Candidate, "amounts">) => CordToMake {
  const known = new WeakMap<CountedSection["look"], Map<number, readonly number[]>>();
  const alike = (look: CountedSection["look"], repeats: number): readonly number[] => {
    const ofLook = known.get(look) ?? new Map<number, readonly number[]>();
    known.set(look, ofLook);
    const used = ofLook.get(repeats) ?? cordsOf([{ look, repeats, joins: [] }]).map((cord) => cord.used);
    ofLook.set(repeats, used);
    return used;
  };
  return ({ reserve }, { place, growth, columns, repeats }) => {
    const { counted } = place.footing;
    const used = growth?.used ?? (counted ? alike(counted, repeats) : []);
    const stitches = used.reduce((sum, one) => sum + stitchesToMake(one, reserve), 0);
    return { stitches: columns * stitches, cords: columns * used.length };
  };
}

/** What of a look tells how much cord layouts under it take. */
export const cordPart = ({ motif, trace, segments }: Look): string =>
  motif.kind === "cord" ? usageText(usageOf(trace), segments) : "";

/**
 * Keeps ways to count a cord that differ in how much they take: less of it is never worse, unless as little as can be is
 * to be left over.
 */
export const waysByUsage =
  (lessIsBetter: boolean): KeepWays =>
  (trace) => {
    const passes = distinctPasses(usageOf(trace));
    return (ways, keep, away) =>
      cheapestOfEach(ways, keep, (way) => {
        const amounts = passes.map((one) => stitchesOver(one, way));
        return {
          cost: away(way),
          least: lessIsBetter ? amounts : [],
          exact: lessIsBetter ? [] : amounts,
        };
      });
  };
