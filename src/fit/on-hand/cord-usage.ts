import { pointsOver } from "../../motif/sections.ts";
import { distinctSegments, segmentKey } from "../../motif/segments.ts";
import { across, type Trace } from "../../motif/trace.ts";

/** How often one cord of a motif passes over each of its distinct segments, first before the repeats and then in each of them. */
export interface CordUsage {
  readonly strands: number;
  readonly passes: readonly (readonly number[])[];
}

/**
 * What the cords of a motif take of each segment. After the second repeat it comes round again at the latest when every
 * strand has been in the place of every other, so as many repeats and one more tell of any number of them.
 */
export function usageOf(trace: Trace): readonly CordUsage[] {
  const usage = known.get(trace) ?? workOut(trace);
  known.set(trace, usage);
  return usage;
}

/** A motif is asked about once for each way to count it. */
const known = new WeakMap<Trace, readonly CordUsage[]>();

function workOut(trace: Trace): readonly CordUsage[] {
  const segments = distinctSegments(trace);
  const index = new Map(
    segments.map(({ needles, rows, fixed }, at) => [segmentKey(needles, rows, fixed), at]),
  );
  return cordsIn(trace).map((names) => {
    const passes = Array.from({ length: trace.strands.length + 2 }, () => segments.map(() => 0));
    for (const name of names) {
      let done = 1;
      for (const [repeats, inThis] of passes.entries()) {
        const points = pointsOver([{ trace, repeats }], "strands", name);
        for (; done < points.length; done++) {
          const [from, to] = [points[done - 1]!, points[done]!];
          inThis[index.get(segmentKey(across(from, to), to.row - from.row, to.count))!]! += 1;
        }
      }
    }
    return { strands: names.length, passes };
  });
}

/** The names of the strands of each cord. */
function cordsIn({ strands, folded }: Trace): readonly (readonly string[])[] {
  const single = strands.filter(({ name }) => !folded.some((pair) => pair.includes(name)));
  return [...folded, ...single.map(({ name }) => [name])];
}

/** Cord stitches over some passes, with so many counted on each segment; segments that are not counted yet take none. */
export const stitchesOver = (
  passes: readonly number[],
  counts: readonly { readonly pickup: number }[],
): number => counts.reduce((sum, { pickup }, at) => sum + passes[at]! * pickup, 0);

/** Looks of one motif with the same text take as much cord as each other, cord by cord, however often they are repeated. */
export const usageText = (
  usage: readonly CordUsage[],
  counts: readonly { readonly pickup: number }[],
): string =>
  usage
    .map(({ strands, passes }) => `${strands}+${passes.map((one) => stitchesOver(one, counts)).join("+")}`)
    .join(" ");

/** The different ways in which segments are passed over, by any cord in any repeat. */
export const distinctPasses = (usage: readonly CordUsage[]): readonly (readonly number[])[] => [
  ...new Map(usage.flatMap(({ passes }) => passes).map((one) => [one.join(), one])).values(),
];
