import { describe, expect, test } from "vitest";
import { parseArithmetic } from "../../src/arithmetic/parse-arithmetic.ts";
import { dxfDrawings, svgDrawings } from "./drawings.ts";
import { escapes, expressions } from "./expressions.ts";
import { acceptedGarments, changedGarments, rawBytes } from "./garments.ts";
import { programRuns } from "./programs.ts";
import { exploreKeys, workKeysPressed } from "./screens.ts";
import type { Target } from "./target.ts";

const seed = 7;

/** A slice of what `npm run soak` tries, with another seed. */
const slices: readonly (readonly [Target, inputs: number])[] = [
  [changedGarments, 200],
  [rawBytes, 150],
  [acceptedGarments, 30],
  [expressions, 2000],
  [svgDrawings, 120],
  [dxfDrawings, 100],
  [exploreKeys, 50],
  [workKeysPressed, 60],
  [programRuns, 3],
];

test.each(slices.map(([target, inputs]) => [target.name, target, inputs] as const))(
  "whatever is tried is taken or refused in words: %s",
  async (_, target, inputs) => {
    const outcomes: string[] = [];
    for (const trial of await target.trials(seed, inputs)) {
      try {
        outcomes.push(await trial.run());
      } catch (error) {
        throw new Error(`for ${trial.shown()}`, { cause: error });
      }
    }
    expect(outcomes).toHaveLength(inputs);
    expect(outcomes).toContain("accepted");
  },
);

describe("a known way out of evaluators is no sum", () => {
  test.each(escapes)("%j", (text) => {
    expect(parseArithmetic(text, new Set(["interval", "spread"]))).toHaveProperty("problem");
  });
});
