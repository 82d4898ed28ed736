import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { simplexEngine } from "../../../solver/simplex-engine.ts";
import type { Garment } from "../../../src/garment/garment.ts";
import { gaugeRangeLines } from "../../../src/report/gauge-range-text.ts";
import { steadinessToJson } from "../../../src/report/steadiness-json.ts";
import { withSteadiness } from "../../../src/report/steadiness-text.ts";
import { offWords } from "../../../src/report/steady-words.ts";
import { type Steadiness, steadinessOf } from "../../../src/steady/steadiness.ts";
import { garmentText } from "../../support/garment-text.ts";
import { fitHere, soundGarment } from "../../support/run-garment.ts";

/** A sleeve with one look, whose ease may lie between -1 % and an end. */
const sleeve = (end: string): Garment =>
  soundGarment(
    garmentText({
      motifs: `motifs:\n  plait: { like: crossed cord, interval: 4, spread: 3, ease: { from: -1 %, to: ${end} } }`,
      yarn: "steady: true",
    }),
  );

const withEaseFrom = (garment: Garment, from: number): Garment => ({
  ...garment,
  motifs: garment.motifs.map((motif) =>
    motif.kind === "cord" ? { ...motif, ease: { ...motif.ease, from } } : motif,
  ),
});

async function lookRound(garment: Garment): Promise<Steadiness> {
  const result = await fitHere(garment, { rivals: 0 });
  return (await steadinessOf(garment, result, simplexEngine, 0, () => Number.POSITIVE_INFINITY))!;
}

/** What is said of it below the text, up to the fit that stands at the end. */
const said = (steadiness: Steadiness): readonly string[] =>
  withSteadiness("HEAD", steadiness, undefined, 200).split("\n\n").slice(0, 2);

describe("what is said where nothing is steady", () => {
  test("is how wide a range can be had, the swatch that it takes, and the fit", async () => {
    const steadiness = await lookRound(sleeve("3 %"));
    // By hand: the lead-in is 2 needles and 4 rows on 3 cord stitches. With all three off the way that pulls, its ease is
    // 3 * 100/19 / (1 + 0.01316 s) / hypot(2 * 100/22 / (1 - 0.01136 s), 4 * 100/31 / (1 - 0.00806 s)) - 1, which is -1 %
    // at a share of s = 0.466.
    const pulled = (s: number): number =>
      (3 * (100 / 19)) /
        (1 + (0.25 / 19) * s) /
        Math.hypot((2 * (100 / 22)) / (1 - (0.25 / 22) * s), (4 * (100 / 31)) / (1 - (0.25 / 31) * s)) -
      1;
    expect(pulled(0.465)).toBeGreaterThan(-0.01);
    expect(pulled(0.467)).toBeLessThan(-0.01);
    expect(said(steadiness)).toEqual([
      "HEAD",
      [
        "Over the whole range nothing fits. Below is the best fit over 46.5 % of it (at most 0.53 % in stitches, 0.38 % in rows and 0.61 % in the cord off); write steady: 46.5 % to ask for it. From 46.6 % on",
        "nothing fits.",
        "For all of it the swatch would have to be 2.15 times as large (48 stitches, 67 rows and 41 cord stitches).",
        "A swatch twice as large (44 stitches, 62 rows and 38 cord stitches):",
        "  nothing would fit even then",
      ].join("\n"),
    ]);
    expect(withSteadiness("HEAD", steadiness, undefined, 200)).toContain("What it gives up");
    expect(steadinessToJson(steadiness)).toMatchObject({
      asked: 1,
      widest: {
        exact: true,
        offered: { share: 0.465, motifs: { plait: { interval: 4 } } },
        swatch_needed: { stitches: 48, rows: 67, cord_stitches: 41 },
      },
      larger_swatch: { times: 2, stitches: 44, rows: 62, cord_stitches: 38, fits: false },
    });
  });

  test("says so where the gauge alone is not to blame, and where the time was up", async () => {
    const never = await lookRound(sleeve("0.5 %"));
    expect(said(never)).toEqual([
      "HEAD",
      "It is not the gauge alone: nothing fits even for the gauge as it is told.",
    ]);
    const { narrower, larger: _, ...others } = await lookRound(sleeve("3 %"));
    const cut = { ...others, narrower: { ...narrower!, noneFrom: 0.7, exact: false } };
    expect(said(cut)[1]?.replaceAll("\n", " ")).toContain(
      "Something may fit over more, but over less than 70 %: the time was up.",
    );
    expect(said({ ...cut, asked: 0.8 })[1]).toMatch(
      /^Over the 80 % of the range that are asked for nothing fits\. Below is the best fit over 46\.5 % of the range/,
    );
    const { fitsAsTold: __, ...unknown } = never;
    expect(said(unknown)[1]).toContain("There was no time");
    const none = { ...others, narrower: { noneFrom: 1, exact: false } };
    expect(said(none)[1]).toBe("There was no time to find out over how much of the range something fits.");
  });
});

describe("what is said of a fit that holds", () => {
  const told = async (garment: Garment): Promise<string> => {
    const result = await fitHere(garment, { rivals: 0 });
    if (result.status !== "fits") throw new Error(result.status);
    const steadiness = await steadinessOf(garment, result, simplexEngine, 0, () => Number.POSITIVE_INFINITY);
    return withSteadiness("HEAD", steadiness, result, 200).split("\n\n")[1]!;
  };

  test("is over what it holds, and that asking changed nothing where it did not", async () => {
    expect(await told(withEaseFrom(sleeve("15 %"), -0.05))).toBe(
      "This holds over the whole range; it is the same fit as without asking for that.",
    );
    expect(await told({ ...sleeve("3 %"), steady: 0.4 })).toBe(
      "This holds over the 40 % of the range that are asked for; it is the same fit as without asking for that.",
    );
  });

  test("says nothing of the same where asking changed the counts", async () => {
    const pullover = soundGarment(readFileSync("samples/child-pullover.yaml", "utf8"));
    expect(await told({ ...pullover, steady: 1 })).toBe("This holds over the whole range.");
  });
});

describe("what is said of a fit's range", () => {
  test("is why it does not hold where it does not", async () => {
    const { steady: _, ...bold } = sleeve("3 %");
    const result = await fitHere(bold, { rivals: 0 });
    if (result.status !== "fits") throw new Error(result.status);
    expect(gaugeRangeLines(result.fit, 200).at(-1)).toBe(
      "  every limit is kept over 46.5 % of that; further off the ease of plait goes beyond its limits (steady: true asks for all of it)",
    );
  });

  test("is that it only just holds, and that it does not hold at all", async () => {
    const last = async (garment: Garment): Promise<string> => {
      const { steady: _, ...bold } = garment;
      const result = await fitHere(bold, { rivals: 0 });
      if (result.status !== "fits") throw new Error(result.status);
      return gaugeRangeLines(result.fit, 200).at(-1)!;
    };
    const off = 0.005;
    const garment = sleeve("3 %");
    const { ground, cord } = garment.gauge;
    const just = {
      ...garment,
      gauge: {
        ground: { ...ground, within: { stitches: off, rows: off } },
        cord: { ...cord!, within: off },
      },
    };
    expect(await last(just)).toBe("  every limit is kept, and only just");
    // The ease of the lead-in by hand, and a limit a hair below it.
    const ease = (3 * (100 / 19)) / Math.hypot(2 * (100 / 22), 4 * (100 / 31)) - 1;
    const edge = withEaseFrom(garment, ease - 1e-6);
    expect(await last(edge)).toBe(
      "  no part of the range is safe: a limit is reached at the gauge itself; further off the ease of plait goes beyond its limits (steady: true asks for all of it)",
    );
  });

  test("names one percentage where all counts are as sure", () => {
    expect(offWords({ stitches: 0.02, rows: 0.02, cord: 0.02 })).toBe("2 %");
    expect(offWords({ stitches: 0.02, rows: 0.02 }, 0.5)).toBe("1 %");
    expect(offWords({ stitches: 0.02, rows: 0.02, cord: 0.01 })).toBe(
      "2 % in stitches, 2 % in rows and 1 % in the cord",
    );
  });
});
