import { describe, expect, test } from "vitest";
import { simplexEngine } from "../../../../solver/simplex-engine.ts";
import { fitRange } from "../../../../src/grading/fit-range.ts";
import { noRangeText } from "../../../../src/grading/report/no-range-text.ts";
import { rangeToJson } from "../../../../src/grading/report/range-json.ts";
import { rangeText } from "../../../../src/grading/report/range-text.ts";
import { fitsOf, rangeOf, stripFile } from "../../../support/two-sizes.ts";

const whole = ["interval", "spread", "pickup"];

async function refusalOf(rows: Record<string, number>): Promise<string> {
  const result = await fitRange(rangeOf(stripFile({ rows, share: whole })), simplexEngine);
  if (result.status !== "does not fit") throw new Error(result.status);
  return noRangeText(result, [], 80);
}

describe("sizes as text", () => {
  test("tells the whole look once, where it is shared", async () => {
    const text = rangeText(await fitsOf(stripFile({ rows: { S: 28, M: 33 }, share: whole })), 80);
    expect(text).toContain("Sizes: S (M)\n\nIn every size\n\nplait (crossed cord): interval 3 rows");
    expect(text).not.toContain("in each size");
    expect(text).toMatch(/repeats +4 \(5\)\n/);
    expect(text).toMatch(/needles to cast on +20\n/);
  });

  test("tells what is left to each size in the table, where a part is shared", async () => {
    const text = rangeText(await fitsOf(stripFile({ rows: { S: 27, M: 36 }, share: ["pickup"] })), 80);
    // A spread that can only be 2 is nothing to tell size by size.
    expect(text).toContain("plait: spread 2 needles, lead-in count 4 and crossing count 7\n");
    expect(text).toMatch(/plait, in each size\n {2}interval, rows +3 \(4\)\n\n/);
    expect(text).not.toMatch(/count, cord stitches/);
  });

  test("tells all of it size by size, and compares with nothing, where nothing is shared", async () => {
    const text = rangeText(await fitsOf(stripFile({ rows: { S: 28, M: 33 } })), 80);
    expect(text).not.toContain("In every size");
    expect(text).not.toMatch(/share|by itself|Next best/);
    expect(text).toMatch(/interval, rows +4 \(3\)\n/);
  });

  test("keeps to a narrow terminal", async () => {
    const rows = Object.fromEntries(["S", "M", "L", "XL", "2X", "3X"].map((name, at) => [name, 27 + 6 * at]));
    const text = rangeText(await fitsOf(stripFile({ rows, share: whole })), 60);
    for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(60);
  });

  test("says why not every size fits", async () => {
    expect(await refusalOf({ S: 28, M: 8 })).toBe("Strip\n=====\n\nM does not fit, even without the others.");
    const apart = "Every size fits by itself, but there is no look that all of them could share.\n";
    expect(await refusalOf({ S: 33, M: 36, L: 27 })).toContain(`${apart}Without M the others could.`);
    expect(await refusalOf({ S: 28, M: 33, L: 36, XL: 27, "2X": 37 })).toContain(
      "cannot share one; without any one of them the rest of these could.",
    );
    expect(await refusalOf({ S: 33, M: 36 })).toContain(`${apart}Each would have to look as it likes`);
  });
});

describe("sizes as JSON", () => {
  test("keep the shape of a single fit, size by size, and add what is shared, the table and what dropping gains", async () => {
    const result = await fitsOf(stripFile({ rows: { S: 28, M: 33 }, share: whole }));
    const told = JSON.parse(JSON.stringify(rangeToJson(result, 12.4)));
    expect(told).toMatchObject({
      format: "evenrow-fit/1",
      status: "fits",
      proven: true,
      cost: Number(result.cost.toFixed(6)),
      motifs: { plait: { interval: 3, spread: 2, segments: [{ name: "lead-in" }, { name: "crossing" }] } },
      placements: [
        { size: "S", piece: "strip", motif: "plait", repeats: 4 },
        { size: "M", piece: "strip", motif: "plait", repeats: 5 },
      ],
      dropping: [
        { size: "S", proven: true },
        { size: "M", proven: true },
      ],
      nodes: 1,
      elapsed_ms: 12,
    });
    expect(told.sizes.map(({ size }: { size: string }) => size)).toEqual(["S", "M"]);
    for (const size of told.sizes) {
      expect(size.cost).toBeCloseTo(size.alone_cost + size.for_all, 5);
      expect(size.motifs).toEqual(told.motifs);
      expect(size.placements[0].cord.make).toBeGreaterThan(0);
    }
    expect(told.table).toContainEqual({
      piece: "strip",
      motif: "plait",
      placement: 1,
      quantity: "repeats",
      unit: "repeats",
      values: [4, 5],
      printed: "4 (5)",
    });
    expect(told.terms.every(({ size }: { size: string }) => ["S", "M"].includes(size))).toBe(true);
  });

  test("of a look that is shared in part tells that part only", async () => {
    const result = await fitsOf(stripFile({ rows: { S: 27, M: 36 }, share: ["pickup"] }));
    expect(rangeToJson(result, 1)).toMatchObject({
      motifs: {
        plait: {
          segments: [
            { name: "lead-in", pickup: 4 },
            { name: "crossing", pickup: 7 },
          ],
        },
      },
    });
  });

  test("say why not every size fits", async () => {
    const range = rangeOf(stripFile({ rows: { S: 28, M: 8 }, share: whole }));
    const result = await fitRange(range, simplexEngine);
    const rule = { rule: "bed.needles", words: "the bed has 60 needles", path: ["bed", "needles"] };
    const conflicts = [
      { size: "M", rules: [{ ...rule, lift: (one: never) => one, place: { line: 3, column: 1 } }] },
    ];
    expect(rangeToJson(result, 1, conflicts as never)).toMatchObject({
      status: "does not fit",
      proven: true,
      misfits: ["M"],
      conflict: [{ size: "M", ...rule, line: 3 }],
    });
  });
});
