import { describe, expect, test } from "vitest";
import { parse, stringify } from "yaml";
import { simplexEngine } from "../../solver/simplex-engine.ts";
import { applyEdits } from "../../src/explore/apply-edits.ts";
import { readSource } from "../../src/explore/read-source.ts";
import { rulesFor } from "../../src/explore/rules-for.ts";
import { breakDown, hasFit } from "../../src/fit/refusal.ts";
import type { Garment } from "../../src/garment/garment.ts";
import { leastChanges } from "../../src/why/least-changes.ts";
import { loosenings } from "../../src/why/loosening.ts";
import { exhaustiveBest } from "../support/exhaustive.ts";
import type { GarmentFile } from "../support/garment-file.ts";
import { edgesOf } from "../support/knittable-edges.ts";
import { sampleGarments } from "../support/random-garment.ts";
import { garmentOf } from "../support/run-garment.ts";

/** Few, because each takes seconds to lift every rule of and to judge by exhaustive search. */
const drawn = 56;
const fits = (garment: Garment): Promise<boolean> => hasFit(garment, simplexEngine);

const unfitting = sampleGarments(drawn, 20261126, {
  sharedPieces: false,
  placements: [1, 1],
  motifs: 1,
  kinds: ["crossed cord", "cable"],
}).filter((plain) => exhaustiveBest(plain, { edges: edgesOf(garmentOf(plain)) }) === undefined);

/** Whether the exhaustive search finds a fit of a garment file's text. */
function refereeFits(text: string): boolean {
  const { garment } = readSource(text, "test.yaml");
  if (!garment) return false;
  return exhaustiveBest(parse(text) as GarmentFile, { edges: edgesOf(garment) }) !== undefined;
}

describe(`those of ${drawn} random garments that do not fit`, () => {
  test("have least changes that an exhaustive search confirms: each fits, and smaller steps of a margin or a length do not", async () => {
    let [conflicts, changesJudged, lessJudged] = [0, 0, 0];
    for (const plain of unfitting) {
      const source = stringify(plain);
      const { garment } = readSource(source, "test.yaml");
      if (!garment) continue;
      const { rules, liftable } = await breakDown(garment, simplexEngine);
      if (!liftable) continue;
      conflicts++;
      const ids = rules.map(({ rule }) => rule);
      const changes = await leastChanges({ source, name: "test.yaml", garment, fits }, ids);
      for (const { edits, words } of changes) {
        const edited = applyEdits(source, edits);
        expect(edited, words).toHaveProperty("text");
        if (!("text" in edited)) continue;
        expect(refereeFits(edited.text), `${words}\n${source}`).toBe(true);
        changesJudged++;
      }
      // A rule whose very first step is enough has nothing less; for the others every smaller step is tried.
      for (const rule of rulesFor(garment).filter(({ id }) => ids.includes(id))) {
        if (rule.allows.kind !== "least" && rule.allows.kind !== "length") continue;
        for (const { widely, mostSteps } of loosenings(source, rule)) {
          const enough = changes.find(
            ({ edits }) => edits.length === 1 && edits[0]!.path.join(".").startsWith(rule.id),
          );
          for (let steps = 1; enough && steps <= mostSteps; steps++) {
            const change = widely(steps);
            if (!("edits" in change)) break;
            if (change.words === enough.words) break;
            const edited = applyEdits(source, change.edits);
            expect("text" in edited && refereeFits(edited.text), change.words).toBe(false);
            lessJudged++;
          }
        }
      }
    }
    expect(conflicts).toBeGreaterThanOrEqual(4);
    expect(changesJudged).toBeGreaterThanOrEqual(10);
    expect(lessJudged).toBeGreaterThan(5);
  }, 120_000);
});
