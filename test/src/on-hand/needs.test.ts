import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { checkFit } from "../../../src/fit/check.ts";
import type { Fit } from "../../../src/fit/fit.ts";
import { leftOf, needsOf, percentLeft } from "../../../src/on-hand/needs.ts";
import { mostOf } from "../../../src/on-hand/rates.ts";
import { needWords, supplyWords } from "../../../src/on-hand/words.ts";
import { fitToJson } from "../../../src/report/fit-json.ts";
import { fitText } from "../../../src/report/fit-text.ts";
import { buildSheet } from "../../../src/sheet/build-sheet.ts";
import { documentOf } from "../../../src/sheet/document/document-of.ts";
import { estimateYarn } from "../../../src/yarn/estimate.ts";
import { garmentText } from "../../support/garment-text.ts";
import { fitHere, soundGarment } from "../../support/run-garment.ts";

const sleeve = readFileSync("samples/sleeve.yaml", "utf8").replaceAll("tex: 370", "tex: 400");

async function fitted(text: string) {
  const result = await fitHere(soundGarment(text), { rivals: 0 });
  if (result.status !== "fits") throw new Error("nothing fits");
  return result;
}

const withOnHand = (onHand: string, text = sleeve): string => `${text}on hand: ${onHand}\n`;
const twice = sleeve.replace("  sleeve:\n", "  sleeve:\n    make: 2\n");
const worked = sleeve.replace("    columns: 1\n", "    columns: 1\n    unfinished: part\n");

describe("what a fit needs of what is on hand", () => {
  it("is what it tells to prepare, rounded up", async () => {
    const { fit } = await fitted(withOnHand("{ cord: 12 m, cord yarn: 40 g, ground yarn: 900 m }"));
    const { ground, cord } = estimateYarn(fit);
    const [finished, cordYarn, groundYarn] = needsOf(fit);
    // 194 cord stitches of 100 mm / 19 are 1021.05 mm.
    expect(finished!.needed).toBe(1.022);
    expect(leftOf(finished!)).toBe(10.978);
    expect(percentLeft(finished!)).toBeCloseTo(100 * (1 - 1.0210526 / 12), 4);
    expect(cordYarn!.needed).toBe(Math.ceil(10 * cord!.atHand.grams!) / 10);
    expect(groundYarn!.needed).toBe(Math.ceil(10 * ground.atHand.metres!) / 10);
  });

  // Derived: 50 g of 125 m are 400 tex, so that 6 balls are 300 g or 750 m.
  it("is the same in metres, in grams and in balls", async () => {
    const amounts = ["750 m", "300 g", "{ balls: 6, each: 50 g }", "{ balls: 6, each: 125 m }"];
    const told = await Promise.all(
      amounts.map(
        async (amount) => needsOf((await fitted(withOnHand(`{ ground yarn: ${amount} }`))).fit)[0]!,
      ),
    );
    for (const need of told) {
      const inGrams = need.supply.unit === "g" ? need.takes : 0.4 * need.takes;
      expect(inGrams).toBeCloseTo(told[1]!.takes, 9);
      expect(percentLeft(need)).toBeCloseTo(percentLeft(told[0]!), 9);
    }
    expect(told.map(({ supply }) => supplyWords(supply))).toEqual([
      "750 m of ground yarn",
      "300 g of ground yarn",
      "300 g of ground yarn (6 balls)",
      "750 m of ground yarn (6 balls)",
    ]);
    expect(needWords(told[2]!)).toMatch(
      /^\d+(\.\d)? g needed of 300 g \(2 of 6 balls\), \d+(\.\d)? g left over$/,
    );
  });

  it("counts a piece as often as it is made", async () => {
    const onHand = "{ cord: 12 m, yarn: 900 m }";
    const [one, two] = [await fitted(withOnHand(onHand)), await fitted(withOnHand(onHand, twice))];
    const [before, now] = [needsOf(one.fit), needsOf(two.fit)];
    for (const [index, need] of now.entries()) expect(need.takes).toBeCloseTo(2 * before[index]!.takes, 9);
    expect(fitText(two, 80)).toContain("sleeve (make 2): 112 rows");
    expect(fitText(two, 200)).toContain("102.2 cm, for each of the 2");
    expect(JSON.stringify(fitToJson(two, 1))).toContain('"piece":"sleeve","make":2');
    const { sections, pieces } = documentOf(two.fit, buildSheet(two.fit));
    expect(JSON.stringify(sections)).toContain("one cord, and the same for each of the 2 to be made.");
    expect(pieces[0]!.needles.facts[0]).toEqual({ name: "Make", value: "2 alike" });
  });

  it("is told by fit, as JSON and by the sheet", async () => {
    const result = await fitted(withOnHand("{ cord: 1.03 m, prefer: least waste }"));
    const words = "1.022 m needed of 1.03 m, 0.008 m left over";
    expect(fitText(result, 80)).toContain(`On hand\n  cord: ${words}\n`);
    expect(fitText(result, 80)).toMatch(/waste, cord +0\.087 +0\.869 % left over, weight 0\.1/);
    expect(fitToJson(result, 1)).toMatchObject({
      on_hand: [{ supply: "cord", unit: "m", amount: 1.03, needed: 1.022, left_over: 0.008 }],
      terms: [{ term: "ease" }, { term: "waste", supply: "cord", unit: "% left over", weight: 0.1 }],
    });
    const { sections } = documentOf(result.fit, buildSheet(result.fit));
    expect(JSON.stringify(sections)).toContain(JSON.stringify({ name: "On hand, cord", value: words }));
  });

  it("is what the sheet says to have at hand, to the tenth", async () => {
    const plenty = await fitted(withOnHand("{ cord yarn: 400 m, ground yarn: 900 g }"));
    const [cord, ground] = needsOf(plenty.fit).map(({ needed }) => needed);
    const { fit } = await fitted(withOnHand(`{ cord yarn: ${cord} m, ground yarn: ${ground} g }`));
    const told = JSON.stringify(documentOf(fit, buildSheet(fit)).sections);
    expect(told).toMatch(new RegExp(`Cord, to have at hand","value":"at least ${cord} m or `));
    expect(told).toMatch(new RegExp(`Ground, to have at hand","value":"at least [\\d.]+ m or ${ground} g"`));
  });

  it("is nothing where nothing is said to be on hand", async () => {
    const result = await fitted(sleeve);
    expect(needsOf(result.fit)).toEqual([]);
    expect(fitText(result, 80)).not.toContain("On hand");
    expect(fitToJson(result, 1)).not.toHaveProperty("on_hand");
  });
});

describe("an unfinished repeat", () => {
  const partOf = ({ placements }: Fit) => placements[0]!.part;

  it("is worked in part where the cord lasts for it, and never decides the fit", async () => {
    const [plain, whole] = [await fitted(sleeve), await fitted(worked)];
    const [less, more] = [plain, whole].map(
      ({ fit }) => needsOf({ ...fit, garment: soundGarment(withOnHand("{ cord: 9 m }")) })[0]!.needed,
    ) as [number, number];
    expect(more).toBeGreaterThan(less);
    const enough = await fitted(withOnHand(`{ cord: ${more} m }`, worked));
    expect(partOf(enough.fit)).toEqual(partOf(whole.fit));
    const scarce = await fitted(withOnHand(`{ cord: ${Number((more - 0.001).toFixed(3))} m }`, worked));
    expect(partOf(scarce.fit)).toBeUndefined();
    expect(scarce.fit.cost).toBe(plain.fit.cost);
    expect(needsOf(scarce.fit)[0]!.needed).toBe(less);
  });

  it("is held to that by the check", async () => {
    const { fit: whole } = await fitted(withOnHand("{ cord: 9 m }", worked));
    const { fit: scarce } = await fitted(withOnHand("{ cord: 1.03 m }", worked));
    const broken = (fit: Fit): readonly string[] =>
      checkFit(fit.garment, fit, fit.cost).map(({ rule }) => rule);
    const without = whole.placements.map(({ part: _, ...placement }) => placement);
    expect(broken({ ...whole, placements: without })).toEqual(["plait on sleeve"]);
    const withPart = scarce.placements.map((placement) => ({ ...placement, part: partOf(whole)! }));
    expect(broken({ ...scarce, placements: withPart })).toEqual(["on hand: cord"]);
  });
});

describe("a piece whose length only its last motif can change", () => {
  const place = (motif: string, from: string, to: string, margins: string): string =>
    `  - { motif: ${motif}, on: strip, from: ${from}, to: ${to}, margins: { ${margins} } }`;
  // The first two share rows without having the same field, so that neither may change its length.
  const strip = (onHand: string): string =>
    garmentText({
      gauge: `gauge:
  ground: { stitches: 20, rows: 25, over: 10 cm }
  cord: { needles: 3, stitches: 20, over: 10 cm }`,
      yarn: "yarn: { ground: { tex: 300 } }",
      onHand: `on hand: ${onHand}`,
      pieces: `pieces:
  strip:
    outline: [{ height: 0 cm, width: 30 cm }, { height: 32 cm, width: 30 cm }]
    marks: { low: 8 cm, middle: 12 cm, high: 20 cm }
    grow: 4 cm
    shrink: 4 cm`,
      motifs: `motifs:
  plait: { like: crossed cord, interval: 4, spread: 3 }
  other: { like: crossed cord, interval: 5, spread: 3 }`,
      place: `place:
${place("plait", "cast-on", "middle", "left: 0..20, right: 0..60, bottom: 0..9, top: 0..9")}
${place("plait", "low", "high", "left: 20..60, right: 0..20, bottom: 0..9, top: 0..9")}
${place("other", "high", "bind-off", "side: { least: 4 }, bottom: 2, top: 2")}`,
    });

  it("takes of the ground what it takes at the length that it comes to", async () => {
    // 30 rows less a margin of 2 at either end are 26; a lead-in of 5 and two repeats of 10 rows are 25.
    const plenty = await fitted(strip("{ ground yarn: 900 m }"));
    expect(plenty.fit.pieces[0]!.rows).toBe(79);
    const { needed } = needsOf(plenty.fit)[0]!;
    const enough = await fitted(strip(`{ ground yarn: ${needed} m }`));
    expect(needsOf(enough.fit)[0]!.needed).toBe(needed);
    expect((await fitted(strip("{ ground yarn: 900 m, prefer: least waste }"))).fit.pieces[0]!.rows).toBe(79);
  });
});

describe("the most that may be needed", () => {
  it.each([
    ["cord", 1.0219, 1.021],
    ["cord", 0.3, 0.3],
    ["yarn", 12.39, 12.3],
    ["ground yarn", 0.3, 0.3],
  ] as const)("of %s, where %d is on hand, is %d, since told amounts are rounded up", (of, amount, most) => {
    expect(mostOf({ path: [], of, amount, unit: "m" })).toBe(most);
  });
});
