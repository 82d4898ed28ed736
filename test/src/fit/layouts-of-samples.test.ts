import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readSource } from "../../../src/explore/read-source.ts";
import { enumerate } from "../../../src/fit/enumerate.ts";
import { footingKey } from "../../../src/fit/footing.ts";
import type { Layout } from "../../../src/fit/layouts.ts";

const costsOnEachFooting = (
  layouts: readonly Layout[],
  keep: number,
): ReadonlyMap<string, readonly number[]> => {
  const costs = new Map<string, number[]>();
  for (const { footing, cost } of layouts) {
    const key = footingKey(footing);
    costs.set(key, [...(costs.get(key) ?? []), cost]);
  }
  return new Map([...costs].map(([key, all]) => [key, all.sort((a, b) => a - b).slice(0, keep)]));
};

test.each(["sleeve", "scarf", "front", "hat"])(
  "what is not made because cheaper layouts are known is none of the cheapest: %s",
  (name) => {
    const { garment } = readSource(readFileSync(`samples/${name}.yaml`, "utf8"), name);
    const all = enumerate(garment!, { fits: 5_000 });
    for (const fits of [1, 6]) {
      const some = enumerate(garment!, { fits });
      some.layouts.forEach((layouts, placement) => {
        const left = costsOnEachFooting(all.layouts[placement]!, fits);
        expect(left.size).toBeGreaterThan(0);
        expect(costsOnEachFooting(layouts, fits)).toEqual(left);
      });
    }
  },
);
