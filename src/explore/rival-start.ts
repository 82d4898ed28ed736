import type { Fit } from "../fit/fit.ts";
import { growthWords } from "../report/growth-words.ts";
import { holding } from "./change-allows.ts";
import { preferring } from "./change-preference.ts";
import { chosenFor } from "./chosen.ts";
import { type Change, refused } from "./edit.ts";
import { type GarmentRule, isHeld } from "./garment-rule.ts";
import { together } from "./hold.ts";

/**
 * Makes another fit the one to go on from: everything that was chosen for it is *held fast* at its values, because a
 * preference alone would let a third fit, cheaper than this one, come in between. Where it differs in how the cord
 * is counted, which no rule can hold, the ease it has becomes the preferred one.
 */
export function startFrom(source: string, rules: readonly GarmentRule[], best: Fit, rival: Fit): Change {
  const growing = rival.placements.map(growthWords);
  if (growing.join() !== best.placements.map(growthWords).join())
    return refused("This fit changes from repeat to repeat in another way, and no rule can hold that fast");
  const held = rules.flatMap((rule) => {
    const value = rule.allows.kind === "values" ? chosenFor(rule, rival) : undefined;
    return value === undefined || isHeld(rule) ? [] : [{ rule, value }];
  });
  const counted = rules.filter((rule) => rule.allows.kind === "ease" && !sameCounts(best, rival, rule.motif));
  return together(
    [
      ...held.map(({ rule, value }) => holding(source, rule, value)),
      ...counted.map((rule) => preferring(source, rule, Math.round(chosenFor(rule, rival)! * 1e4) / 1e4)),
    ],
    "This fit is the new start: all that was chosen for it is held fast; let go of what may move again",
  );
}

function sameCounts(best: Fit, rival: Fit, motif: string | undefined): boolean {
  const counts = (fit: Fit): string =>
    fit.looks
      .filter((look) => look.motif.name === motif)
      .flatMap((look) => [...look.values.values(), ...look.segments.map(({ pickup }) => pickup)])
      .join(" ");
  return counts(best) === counts(rival);
}
