import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { simplexEngine } from "../../../solver/simplex-engine.ts";
import type { Fit } from "../../../src/fit/fit.ts";
import { checkRefit } from "../../../src/refit/check/check-refit.ts";
import { type Refitted, refit } from "../../../src/refit/refit.ts";
import { refitToJson } from "../../../src/refit/report/refit-json.ts";
import { warningWords } from "../../../src/refit/report/refit-text.ts";
import { sampleGarments } from "../../support/random-garment.ts";
import { fraction, lengthMm } from "../../support/referee/entries.ts";
import { fitHere, garmentOf, soundGarment } from "../../support/run-garment.ts";

const sleeve = soundGarment(
  readFileSync("samples/sleeve.yaml", "utf8").replace("\ngauge:", "\nsteady: true\ngauge:"),
);

async function atRow(row: number, lengthMm: number): Promise<{ before: Fit; rest: Refitted }> {
  const result = await fitHere(sleeve, { rivals: 0 });
  if (result.status !== "fits") throw new Error(result.status);
  const rest = await refit(result.fit, { piece: "sleeve", row, measured: { lengthMm } }, simplexEngine);
  if (rest.status !== "refitted") throw new Error(rest.status);
  return { before: result.fit, rest };
}

describe("the rest of a piece that has to be steady", () => {
  test("is steady over what the measurement leaves open, where that is little enough", async () => {
    // 3 mm of the tape and half a row in 29 cm are 1.6 %, so 36 cm may be 6 mm off: less than the sleeve may grow.
    const { rest } = await atRow(90, 290);
    expect(rest.unsteady).toBe(false);
    expect(warningWords(rest)).toEqual([]);
    const [piece] = rest.fit.pieces;
    const { ground } = rest.fit.garment.gauge;
    for (const off of [-ground.within!.rows!, 0, ground.within!.rows!]) {
      const mm = (piece!.rows * ground.overMm) / (ground.rows * (1 + off));
      expect(Math.abs(mm - 360)).toBeLessThanOrEqual(10 + 1e-6);
    }
  });

  test("is fitted for the gauge as measured alone where nothing else is left, and that is said", async () => {
    // The same 4.6 mm in 10 cm are 4.7 %, and 36 cm may then be 17 mm off.
    const { before, rest } = await atRow(30, 97);
    expect(rest.unsteady).toBe(true);
    expect(warningWords(rest).join()).toContain("No fit of the rest is steady");
    expect(refitToJson(rest)).toMatchObject({ unsteady: true });
    // The garment still asks for it, so that it is tried again further up; the check knows what was given up.
    expect(rest.fit.garment.steady).toBe(1);
    expect(checkRefit(before, rest.fit, 30, rest.fit.cost, false)).toEqual([]);
    expect(checkRefit(before, rest.fit, 30, rest.fit.cost, true).map(({ rule }) => rule)).toContain(
      "sleeve, steady",
    );
  });

  test("keeps its length for every row height that the measurement leaves possible, on random garments", async () => {
    const seen = { steady: 0, unsteady: 0 };
    const wishes = { steady: true, placements: [1, 1], sharedPieces: false } as const;
    for (const plain of sampleGarments(70, 20261203, wishes)) {
      const result = await fitHere(garmentOf(plain), { rivals: 0 });
      if (result.status !== "fits") continue;
      const [piece] = result.fit.pieces;
      const row = Math.floor(0.7 * piece!.rows);
      const knittedMm = (row * lengthMm(plain.gauge.ground.over)) / plain.gauge.ground.rows;
      const rest = await refit(
        result.fit,
        { piece: piece!.name, row, measured: { lengthMm: 1.002 * knittedMm } },
        simplexEngine,
      );
      if (rest.status !== "refitted") continue;
      seen[rest.unsteady ? "unsteady" : "steady"]++;
      const { outline, grow, shrink } = plain.pieces[piece!.name]!;
      if (rest.unsteady || (grow === undefined && shrink === undefined)) continue;
      const { ground } = rest.fit.garment.gauge;
      const share = typeof plain.steady === "string" ? fraction(plain.steady) : 1;
      for (const sign of [-1, 1]) {
        const rowMm = ground.overMm / (ground.rows * (1 + sign * share * ground.within!.rows!));
        const longer = rest.fit.pieces[0]!.rows * rowMm - lengthMm(outline.at(-1)!.height);
        expect(longer, JSON.stringify(plain)).toBeLessThanOrEqual(lengthMm(grow ?? "0 mm") + 1e-6);
        expect(-longer, JSON.stringify(plain)).toBeLessThanOrEqual(lengthMm(shrink ?? "0 mm") + 1e-6);
      }
    }
    expect(seen.steady).toBeGreaterThan(5);
    expect(seen.unsteady).toBeGreaterThan(5);
  });
});
