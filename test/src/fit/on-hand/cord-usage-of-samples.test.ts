import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { cordsOf } from "../../../../src/cord/cord.ts";
import { looksOf } from "../../../../src/fit/looks.ts";
import { cordPart, waysByUsage } from "../../../../src/fit/on-hand/cord-counts.ts";
import { stitchesOver, usageOf } from "../../../../src/fit/on-hand/cord-usage.ts";
import type { CordMotif } from "../../../../src/motif/motif.ts";
import { soundGarment } from "../../../support/run-garment.ts";

const samples = readdirSync("samples/motifs").map((name) => readFileSync(`samples/motifs/${name}`, "utf8"));
const cords = samples.flatMap((text) => {
  const garment = soundGarment(text);
  return garment.motifs
    .filter((motif): motif is CordMotif => motif.kind === "cord")
    .map((motif) => ({ name: motif.name, garment, motif }));
});

describe.each(cords)("the cords of the sample motif $name", ({ garment, motif }) => {
  const looks = looksOf(motif, garment.gauge, garment.weights, 40).slice(0, 60);

  test("take in each repeat what they pass over in it", () => {
    for (const { trace, segments } of looks.slice(0, 10))
      for (const [cord, { strands, passes }] of usageOf(trace).entries()) {
        let stitches = strands;
        for (const [repeats, inThis] of passes.entries()) {
          stitches += stitchesOver(inThis, segments);
          const whole = cordsOf([{ look: { trace, segments }, repeats, joins: [] }]);
          expect(whole[cord]!.used).toBe(stitches);
        }
      }
  });

  test("take the same for any number of repeats where their text is the same, and not otherwise", () => {
    const usedBy = ({ trace, segments }: (typeof looks)[number]): string =>
      JSON.stringify(
        [1, 2, 3, 5, 8, 13].map((repeats) =>
          cordsOf([{ look: { trace, segments }, repeats, joins: [] }]).map(({ used }) => used),
        ),
      );
    const texts = new Map<string, string>();
    for (const look of looks) {
      const part = cordPart(look);
      expect(texts.get(part) ?? usedBy(look)).toBe(usedBy(look));
      texts.set(part, usedBy(look));
    }
    expect(new Set(texts.values()).size).toBe(texts.size);
  });

  test("are counted with as little cord as any way to count them takes", () => {
    const { gauge, weights } = garment;
    const every = looksOf(motif, gauge, weights, 200).slice(0, 400);
    const kept = looksOf(motif, gauge, weights, 1, {}, waysByUsage(true));
    const total = ({ segments }: (typeof every)[number]): number =>
      segments.reduce((sum, { pickup }) => sum + pickup, 0);
    const key = ({ values }: (typeof every)[number]): string => JSON.stringify([...values]);
    for (const one of every) {
      const own = kept.filter((look) => key(look) === key(one));
      expect(Math.min(...own.map(total))).toBeLessThanOrEqual(total(one));
      expect(Math.min(...own.map(({ cost }) => cost))).toBeLessThanOrEqual(one.cost + 1e-9);
    }
  });
});
