import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { simplexEngine } from "../../../solver/simplex-engine.ts";
import { hangingsOf } from "../../../src/cord/cord.ts";
import type { Fit } from "../../../src/fit/fit.ts";
import { measureProgress, obstaclesTo, type Refitted, refit } from "../../../src/refit/refit.ts";
import { refitToJson } from "../../../src/refit/report/refit-json.ts";
import { noRefitText, refitText } from "../../../src/refit/report/refit-text.ts";
import { fitHere, soundGarment } from "../../support/run-garment.ts";

const sample = (name: string): string => readFileSync(`samples/${name}.yaml`, "utf8");

async function fitOf(text: string): Promise<Fit> {
  const result = await fitHere(soundGarment(text), { rivals: 0 });
  if (result.status !== "fits") throw new Error(result.status);
  return result.fit;
}

async function refitted(
  fit: Fit,
  row: number,
  lengthMm: number,
  piece = fit.pieces[0]!.name,
): Promise<Refitted> {
  const result = await refit(fit, { piece, row, measured: { lengthMm } }, simplexEngine);
  if (result.status !== "refitted") throw new Error(result.status);
  return result;
}

describe("what is measured", () => {
  test("gives the gauge so far, and where the piece will end, by hand", async () => {
    const fit = await fitOf(sample("sleeve"));
    const progress = measureProgress(fit, "sleeve", 50, { lengthMm: 170 });
    if (progress.status !== "measured") throw new Error(progress.problem);
    // 170 mm over 50 rows are 3.4 mm a row; 112 rows of these are 380.8 mm where 360 are planned.
    expect(progress.rowHeight.mm).toBeCloseTo(3.4, 10);
    expect(progress.rowHeight.plannedMm).toBeCloseTo(100 / 31, 10);
    expect(progress.length.mm).toBeCloseTo(380.8, 8);
    expect(progress.length.plannedMm).toBe(360);
    // 3 mm of the tape and half a row of 3.4 mm, in 170 mm.
    expect(progress.length.withinMm).toBeCloseTo((380.8 * (3 + 1.7)) / 170, 8);
    expect(progress.marks.map(({ name, row }) => [name, row])).toEqual([
      ["underarm", 102],
      ["bind-off", 112],
    ]);
    expect(progress.gauge.stitches).toBeCloseTo(22, 10);
  });

  test("may be the width alone", async () => {
    const fit = await fitOf(sample("sleeve"));
    const { left, right } = fit.pieces[0]!;
    const progress = measureProgress(fit, "sleeve", 50, { widthMm: 4.8 * (left[50]! + right[50]!) });
    if (progress.status !== "measured") throw new Error(progress.problem);
    expect(progress.stitchWidth.mm).toBeCloseTo(4.8, 10);
    expect(progress.rowHeight.mm).toBeCloseTo(100 / 31, 10);
  });

  test.each([
    ["no such piece", "cuff", 50, { lengthMm: 160 }, "no piece called cuff"],
    ["a row that is not there", "sleeve", 112, { lengthMm: 360 }, "rows 1 to 111"],
    ["the cast-on row", "sleeve", 0, { lengthMm: 1 }, "row 0"],
    ["nothing measured", "sleeve", 50, {}, "neither"],
    ["a length that no cloth comes to", "sleeve", 50, { lengthMm: 300 }, "30.0 cm where 16.1 cm"],
    ["a width that no cloth comes to", "sleeve", 50, { widthMm: 20 }, "measure again"],
  ])("is refused for %s", async (_, piece, row, measured, words) => {
    const fit = await fitOf(sample("sleeve"));
    const progress = measureProgress(fit, piece, row, measured);
    expect(progress.status === "unusable" ? progress.problem : "").toContain(words);
    expect((await refit(fit, { piece, row, measured }, simplexEngine)).status).toBe("unusable");
  });

  test("is no width above a neck, where the halves are apart", async () => {
    const fit = await fitOf(sample("front"));
    const progress = measureProgress(fit, "front", fit.pieces[0]!.neck!.row + 4, { widthMm: 400 });
    expect(progress.status === "unusable" ? progress.problem : "").toContain("halves");
  });
});

describe("the sample sleeve, taller than planned", () => {
  test("has fewer rows, the motif whole below its mark, and what is knitted as it was", async () => {
    const fit = await fitOf(sample("sleeve"));
    const { fit: now } = await refitted(fit, 50, 170);
    // 360 mm at 3.4 mm a row are 105.9 rows, 330 mm to the underarm 97.06.
    expect(now.pieces[0]!.rows).toBe(106);
    expect(now.pieces[0]!.marks.get("underarm")).toBe(97);
    expect(now.placements[0]).toMatchObject({ firstRow: 23, lastRow: 91, margins: { top: 6 } });
    expect(now.pieces[0]!.left.slice(0, 51)).toEqual(fit.pieces[0]!.left.slice(0, 51));
  });

  test("is told with what changes and the rows to come, none of the knitted ones", async () => {
    const fit = await fitOf(sample("sleeve"));
    const text = refitText(fit, await refitted(fit, 50, 170), 80);
    expect(text).toContain("106 rows instead of 112");
    expect(text).toContain("knit 1 row, to row 51");
    expect(text).not.toMatch(/^row +50 /m);
    expect(text).toContain("26 left");
  });

  test("says that nothing changes where nothing does", async () => {
    const fit = await fitOf(sample("sleeve"));
    expect(refitText(fit, await refitted(fit, 50, (50 * 100) / 31), 80)).toContain(
      "nothing: go on by the sheet",
    );
  });

  test("has a machine-readable form with the whole sheet and the row it goes on from", async () => {
    const fit = await fitOf(sample("sleeve"));
    expect(refitToJson(await refitted(fit, 50, 170))).toMatchObject({
      format: "evenrow-refit/1",
      status: "refitted",
      piece: "sleeve",
      row: 50,
      measured: { length_mm: 170 },
      gauge: { row_mm: { now: 3.4, planned: 3.2258 } },
      ends_at_mm: { now: 380.8, planned: 360 },
      from_row: 50,
      sheet: { format: "evenrow-sheet/1", pieces: [{ piece: "sleeve", rows_in_all: 106 }] },
    });
  });
});

test("a cord that was made too short is told with how many cord stitches are missing", async () => {
  const fit = await fitOf(sample("front"));
  // Rows 6 % lower than planned: more of them, and more hangings than the cord was made for.
  const { cords, fit: now } = await refitted(fit, 20, 20 * 2.5 * 0.94);
  const [{ made, used, left, isHung }] = cords as [(typeof cords)[number]];
  expect([left, isHung]).toEqual([made - used, false]);
  expect(left).toBeLessThan(0);
  expect(refitText(fit, await refitted(fit, 20, 20 * 2.5 * 0.94), 80)).toContain(
    `TOO SHORT by ${-left} cord stitches`,
  );
  expect(now.placements[0]!.firstRow).toBeGreaterThan(20);
});

test("a look that must change is taken up where the strands stand, with a count for the way over", async () => {
  const fit = await fitOf(sample("front"));
  const { fit: now } = await refitted(fit, 120, 365);
  const [begun, anew] = now.placements[0]!.sections;
  expect(begun!.look).toBe(fit.placements[0]!.sections[0]!.look);
  expect(anew!.look.values.get("interval")).not.toBe(begun!.look.values.get("interval"));
  expect(anew!.look.values.get("spread")).toBe(begun!.look.values.get("spread"));
  const counts = hangingsOf(now.placements[0]!.sections).map(({ count }) => count);
  expect(counts.every((count) => Number.isInteger(count))).toBe(true);
});

test("a repeat in hand that comes out too tight at the measured gauge is told", async () => {
  const fit = await fitOf(sample("sleeve"));
  const { strained } = await refitted(fit, 50, 50 * 4.1);
  // A crossing of 5 needles and 4 rows of 4.1 mm is 28.03 mm; five cord stitches of 100/19 mm are 26.32 mm.
  expect(strained).toMatchObject([{ motif: "plait", segment: "crossing" }]);
  expect(strained[0]!.ease).toBeCloseTo(26.3158 / Math.hypot(500 / 22, 16.4) - 1, 5);
  expect((await refitted(fit, 50, (50 * 100) / 31)).strained).toEqual([]);
});

describe("what cannot be fitted", () => {
  test("is a motif that still grows, which is said with where the piece would end", async () => {
    const fit = await fitOf(sample("growing-sleeve"));
    const piece = fit.pieces[0]!.name;
    const planned = (56 * 100) / fit.garment.gauge.ground.rows;
    const result = await refit(
      fit,
      { piece, row: 56, measured: { lengthMm: 1.05 * planned } },
      simplexEngine,
    );
    expect(result.status === "unusable" ? result.problem : "").toMatch(/grows from repeat.* will end at 3\d/);
  });

  test("a repeat that is being worked in part stays as it is, so the rest is not fitted anew", async () => {
    const fit = await fitOf(sample("sleeve").replace("on: sleeve", "on: sleeve\n    unfinished: part"));
    const { lastRow, part } = fit.placements[0]!;
    expect(part).toBeDefined();
    const at = (row: number) =>
      refit(fit, { piece: "sleeve", row, measured: { lengthMm: row * 3.3 } }, simplexEngine);
    expect((await at(lastRow)).status).toBe("refitted");
    const result = await at(lastRow + 1);
    expect(result.status === "unusable" ? result.problem : "").toMatch(/worked in part.* will end at 3\d/);
  });

  test("is told by the rules in the way and by how many rows would help", async () => {
    const tight = sample("sleeve")
      .replace("allow: [2, 4, 6, 8]", "allow: 4")
      .replace("{ allow: 1..99 }", "8")
      .replace("grow: 1 cm", "grow: 0 cm");
    const fit = await fitOf(tight);
    const result = await refit(fit, { piece: "sleeve", row: 50, measured: { lengthMm: 195 } }, simplexEngine);
    if (result.status !== "does not fit") throw new Error(result.status);
    const obstacles = await obstaclesTo(fit, result.progress, simplexEngine);
    expect(obstacles.isLongEnough).toBe(false);
    expect(obstacles.conflict.map(({ rule }) => rule)).toEqual(
      expect.arrayContaining(["place.0.repeats", "pieces.sleeve.grow"]),
    );
    // 330 mm at 3.9 mm a row are 85 rows; eight repeats end at row 91.
    expect(obstacles.rowsMore).toBe(6);
    const words = noRefitText("Tight", result.progress, obstacles, 80);
    expect(words).toContain("If the piece could be 6 rows longer");
    expect(words).toContain("may grow by 0 cm");
  });

  test("is said to be long enough where the outline is reached", async () => {
    const fit = await fitOf(sample("sleeve"));
    const result = await refit(
      fit,
      { piece: "sleeve", row: 107, measured: { lengthMm: 370 } },
      simplexEngine,
    );
    if (result.status !== "does not fit") throw new Error(result.status);
    expect((await obstaclesTo(fit, result.progress, simplexEngine)).isLongEnough).toBe(true);
  });
});
