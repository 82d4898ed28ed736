import type { RangeDoesNotFit } from "./range-result.ts";
import type { ReadySize, Solving } from "./solve-sizes.ts";

/**
 * Why sizes that fit one by one do not share a look: each is left out in turn. Where that never helps, the sizes are
 * thinned to some that cannot go together, though any of them can be spared (a deletion filter, as in `fit/refusal.ts`).
 */
export async function whyTogetherNothingFits(
  ready: readonly ReadySize[],
  solving: Solving,
): Promise<Pick<RangeDoesNotFit, "freeing" | "clash">> {
  const others = (sizes: readonly ReadySize[], one: ReadySize): readonly ReadySize[] =>
    sizes.filter((size) => size !== one);
  const statusWithout = async (one: ReadySize, sizes: readonly ReadySize[]): Promise<string> =>
    (await solving.together(others(sizes, one), one)).status;
  const freeing: string[] = [];
  for (const size of ready) if ((await statusWithout(size, ready)) === "picked") freeing.push(size.name);
  if (freeing.length > 0) return { freeing, clash: [] };
  let clash = ready;
  for (const size of ready)
    if ((await statusWithout(size, clash)) === "infeasible") clash = others(clash, size);
  return { freeing, clash: clash.map(({ name }) => name) };
}
