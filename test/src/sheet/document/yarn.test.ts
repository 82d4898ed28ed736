import { describe, expect, test } from "vitest";
import type { Fit } from "../../../../src/fit/fit.ts";
import { yarnSection } from "../../../../src/sheet/document/yarn.ts";
import { estimateYarn } from "../../../../src/yarn/estimate.ts";
import type { Range } from "../../../../src/yarn/range.ts";
import type { GarmentFile } from "../../../support/garment-file.ts";
import { laid, plait, smallGarment, strip } from "../../../support/small-garment.ts";
import { bare, fitOf, plainGarment } from "../support/small-fits.ts";

const facts = (fit: Fit): Readonly<Record<string, string>> => {
  const [first] = yarnSection(fit).content;
  return first?.kind === "facts"
    ? Object.fromEntries(first.facts.map(({ name, value }) => [name, value]))
    : {};
};

const told = (fit: Fit): string => {
  const [, last] = yarnSection(fit).content;
  return last?.kind === "paragraph" ? last.text : "";
};

/** A strip of 20 needles by 10 rows with such yarn, nothing laid on it. */
const strips = (more: Partial<GarmentFile> = {}): Fit => bare(plainGarment(more));

const yarn = (tex?: number, grams?: number): Partial<GarmentFile> => ({
  yarn: {
    ground: {
      ...(tex !== undefined && { tex }),
      ...(grams !== undefined && { swatch: { stitches: 40, rows: 50, weight: `${grams} g` } }),
    },
  },
});

const room =
  "The gauge leaves room: how fully the swatch has relaxed, and a quarter of a stitch in its count.";
const ask =
  " A swatch that was weighed is surer: put its stitches, rows and weight into the file under yarn.";

/** As it is told: about so much, between whole metres or grams that hold all of it. */
const within = ({ least, about, most }: Range, unit: string): string =>
  `about ${Math.ceil(about)} ${unit} (${Math.floor(least)} to ${Math.ceil(most)} ${unit})`;

test("the ground's yarn is told in metres, what is added to it, and what to have at hand, each rounded up", () => {
  const fit = strips();
  const { byGauge, extra, atHand } = estimateYarn(fit).ground;
  expect(yarnSection(fit).title).toBe("Yarn");
  expect(facts(fit)).toEqual({
    "Ground by the gauge": within(byGauge.metres!, "m"),
    "Ground, to add": `${Math.ceil(extra.metres!)} m for casting on, seams, tails and waste`,
    "Ground, to have at hand": `at least ${Math.ceil(atHand.metres!)} m`,
  });
  // 4.3 m, of which a tenth more: they need not be whole for what is told to be.
  expect(facts(fit)["Ground, to have at hand"]).toBe("at least 5 m");
  expect(told(fit)).toBe(room + ask);
});

test("and in grams where the yarn's tex is known", () => {
  const fit = strips(yarn(400));
  const { byGauge, extra, atHand } = estimateYarn(fit).ground;
  expect(facts(fit)).toEqual({
    "Ground by the gauge": `${within(byGauge.metres!, "m")} or ${within(byGauge.grams!, "g")}`,
    "Ground, to add": `${Math.ceil(extra.metres!)} m or ${Math.ceil(extra.grams!)} g for casting on, seams, tails and waste`,
    "Ground, to have at hand": `at least ${Math.ceil(atHand.metres!)} m or ${Math.ceil(atHand.grams!)} g`,
  });
});

describe("a weighed swatch", () => {
  // The strip's 200 stitches are a tenth of the swatch's 2000. 400 tex are 400 g to 1000 m, 2.5 m to a gram. A scale
  // that tells whole grams is half a gram off.
  const conflict =
    "the two figures for the ground cannot both be right: look again at the swatch's weight and counts, and at tex";

  test("says what a piece takes by its own share of the weight, and no other swatch is asked for", () => {
    const fit = strips(yarn(400, 16));
    // 1.6 g between 1.55 and 1.65 g, 4 m between 3.875 and 4.125 m; the surer, because the gauge leaves 9 %.
    expect(facts(fit)["Ground by the weighed swatch"]).toBe(
      "about 4 m (3 to 5 m) or about 2 g (1 to 2 g): the surer",
    );
    expect(facts(fit)).not.toHaveProperty("Check");
    expect(told(fit)).toBe(room);
    // A tenth of the surer 4 m and 1.6 g.
    expect(facts(fit)["Ground, to add"]).toBe("1 m or 1 g for casting on, seams, tails and waste");
    expect(facts(fit)["Ground, to have at hand"]).toBe("at least 5 m or 2 g");
  });

  test("that cannot be right beside the gauge is told, be it too heavy or too light", () => {
    const heavy = facts(strips(yarn(400, 80)));
    expect(heavy["Ground by the weighed swatch"]).toBe(
      "about 20 m (19 to 21 m) or about 8 g (7 to 9 g): the surer",
    );
    expect(heavy.Check).toBe(conflict);
    // 2 m and 0.8 g more than at most 20.125 m and 8.05 g.
    expect(heavy["Ground, to have at hand"]).toBe("at least 23 m or 9 g");
    const light = facts(strips(yarn(400, 4)));
    expect(light["Ground by the weighed swatch"]).toBe(
      "about 1 m (0 to 2 m) or about 1 g (0 to 1 g): less sure than the gauge, for so small a swatch",
    );
    expect(light.Check).toBe(conflict);
  });

  test("of a yarn whose tex is not known is told in grams, beside metres by the gauge", () => {
    const fit = strips(yarn(undefined, 80));
    expect(facts(fit)).toEqual({
      "Ground by the gauge": within(estimateYarn(fit).ground.byGauge.metres!, "m"),
      "Ground by the weighed swatch": "about 8 g (7 to 9 g): the surer",
      "Ground, to add": "1 g for casting on, seams, tails and waste",
      "Ground, to have at hand": "at least 9 g",
    });
  });
});

describe("where a cord is laid", () => {
  const laidFit = (more: Partial<GarmentFile> = {}): Promise<Fit> =>
    fitOf(
      smallGarment({
        pieces: { strip: strip(20, 12) },
        motifs: { plait: plait(4, 3) },
        place: [laid("plait", "strip")],
        ...more,
      }),
    );

  test("its yarn is told behind the ground's, with its tails", async () => {
    const fit = await laidFit();
    const { byGauge, atHand } = estimateYarn(fit).cord!;
    expect(Object.entries(facts(fit)).slice(3)).toEqual([
      ["Cord by the gauge", within(byGauge.metres!, "m")],
      // One cord, 20 cm at each end.
      ["Cord, to add", "1 m for its tails"],
      ["Cord, to have at hand", `at least ${Math.ceil(atHand.metres!)} m`],
    ]);
  });

  test("a cord's own swatch that cannot be right is told of the cord", async () => {
    // A thousand grams for forty cord stitches.
    const fit = await laidFit({
      yarn: { cord: { tex: 400, swatch: { stitches: 40, weight: "1000 g" } } },
    });
    expect(facts(fit).Check).toMatch(/^the two figures for the cord cannot both be right/);
  });

  test("what is on hand is held against what is needed, to the decimetre", async () => {
    const fit = await laidFit({ "on hand": { cord: "1 m", "ground yarn": "50 m" } });
    const ground = Math.ceil(estimateYarn(fit).ground.atHand.metres! * 10 - 1e-9) / 10;
    const told = facts(fit);
    expect(told["Ground, to have at hand"]).toBe(`at least ${ground} m`);
    expect(ground % 1).not.toBe(0);
    // Forty cord stitches of 5 mm.
    expect(told["On hand, cord"]).toBe("0.2 m needed of 1 m, 0.8 m left over");
    expect(told["On hand, ground yarn"]).toBe(
      `${ground} m needed of 50 m, ${(50 - ground).toFixed(1)} m left over`,
    );
  });
});
