import { describe, expect, test } from "vitest";
import { simplexEngine } from "../../../solver/simplex-engine.ts";
import { duringAll, WorkEnded } from "../../../src/fit/allowance.ts";
import { prepare } from "../../../src/fit/prepare.ts";
import { breakDown } from "../../../src/fit/refusal.ts";
import { garmentText } from "../../support/garment-text.ts";
import { fitHere, soundGarment } from "../../support/run-garment.ts";

const all = "from: cast-on, to: bind-off";

/** A garment on the largest bed, its one piece and its placements written so. */
const garment = (piece: string, motif: string, ...placements: readonly string[]) =>
  soundGarment(
    garmentText({
      bed: "bed: { needles: 600 }",
      pieces: `pieces:\n  sleeve: { ${piece} }`,
      motifs: `motifs:\n  plait: { like: crossed cord, ${motif} }`,
      place: `place:\n${placements.map((one) => `  - { motif: plait, on: sleeve, ${all}, ${one} }`).join("\n")}`,
    }),
  );

const square = (width: string, height: string): string =>
  `outline: [{ height: 0 cm, width: ${width} }, { height: ${height}, width: ${width} }]`;

const outOfTime = { status: "stopped", reason: "the time allowed was up before a fit was found" };

describe("a garment of a few lines whose choices are more than there is time for ends at the time allowed", () => {
  test.each([
    ["columns and gaps", square("2 m", "60 cm"), "interval: 2..12", "columns: 1..50, gap: 0..200"],
    [
      "changes of length",
      `${square("50 cm", "60 cm")}, grow: 10 m, shrink: 10 m`,
      "interval: 2..12",
      "gap: 0",
    ],
    ["looks", `${square("50 cm", "10 m")}, grow: 1 m`, "interval: 2..200, spread: 2..100", "gap: 0"],
    [
      "repeats of a motif that grows",
      square("50 cm", "10 m"),
      "interval: 2, spread: { allow: 2..100, change: 100 }",
      "margins: { bottom: 0..3000, top: 0..3000 }",
    ],
  ])("%s", async (_, piece, motif, placement) => {
    const result = await fitHere(garment(piece, motif, placement), { timeLimitMs: 100 });
    expect(result).toMatchObject(outOfTime);
  });
});

test("a garment whose choices are more than there is room for is told so", async () => {
  const beside = "margins: { left: 0..600, right: 0..600 }";
  const result = await fitHere(
    garment(square("2 m", "60 cm"), "interval: 2..20, spread: 2..30", beside, beside, beside),
  );
  expect(result).toMatchObject({
    status: "stopped",
    reason: expect.stringContaining("more ways to lay the motifs than can be held in memory"),
  });
});

test("looking for what stands in the way ends at the time allowed too", async () => {
  const cable = soundGarment(
    garmentText({
      gauge: "gauge: { ground: { stitches: 5, rows: 38, over: 10 cm } }",
      motifs: "motifs:\n  rope: { like: transferred cable, interval: 6..10, draw-in: 20 % }",
      place: `place:\n  - { motif: rope, on: sleeve, ${all}, margins: { bottom: 0..8, top: 0..8, side: { least: 8 } } }`,
    }),
  );
  expect(prepare(cable)).toBeUndefined();
  const breaking = duringAll(100, () => breakDown(cable, simplexEngine));
  await expect(breaking).rejects.toThrow(WorkEnded);
});
