import { cordsOf } from "../../cord/cord.ts";
import type { Track } from "./tracks.ts";

/** Cord stitches that each cord of one column takes more by a step, by the indexes of two looks. */
export type CordOfStep = (repeat: number, to: number, from: number) => readonly number[];

/**
 * What each step of a track takes, worked out once: strands that change places are in the same place at a repeat however
 * it was come to, so the looks below the one before make no difference.
 */
export function cordOfSteps({ looks, stepTo }: Track): CordOfStep {
  const known = new Map<string, readonly number[]>();
  const used = (sections: Parameters<typeof cordsOf>[0]): readonly number[] =>
    cordsOf(sections).map((cord) => cord.used);
  const workOut: CordOfStep = (repeat, to, from) => {
    const [look, before] = [looks[to]!, looks[from]!];
    if (repeat === 0) return used([{ look, repeats: 1, joins: [] }]);
    const below = { look: before, repeats: repeat, joins: [] };
    const without = used([below]);
    return used([below, { look, repeats: 1, joins: stepTo(look, before)!.joins }]).map(
      (stitches, cord) => stitches - without[cord]!,
    );
  };
  return (repeat, to, from) => {
    const key = `${repeat} ${to} ${from}`;
    const stitches = known.get(key) ?? workOut(repeat, to, from);
    known.set(key, stitches);
    return stitches;
  };
}
