import { gaugeOff } from "../../cloth/gauge-uncertainty.ts";
import type { Garment } from "../../garment/garment.ts";
import { offWords } from "../../report/steady-words.ts";
import type { NamedRule } from "./rule.ts";

export const STEADY_RULE = "steady";

/** That ease and length have to keep their limits for every gauge of the range, where the file asks for it. */
export function steadyRules({ gauge, steady }: Garment): readonly NamedRule[] {
  if (steady === undefined) return [];
  return [
    {
      rule: STEADY_RULE,
      path: [STEADY_RULE],
      words: `ease and length hold for every gauge within ${offWords(gaugeOff(gauge), steady)}`,
      lift: ({ steady: _, ...others }) => others,
    },
  ];
}
