import { describe, expect, test } from "vitest";
import { simplexEngine } from "../../../solver/simplex-engine.ts";
import { readSource } from "../../../src/explore/read-source.ts";
import { createAnyFit } from "../../../src/fit/refusal/any-fit.ts";
import { rulesOf } from "../../../src/fit/refusal/rules-of.ts";
import { type LeastChange, leastChanges } from "../../../src/why/least-changes.ts";
import { garmentText } from "../../support/garment-text.ts";
import { fitHere, soundGarment } from "../../support/run-garment.ts";

/** The least changes of the rule that a fit is steady. */
async function lessSteady(source: string): Promise<readonly LeastChange[]> {
  const { garment } = readSource(source, "test.yaml", {});
  if (!garment) throw new Error("the garment does not read");
  const rules = rulesOf(garment);
  const file = { source, name: "test.yaml", garment, fits: createAnyFit(garment, simplexEngine) };
  return leastChanges(
    file,
    rules.filter(({ rule }) => rule === "steady"),
    rules,
  );
}

const motifs =
  "motifs:\n  plait: { like: crossed cord, interval: 4, spread: 3, ease: { from: -1 %, to: 3 % } }";

describe("a fit that cannot be as steady as is asked", () => {
  test.each(["steady: true", "steady: 80 %"])(
    "is offered over the widest part there is: %s",
    async (line) => {
      const source = garmentText({ motifs, yarn: line });
      const [change, ...others] = await lessSteady(source);
      expect(others).toEqual([]);
      expect(change?.edits).toEqual([{ path: ["steady"], value: "46.5 %" }]);
      expect(change?.words).toBe(
        `let it hold over 46.5 % of what the swatch leaves open instead of ${line === "steady: true" ? "all" : "80 %"}`,
      );
      // The cord is the least sure: a quarter of a stitch in 19 are 1.316 %.
      const given = (line === "steady: true" ? 1 : 0.8) - 0.465;
      expect(change?.cost).toBeCloseTo(given * (25 / 19), 5);
      const statuses = ["46.5 %", "46.6 %"].map(
        async (share) =>
          (await fitHere(soundGarment(source.replace(line, `steady: ${share}`)), { rivals: 0 })).status,
      );
      expect(await Promise.all(statuses)).toEqual(["fits", "does not fit"]);
    },
  );

  test("is not asked to be steady, where it is not even for the gauge as it is told", async () => {
    const pieces = `pieces:
  sleeve:
    outline: [{ height: 0 cm, width: 20 cm }, { height: 36.1 cm, width: 31 cm }]
    marks: { rib top: 4 cm, underarm: 33 cm }
    grow: 0 cm`;
    const changes = await lessSteady(garmentText({ pieces, yarn: "steady: true" }));
    expect(changes.map(({ edits }) => edits)).toEqual([[{ path: ["steady"], value: false }]]);
    expect(changes[0]?.words).toBe("do not ask that it is steady");
  });
});
