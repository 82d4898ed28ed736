import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { simplexEngine } from "../../../solver/simplex-engine.ts";
import type { Fit } from "../../../src/fit/fit.ts";
import { createAnyFit } from "../../../src/fit/refusal/any-fit.ts";
import { rulesOf } from "../../../src/fit/refusal/rules-of.ts";
import { breakDown } from "../../../src/fit/refusal.ts";
import type { Fits } from "../../../src/fit/solve.ts";
import type { Garment } from "../../../src/garment/garment.ts";
import { brokenAt, slackOf } from "../../../src/steady/slack.ts";
import { countsOf, type Steadiness, steadinessOf } from "../../../src/steady/steadiness.ts";
import { garmentText } from "../../support/garment-text.ts";
import { gaugesWithin, numbersFrom, type TrueGauge } from "../../support/gauges.ts";
import { fitHere, soundGarment } from "../../support/run-garment.ts";

const sample = (name: string): Garment => soundGarment(readFileSync(`samples/${name}.yaml`, "utf8"));

const steadily = (garment: Garment): Garment => ({ ...garment, steady: 1 });

async function fitted(garment: Garment): Promise<Fits> {
  const result = await fitHere(garment, { rivals: 0 });
  if (result.status !== "fits") throw new Error("nothing fits");
  return result;
}

async function lookRound(garment: Garment, leftMs = Number.POSITIVE_INFINITY): Promise<Steadiness> {
  const result = await fitHere(garment, { rivals: 0 });
  return (await steadinessOf(garment, result, simplexEngine, 0, () => leftMs))!;
}

/** A swatch of the same stitch, so many times as large. */
const counted = (garment: Garment, times: number): Garment => {
  const { ground, cord } = garment.gauge;
  const more = { overMm: ground.overMm * times, stitches: ground.stitches * times };
  return {
    ...garment,
    gauge: {
      ground: { ...ground, ...more, rows: ground.rows * times },
      ...(cord && { cord: { ...cord, overMm: cord.overMm * times, stitches: cord.stitches * times } }),
    },
  };
};

/** A sleeve whose cord may have next to no slack. */
const narrow = (changes: Parameters<typeof garmentText>[0] = {}): Garment =>
  soundGarment(
    garmentText({
      motifs:
        "motifs:\n  plait: { like: crossed cord, interval: { allow: [4, 6] }, spread: { allow: 2..6 }, ease: { from: -1 %, to: 3 %, prefer: 1 % } }",
      yarn: "steady: true",
      ...changes,
    }),
  );

describe("a larger swatch", () => {
  test("gains what the same garment costs with a swatch that was counted over twice as much", async () => {
    const garment = sample("steady-bag");
    const { larger, asTold } = await lookRound(garment);
    const twice = await fitted(counted(garment, 2));
    expect(larger?.result?.fit.cost).toBeCloseTo(twice.fit.cost, 9);
    expect(larger?.counts).toEqual({ stitches: 40, rows: 56, cordStitches: 30 });
    const { fit } = await fitted(garment);
    expect(twice.fit.cost).toBeLessThan(fit.cost);
    expect(asTold?.cost).toBeLessThanOrEqual(twice.fit.cost);
  });

  test("that is told for a steady fit is enough, and a little less is not", async () => {
    const garment = narrow();
    const { narrower } = await lookRound(garment);
    const times = narrower!.swatchTimes!;
    expect(times).toBeGreaterThan(1.01);
    expect((await fitHere(counted(garment, times * 1.0001), { rivals: 0 })).status).toBe("fits");
    expect((await fitHere(counted(garment, times * 0.9999), { rivals: 0 })).status).toBe("does not fit");
    const { stitches, rows, cordStitches } = countsOf(garment.gauge, times);
    expect([stitches, rows, cordStitches]).toEqual([22, 31, 19].map((count) => Math.ceil(count * times)));
  });

  test("is counted only where the file says what was counted", () => {
    const { gauge } = sample("scarf");
    // 15 stitches can be read to 1.7 %, 21 rows to 1.2 %.
    expect(countsOf(gauge, 2)).toEqual({ stitches: 30, rows: 42, cordStitches: 28 });
    const surer = { ...gauge.ground, within: { stitches: 0.015, rows: 0.015 } };
    expect(countsOf({ ...gauge, ground: surer }, 2)).toEqual({ rows: 42, cordStitches: 28 });
  });
});

describe("how wide a range can be had", () => {
  test("is told with the best fit over it, as the file would ask for it", async () => {
    const garment = narrow();
    const { narrower } = await lookRound(garment);
    expect(narrower?.exact).toBe(true);
    const { share, result } = narrower!.offered!;
    expect(share).toBeLessThanOrEqual(narrower!.share!);
    expect(share).toBeGreaterThan(narrower!.share! - 0.001);
    const asWritten = await fitted(narrow({ yarn: `steady: ${Number((100 * share).toFixed(1))} %` }));
    expect(asWritten.fit.cost).toBeCloseTo(result.fit.cost, 9);
    expect(slackOf(result.fit)).toBeGreaterThanOrEqual(share - 1e-9);
    expect(brokenAt(result.fit, 1)).toEqual({ what: "ease", of: "plait" });
  });

  test("is not looked for where nothing fits anyway, or where there is no time", async () => {
    const never = await lookRound(steadily(sample("too-narrow")));
    expect(never).not.toHaveProperty("narrower");
    expect(never).toMatchObject({ fitsAsTold: false });
    expect(await lookRound(narrow(), 0)).toEqual({ garment: narrow(), asked: 1 });
  });

  test("is nothing where a piece may not be off by what rounding to rows adds", async () => {
    const pieces = `pieces:
  sleeve:
    outline: [{ height: 0 cm, width: 20 cm }, { height: 36.1 cm, width: 31 cm }]
    marks: { rib top: 4 cm, underarm: 33 cm }
    grow: 0 cm`;
    const { narrower } = await lookRound(soundGarment(garmentText({ pieces, yarn: "steady: true" })));
    expect(narrower).toEqual({ noneFrom: 0, exact: true });
  });
});

describe("the rules that stand in the way", () => {
  test("have steadiness among them, with how far off the gauge may be", async () => {
    const garment = narrow();
    const { rules } = await breakDown(garment, simplexEngine);
    expect(rules.map(({ rule }) => rule)).toContain("steady");
    expect(rules.find(({ rule }) => rule === "steady")?.words).toBe(
      "ease and length hold for every gauge within 1.14 % in stitches, 0.81 % in rows and 1.32 % in the cord",
    );
    const { steady: _, ...bold } = garment;
    expect(rulesOf(bold).map(({ rule }) => rule)).not.toContain("steady");
  });

  test("are told apart where the same piece may change its length by fewer rows to be steady", async () => {
    // 36 rows of motif and margins of 2 fill 40 rows, and the piece has 38: as told it may have 2 more, steadily none.
    const garment = soundGarment(
      garmentText({
        gauge:
          "gauge:\n  ground: { stitches: 20, rows: 20, over: 10 cm, within: 2 % }\n  cord: { needles: 3, stitches: 20, over: 10 cm, within: 0 % }",
        yarn: "steady: true",
        pieces:
          "pieces:\n  sleeve: { outline: [{ height: 0 cm, width: 20 cm }, { height: 19 cm, width: 20 cm }], grow: 1 cm, shrink: 1 cm }",
        motifs:
          "motifs:\n  plait: { like: crossed cord, interval: 4, spread: 3, ease: { from: -20 %, to: 20 % } }",
        place:
          "place:\n  - { motif: plait, on: sleeve, from: cast-on, to: bind-off, repeats: 4, margins: { bottom: 2, top: 2 } }",
      }),
    );
    const { steady: _, ...bold } = garment;
    expect((await fitted(bold)).fit.placements[0]?.change).toBe(2);
    const fits = createAnyFit(garment, simplexEngine);
    expect([await fits(bold), await fits(garment), await fits(bold)]).toEqual([true, false, true]);
    const { rules } = await breakDown(garment, simplexEngine);
    expect(rules.map(({ rule }) => rule)).toContain("steady");
  });

  test("name the length of a piece without a motif", async () => {
    const pieces = `pieces:
  sleeve:
    outline: [{ height: 0 cm, width: 20 cm }, { height: 36 cm, width: 31 cm }]
    marks: { rib top: 4 cm, underarm: 33 cm }
  strip: { outline: [{ height: 0 cm, width: 4 cm }, { height: 60 cm, width: 4 cm }], grow: 4 mm, shrink: 4 mm }`;
    const motifs = "motifs:\n  plait: { like: crossed cord, interval: 4, spread: 3 }";
    const garment = soundGarment(garmentText({ pieces, motifs, yarn: "steady: true" }));
    expect((await fitHere(garment, { rivals: 0 })).status).toBe("does not fit");
    expect((await breakDown(garment, simplexEngine)).rules.map(({ rule }) => rule)).toEqual(["steady"]);
    // 60 cm of rows that may be off by 0.81 % are 4.9 mm off at most.
    const roomier = garmentText({ pieces: pieces.replaceAll("4 mm", "6 mm"), motifs, yarn: "steady: true" });
    expect((await fitHere(soundGarment(roomier), { rivals: 0 })).status).toBe("fits");
  });
});

describe("samples that have to be steady", () => {
  const gauge = {
    ground: { stitches: 26, rows: 38, over: "10 cm" },
    cord: { needles: 3, stitches: 24, over: "10 cm" },
  };
  const gauges = gaugesWithin({ gauge }, 1, 1000, numbersFrom(75));
  const longestLoop = (fit: Fit, { stitchMm, rowMm, cordMm }: TrueGauge): number =>
    Math.max(
      ...fit.looks[0]!.segments.map(
        ({ needles, rows, pickup }) =>
          pickup * cordMm + Math.sqrt((needles * stitchMm) ** 2 + (rows * rowMm) ** 2),
      ),
    );

  test("keep a child's loops short whatever the gauge, which the best fit as told does not", async () => {
    const pullover = sample("child-pullover");
    expect(pullover.gauge).toMatchObject({
      ground: { stitches: 26, rows: 38, overMm: 100 },
      cord: { stitches: 24, overMm: 100 },
    });
    const [bold, steady] = [(await fitted(pullover)).fit, (await fitted(steadily(pullover))).fit];
    expect(Math.max(...gauges.map((one) => longestLoop(bold, one)))).toBeGreaterThan(75.1);
    expect(Math.max(...gauges.map((one) => longestLoop(steady, one)))).toBeLessThanOrEqual(75);
    expect(brokenAt(bold, 1)).toEqual({ what: "loop", of: "braid" });
    expect(slackOf(bold)).toBeLessThan(1);
  });

  test("keep the ease of a growing motif, joins among it", async () => {
    const sleeve = sample("growing-sleeve");
    const { fit } = await fitted(steadily(sleeve));
    expect(fit.placements[0]!.sections.some(({ joins }) => joins.length > 0)).toBe(true);
    const { ground, cord } = sleeve.gauge;
    const asWritten = {
      gauge: {
        ground: { ...ground, over: `${ground.overMm} mm` },
        cord: { ...cord!, over: `${cord!.overMm} mm` },
      },
    } as unknown as Parameters<typeof gaugesWithin>[0];
    const { motif } = fit.looks[0]!;
    if (motif.kind !== "cord") throw new Error("no cord");
    for (const { stitchMm, rowMm, cordMm } of gaugesWithin(asWritten, 1, 1000, numbersFrom(8)))
      for (const { look, joins } of fit.placements[0]!.sections)
        for (const { needles, rows, pickup } of [...look.segments, ...joins]) {
          const ease = (pickup * cordMm) / Math.sqrt((needles * stitchMm) ** 2 + (rows * rowMm) ** 2) - 1;
          expect(ease).toBeGreaterThanOrEqual(motif.ease.from - 1e-9);
          expect(ease).toBeLessThanOrEqual(motif.ease.to + 1e-9);
        }
  });
});
