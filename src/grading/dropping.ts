import type { Picks } from "../../solver/choice.ts";
import { costTolerance } from "../fit/check/breach.ts";
import type { Share } from "../garment/garment.ts";
import { type Dropped, type FittedSize, givenUp } from "./range-result.ts";
import { type SharedLook, sharedLook } from "./shared-look.ts";
import type { ReadySize, Solving, Together } from "./solve-sizes.ts";

/**
 * What it would gain to leave each size in turn out of the shared look: the others are solved anew without it, and what
 * it costs by itself is added. A size that gives up nothing may still be the one that holds the others back.
 */
export async function gainsOfDropping(
  share: Share | undefined,
  shared: Picks,
  ready: readonly ReadySize[],
  fitted: readonly FittedSize[],
  solving: Solving,
): Promise<readonly Dropped[]> {
  // No gain is greater than what all give up together, so where that is nothing none is.
  const nothing = fitted.every((size) => (givenUp(size) ?? 1) <= costTolerance);
  const dropped: Dropped[] = [];
  for (const [index, size] of fitted.entries()) {
    const { name, alone } = size;
    if (!alone) continue;
    const others = ready.filter((_, other) => other !== index);
    if (nothing || others.length === 0) {
      dropped.push({ size: name, gain: 0, proven: shared.proven && alone.proven });
      continue;
    }
    const without = await solving.together(others, ready[index]);
    if (without.status !== "picked") continue;
    const gain = shared.cost - without.picks.cost - alone.cost;
    const proven = shared.proven && alone.proven && without.picks.proven;
    dropped.push(
      gain <= costTolerance
        ? { size: name, gain: 0, proven }
        : { size: name, gain, proven, looks: looksOf(others[0]!, without, share) },
    );
  }
  return dropped;
}

/** What sizes that go together share, as the first of them has it. */
function looksOf(
  { prepared: { choices } }: ReadySize,
  { joined, picks }: Together,
  share: Share | undefined,
): readonly SharedLook[] {
  const own = joined.picksOf(0, picks.picks);
  return choices.looks.flatMap((ofMotif, group) => sharedLook(share, ofMotif[own[group]!]!) ?? []);
}
