import { type ChoiceProgram, type Joined, join } from "../../solver/choice.ts";
import { hold, within } from "../fit/allowance.ts";
import { enumerate, type LooksOf, placedMotifs } from "../fit/enumerate.ts";
import { type Choices, formulate } from "../fit/formulate.ts";
import { looksOf } from "../fit/looks.ts";
import { type Prepared, prepare } from "../fit/prepare.ts";
import { countLimits } from "../fit/steady/counts.ts";
import type { Share, SizeRange } from "../garment/garment.ts";
import { sharedKey, sharesAll } from "./shared-look.ts";

/** A size with all that can be chosen for it; nothing where some motif or placement has nothing to choose from. */
export interface PreparedSize {
  readonly name: string;
  readonly prepared: Prepared | undefined;
}

/**
 * Works out what can be chosen for every size. Of layouts only the best on each footing are kept: sizes are told apart
 * by the look they share.
 *
 * @param fits how many shared looks must be told apart
 * @throws WorkEnded where the sizes together leave more to choose from than can be held
 */
export function prepareRange(range: SizeRange, fits: number): readonly PreparedSize[] {
  const looks = looksInCommon(range, fits);
  return within(undefined, () =>
    range.sizes.map(({ name, garment }) => {
      const prepared = prepare(garment, { fits: 1, looksOf: looks });
      if (prepared) holdAll(prepared.choices);
      return { name, prepared };
    }),
  );
}

/** Each size may take what a garment may while it is worked out; what is left of all of them may be no more than that. */
const holdAll = ({ looks, layouts }: Choices): void =>
  hold([...looks, ...layouts].reduce((sum, options) => sum + options.length, 0));

/** A whole range as one choice program, also where a size has nothing to choose from; throws WorkEnded. */
export function joinRange(range: SizeRange): ChoiceProgram {
  const looks = looksInCommon(range, 1);
  const sizes = within(undefined, () =>
    range.sizes.map(({ name, garment }) => {
      const choices = enumerate(garment, { fits: 1, looksOf: looks });
      holdAll(choices);
      return { name, prepared: { choices, program: within(undefined, () => formulate(choices)) } };
    }),
  );
  return joinSizes(range.share, sizes).choice;
}

/** Sizes as one choice program. */
export const joinSizes = (
  share: Share | undefined,
  sizes: readonly { readonly name: string; readonly prepared: Pick<Prepared, "choices" | "program"> }[],
): Joined =>
  join(
    sizes.map(({ name, prepared: { program, choices } }) => ({
      name,
      choice: program,
      shared: new Map(
        choices.looks.flatMap((looks, group) => {
          const keys = looks.flatMap((look) => sharedKey(share, look) ?? []);
          return keys.length > 0 ? [[program.groups[group]!.name, keys] as const] : [];
        }),
      ),
    })),
  );

/**
 * Looks for all sizes, each motif's worked out once: garments of one file differ in their pieces alone, and in what
 * their wearers allow. Where sizes share the counts of the cord, but not all that these depend on, any way to count may
 * be the best for all though it is not among the best for one, so every one is kept.
 */
function looksInCommon(range: SizeRange, fits: number): LooksOf {
  const known = new Map<string, ReturnType<LooksOf>>();
  const garments = range.sizes.map(({ garment }) => garment);
  const motifs = new Map(garments.flatMap(placedMotifs).map((motif) => [motif.name, motif]));
  const countings = new Map(
    [...motifs].map(([name, motif]) => {
      const limits = new Set(garments.map((garment) => JSON.stringify(countLimits(garment, name))));
      const alike = limits.size === 1 && sharesAll(range.share, motif);
      return [name, range.share?.pickup && !alike ? Number.POSITIVE_INFINITY : fits];
    }),
  );
  return (motif, gauge, weights, keep, limits, keepWays) => {
    const kept = Math.max(keep, countings.get(motif.name) ?? 0);
    const key = `${motif.name} ${kept} ${JSON.stringify(limits)}`;
    const looks = known.get(key) ?? looksOf(motif, gauge, weights, kept, limits, keepWays);
    known.set(key, looks);
    return looks;
  };
}
