import { describe, expect, test } from "vitest";
import { toProgram } from "../../../solver/choice.ts";
import { highsEngine } from "../../../solver/highs-engine.ts";
import { simplexEngine } from "../../../solver/simplex-engine.ts";
import { prepareCord } from "../../../src/cord/preparation.ts";
import { fitRange } from "../../../src/grading/fit-range.ts";
import { fitSize } from "../../../src/grading/fit-size.ts";
import { joinRange } from "../../../src/grading/prepare-range.ts";
import { rangeText } from "../../../src/grading/report/range-text.ts";
import { fitsOf, rangeOf, stripFile } from "../../support/two-sizes.ts";

const whole = ["interval", "spread", "pickup"];
const ease = { from: "-30 %", to: "30 %", prefer: "0 %" };
const intervals = (
  sizes: readonly { fit: { looks: readonly { values: ReadonlyMap<string, number> }[] } }[],
) => sizes.map(({ fit }) => fit.looks[0]!.values.get("interval"));

// A strip of so many rows takes interval 3 in 3 + 6n rows and interval 4 in 4 + 8n, and a row more at either end.
describe("fitRange", () => {
  test("lets sizes that share nothing look as they like", async () => {
    const result = await fitsOf(stripFile({ rows: { S: 28, M: 33 } }));
    expect(intervals(result.sizes)).toEqual([4, 3]);
    expect(result).toMatchObject({ proven: true, rivals: [], dropping: [] });
    expect(result.cost).toBeCloseTo(result.sizes[0]!.fit.cost + result.sizes[1]!.fit.cost, 9);
  });

  test("gives all sizes one look, and tells which had to give way and what dropping it would gain", async () => {
    // Of 28 rows either interval, 4 at less cost; of 33 and of 27 only 3.
    const result = await fitsOf(stripFile({ rows: { S: 28, M: 33, L: 27 }, share: whole }));
    expect(intervals(result.sizes)).toEqual([3, 3, 3]);
    const [s, m, l] = result.sizes;
    expect(s!.fit.cost).toBeGreaterThan(s!.alone!.cost);
    expect([m!.fit.cost, l!.fit.cost]).toEqual([m!.alone!.cost, l!.alone!.cost]);
    const [gain, ...others] = result.dropping.map((one) => one.gain);
    expect(gain).toBeCloseTo(s!.fit.cost - s!.alone!.cost, 9);
    expect(others).toEqual([0, 0]);
    expect(rangeText(result, 200)).toContain(
      "The others would look as they do now: each gain is that size's own.",
    );
  });

  test("a size that gives up nothing may be the one that holds the others back", async () => {
    // 28 rows take 4 at less cost than 3, which 33 rows alone can take.
    const result = await fitsOf(stripFile({ rows: { S: 28, M: 28, L: 33 }, share: whole }));
    const [s, m, l] = result.dropping.map((one) => one.gain);
    expect(result.sizes[2]!.fit.cost).toBe(result.sizes[2]!.alone!.cost);
    expect(l).toBeGreaterThan(Math.max(s!, m!));
    expect(result.dropping[2]!.looks?.[0]?.values.get("interval")).toBe(4);
    const text = rangeText(result, 200);
    expect(text).toContain(". Without L the others would have interval 4 instead of 3; otherwise they would");
  });

  test("says which sizes do not fit by themselves", async () => {
    const range = rangeOf(stripFile({ rows: { S: 28, M: 8, L: 33, XL: 5 }, share: whole }));
    expect(await fitRange(range, simplexEngine)).toMatchObject({
      status: "does not fit",
      misfits: ["M", "XL"],
      freeing: [],
      clash: [],
    });
  });

  test("says without which one size the others could share", async () => {
    // 36 rows take interval 4 alone, 33 and 27 interval 3 alone.
    const range = rangeOf(stripFile({ rows: { S: 33, M: 36, L: 27 }, share: whole }));
    expect(await fitRange(range, simplexEngine)).toMatchObject({
      status: "does not fit",
      misfits: [],
      freeing: ["M"],
      clash: [],
    });
  });

  test("says which sizes cannot go together where no single one is in the way", async () => {
    const rows = { S: 28, M: 33, L: 36, XL: 27, XXL: 37 };
    const range = rangeOf(stripFile({ rows, share: whole }));
    const result = await fitRange(range, simplexEngine);
    if (result.status !== "does not fit") expect.fail(result.status);
    expect([result.misfits, result.freeing]).toEqual([[], []]);
    // One that takes 3 alone and one that takes 4 alone.
    expect(result.clash).toHaveLength(2);
    expect(["M", "XL"]).toContain(result.clash.find((name) => ["M", "XL"].includes(name)));
    expect(["L", "XXL"]).toContain(result.clash.find((name) => ["L", "XXL"].includes(name)));
  });

  test("shares the counts alone, over different intervals", async () => {
    const result = await fitsOf(stripFile({ rows: { S: 27, M: 36 }, share: ["pickup"] }));
    expect(intervals(result.sizes)).toEqual([3, 4]);
    const counts = result.sizes.map(({ fit }) => fit.looks[0]!.segments.map(({ pickup }) => pickup));
    expect(counts[0]).toEqual(counts[1]);
  });

  test("finds counts for all that are not the best of one size", async () => {
    // Of 33 rows only interval 3 fits, of 55 only interval 5. A lead-in goes over 3.6 mm there and 5.4 mm here, a
    // crossing over 6.7 mm and 7.8 mm: by themselves 4 and 7 cord stitches of a millimetre, and 5 and 8.
    const motifs = { plait: { like: "crossed cord", interval: [3, 5], spread: [2], ease } };
    const rows = { S: 33, M: 55 };
    const countsOf = async (share: readonly string[]) =>
      (await fitsOf(stripFile({ rows, share, more: { motifs } }))).sizes.map(({ fit }) =>
        fit.looks[0]!.segments.map(({ pickup }) => pickup),
      );
    expect(await countsOf([])).toEqual([
      [4, 7],
      [5, 8],
    ]);
    expect(await countsOf(["pickup"])).toEqual([
      [4, 7],
      [4, 7],
    ]);
  });

  test("finds the counts for all where one size's wearer allows fewer than the best of the other", async () => {
    const text = stripFile({
      rows: { S: 28, M: 28 },
      share: whole,
      sizes: { S: { wearer: { age: 3 } } },
      // A crossing lies over 34 mm; with 48 mm of cord, as the ease would have it, it is more than 75 mm round.
      more: {
        gauge: {
          ground: { stitches: 50, rows: 100, over: "100 mm" },
          cord: { needles: 3, stitches: 100, over: "100 mm" },
        },
        motifs: {
          plait: {
            like: "crossed cord",
            interval: { allow: [4] },
            spread: { allow: [2, 9], prefer: 9 },
            ease: { from: "-5 %", to: "40 %", prefer: "40 %" },
          },
        },
        place: [
          { motif: "plait", on: "strip", margins: { bottom: "0..1", top: "0..1", side: { least: 0 } } },
        ],
      },
    });
    const { sizes, proven } = await fitsOf(text);
    const [child, grown] = sizes.map(({ fit }) => fit.looks[0]!.segments.map(({ pickup }) => pickup));
    expect(proven).toBe(true);
    expect(child).toEqual(grown);
    expect(sizes[1]!.alone!.cost).toBeLessThan(sizes[1]!.fit.cost);
  });

  test("holds what is on hand in every size, and gives all the counts that the longest can have", async () => {
    // 36 rows of interval 4 would take 141 mm of cord by the best counts, 28 rows no more than 109.
    const text = stripFile({ rows: { S: 28, M: 36 }, share: whole, more: { "on hand": { cord: "13 cm" } } });
    const result = await fitsOf(text);
    for (const { fit } of result.sizes)
      expect(prepareCord(fit, fit.placements[0]!)!.lengthMm).toBeLessThanOrEqual(130);
    const [s, m] = result.sizes;
    expect(s!.fit.cost).toBeGreaterThan(s!.alone!.cost);
    expect(m!.fit.cost).toBe(m!.alone!.cost);
    const highs = await highsEngine(toProgram(joinRange(rangeOf(text))).program, {});
    expect(highs).toMatchObject({ status: "optimal", cost: expect.closeTo(result.cost, 6) });
  });

  test("takes a list of nothing for no share at all", async () => {
    const result = await fitsOf(stripFile({ rows: { S: 28, M: 33 }, share: [] }));
    expect(intervals(result.sizes)).toEqual([4, 3]);
    expect(result.range.share).toBeUndefined();
  });

  test("ends at its time limit with nothing to show, and says so", async () => {
    const range = rangeOf(stripFile({ rows: { S: 28, M: 33 }, share: whole }));
    expect(await fitRange(range, async () => ({ status: "stopped", nodes: 3, engine: "tired" }))).toEqual({
      status: "stopped",
      reason: "the time allowed was up before a fit of every size was found",
      nodes: 3,
      notes: [],
    });
  });
});

describe("fitSize", () => {
  test("gives the size its fit among all, with rivals that keep to the look", async () => {
    const range = rangeOf(stripFile({ rows: { S: 28, M: 33 }, share: whole }));
    const result = await fitSize(range, "S", simplexEngine);
    if (result.status !== "fits") expect.fail(result.status);
    expect(intervals([result])).toEqual([3]);
    expect(result).toMatchObject({ proven: true, amongSizes: true, rivalsProven: true });
    for (const rival of result.rivals) expect(intervals([{ fit: rival }])).toEqual([3]);
  });

  test("is the size's own fit where nothing is shared", async () => {
    const range = rangeOf(stripFile({ rows: { S: 28, M: 33 } }));
    const result = await fitSize(range, "S", simplexEngine);
    if (result.status !== "fits") expect.fail(result.status);
    expect(intervals([result])).toEqual([4]);
    expect(result.amongSizes).toBeUndefined();
  });

  test("says where another size is in the way", async () => {
    const range = rangeOf(stripFile({ rows: { S: 28, M: 8 }, share: whole }));
    expect(await fitSize(range, "S", simplexEngine)).toMatchObject({
      status: "does not fit",
      misfits: ["M"],
    });
  });
});
