import type { Progress } from "./program.ts";

/**
 * What is known of a solve after a further word about it: engines do not repeat in each what they have said before. A
 * point is passed on only where it is better than all before.
 */
export function further(before: Progress, word: Progress): Progress {
  const bound = greatest(before.bound, word.bound);
  const best = least(before.best, word.best);
  const isBetter =
    word.point !== undefined && word.best !== undefined && word.best < (before.best ?? Infinity);
  return {
    nodes: Math.max(before.nodes, word.nodes),
    ...(bound === undefined ? {} : { bound }),
    ...(best === undefined ? {} : { best }),
    ...(isBetter ? { point: word.point } : {}),
  };
}

const greatest = (a: number | undefined, b: number | undefined): number | undefined =>
  a === undefined ? b : b === undefined ? a : Math.max(a, b);

const least = (a: number | undefined, b: number | undefined): number | undefined =>
  a === undefined ? b : b === undefined ? a : Math.min(a, b);
