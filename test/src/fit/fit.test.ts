import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { simplexEngine } from "../../../solver/simplex-engine.ts";
import { checkFit } from "../../../src/fit/check.ts";
import type { Fit } from "../../../src/fit/fit.ts";
import { breakDown } from "../../../src/fit/refusal.ts";
import type { Fits } from "../../../src/fit/solve.ts";
import { fitToJson } from "../../../src/report/fit-json.ts";
import { fitHere, garmentOf, soundGarment } from "../../support/run-garment.ts";
import { threeByFour } from "../../support/three-by-four.ts";

const sample = (name: string): string => readFileSync(`samples/${name}.yaml`, "utf8");

async function fits(text: string): Promise<Fits> {
  const result = await fitHere(soundGarment(text));
  if (result.status !== "fits") throw new Error(`expected a fit, got: ${result.status}`);
  return result;
}

describe("the sample sleeve", () => {
  test("fits at interval 4 and spread 3 with counts of 3 and 5, at a cost worked out by hand", async () => {
    const { fit, proven, rivals, bestNodes } = await fits(sample("sleeve"));
    expect([proven, bestNodes]).toEqual([true, 1]);
    // By hand: eases 0.034 % and 0.693 %, 1.966 and 1.307 points from 2 %, mean 1.6365.
    expect(fit.cost).toBeCloseTo(1.6365, 4);
    expect([...fit.looks[0]!.values]).toEqual([
      ["interval", 4],
      ["spread", 3],
    ]);
    expect(fit.looks[0]!.segments.map(({ pickup }) => pickup)).toEqual([3, 5]);
    expect(fit.placements[0]).toMatchObject({ repeats: 8, firstRow: 23, lastRow: 91, change: 0 });
    expect(rivals).toHaveLength(5);
    expect(rivals.map(({ cost }) => cost)).toEqual([...rivals.map(({ cost }) => cost)].sort((a, b) => a - b));
  });

  test("has the machine-readable form of the contract", async () => {
    const json = fitToJson(await fits(sample("sleeve")), 12.4) as Record<string, never>;
    expect(json).toMatchObject({
      format: "evenrow-fit/1",
      status: "fits",
      proven: true,
      nodes: 1,
      elapsed_ms: 12,
      motifs: {
        plait: {
          interval: 4,
          spread: 3,
          segments: [
            { name: "lead-in", needles: 2, rows: 4, pickup: 3 },
            { name: "crossing", needles: 5, rows: 4, pickup: 5 },
          ],
        },
      },
      placements: [
        {
          piece: "sleeve",
          motif: "plait",
          repeats: 8,
          columns: 1,
          gap: 0,
          rows_changed: 0,
          first_row: 23,
          last_row: 91,
          margins: { bottom: 11, top: 11 },
          cord: { used: 168, make: 194, passes: 388, length_mm: 1021.1 },
        },
      ],
    });
  });
});

test("the sample front ends whole on the row where its neck begins", async () => {
  const { fit } = await fits(sample("front"));
  expect(fit.placements[0]!.lastRow).toBe(fit.pieces[0]!.neck!.row);
});

test("the sample scarf has two columns that do not touch", async () => {
  const { fit } = await fits(sample("scarf"));
  const [left, right] = fit.placements[0]!.panel.centres;
  expect(right! - left!).toBe(2 * 4 + fit.placements[0]!.gap);
});

test("needles are added for what a cable draws in", async () => {
  const { fit } = await fits(sample("cable-sleeve"));
  // 22 cm at 27 stitches over 10 cm are 60 needles; 20 % of six stitches is 1.2, one more at each side.
  expect(fit.pieces[0]!.left[0]).toBe(31);
});

describe("what does not fit", () => {
  test("is told by the rules that cannot hold together, each of which would free it", async () => {
    const garment = soundGarment(sample("too-narrow"));
    expect((await fitHere(garment)).status).toBe("does not fit");
    const { rules } = await breakDown(garment, simplexEngine);
    expect(rules.map(({ rule }) => rule).sort()).toEqual([
      "motifs.wide plait.spread",
      "place.0.margins.side",
    ]);
    for (const rule of rules) expect((await fitHere(rule.lift(garment))).status).toBe("fits");
  });
});

describe("two motifs on one piece", () => {
  const garment = (margins: object): object => ({
    format: "evenrow/1",
    bed: { needles: 200 },
    gauge: {
      ground: { stitches: 20, rows: 28, over: "10 cm" },
      cord: { needles: 3, stitches: 18, over: "10 cm" },
    },
    pieces: {
      panel: {
        outline: [
          { height: "0 cm", width: "40 cm" },
          { height: "30 cm", width: "40 cm" },
        ],
      },
    },
    motifs: { plait: { like: "crossed cord", interval: 4, spread: 3 } },
    place: [
      { motif: "plait", on: "panel", margins },
      { motif: "plait", on: "panel", margins },
    ],
  });

  test("are laid side by side", async () => {
    const result = await fitHere(garmentOf(garment({ left: "0..80", right: "0..80" })));
    if (result.status !== "fits") throw new Error(result.status);
    const [one, other] = result.fit.placements.map(({ panel }) => panel);
    expect(one!.rightEdge <= other!.leftEdge || other!.rightEdge <= one!.leftEdge).toBe(true);
  });

  test("do not fit where both must stand in the middle", async () => {
    expect((await fitHere(garmentOf(garment({ side: { least: 2 } })))).status).toBe("does not fit");
  });
});

describe("two motifs one above the other", () => {
  /** 20 rows below and 20 above; the lead-in of 4 rows and 2 repeats of 8 fill either. */
  const garment = (low: object, high: object, piece: object = {}) =>
    garmentOf({
      ...threeByFour,
      pieces: {
        panel: {
          outline: [
            { height: "0 cm", width: "12 cm" },
            { height: "16 cm", width: "12 cm" },
          ],
          marks: { middle: "8 cm" },
          ...piece,
        },
      },
      motifs: {
        plait: { like: "crossed cord", interval: 4, spread: 5, ease: { from: "-30 %", to: "40 %" } },
      },
      weights: { ease: 0, spread: 0 },
      place: [
        { motif: "plait", on: "panel", from: "cast-on", to: "middle", ...low },
        { motif: "plait", on: "panel", from: "middle", to: "bind-off", ...high },
      ],
    });
  const fitted = async (...args: Parameters<typeof garment>) => {
    const result = await fitHere(garment(...args));
    return result.status === "fits"
      ? {
          cost: result.fit.cost,
          rows: result.fit.placements.map(({ firstRow, lastRow }) => [firstRow, lastRow]),
        }
      : result.status;
  };

  test("do not both take the row between them", async () => {
    // With 1 repeat below, 4 rows are left under it and over it.
    expect(await fitted({}, { repeats: 2 })).toEqual({
      cost: 0,
      rows: [
        [4, 16],
        [20, 40],
      ],
    });
  });

  test("do not fit where both would have to", async () => {
    const both = garment({ repeats: 2 }, { repeats: 2 });
    expect((await fitHere(both)).status).toBe("does not fit");
    expect((await breakDown(both, simplexEngine)).rules.length).toBeGreaterThan(0);
  });

  test("are parted by a row more, at what that row and its imbalance cost", async () => {
    const grown = await fitted({ repeats: 2 }, { repeats: 2 }, { grow: "4 mm" });
    // 3 for a row of length and 0.5 for a row of balance, whichever of the two it is added to.
    expect(grown).toEqual({
      cost: 3.5,
      rows: [
        [0, 20],
        [21, 41],
      ],
    });
  });
});

describe("the independent check refuses a fit", () => {
  const spoiled: readonly [string, (fit: Fit) => Fit][] = [
    ["whose cost is not its terms'", (fit) => ({ ...fit, cost: fit.cost - 1 })],
    ["with a count that pulls", (fit) => withSegment(fit, { pickup: 4 })],
    ["with an ease that is not so", (fit) => withSegment(fit, { ease: 0.02 })],
    ["that starts a row too late", (fit) => withPlacement(fit, { firstRow: 24, lastRow: 92 })],
    ["with a repeat too many", (fit) => withPlacement(fit, { repeats: 9 })],
    ["with no section", (fit) => withSections(fit, () => [])],
    [
      "with sections that are longer than is told",
      (fit) => withSections(fit, ([first]) => [first!, { ...first!, repeats: 1 }]),
    ],
    [
      "with a section of no repeat",
      (fit) => withSections(fit, ([first]) => [first!, { ...first!, repeats: 0 }]),
    ],
    ["worked with another look than is told", (fit) => ({ ...fit, looks: [{ ...fit.looks[0]! }] })],
    ["with a margin that is not allowed", (fit) => withMargins(fit, { bottom: 21 })],
    ["with margins at the sides that are not there", (fit) => withMargins(fit, { left: 40 })],
    ["off the edge of its piece", (fit) => withPanel(fit, 60)],
    ["on a piece that lost its edge", (fit) => withLeftEdge(fit, 5)],
    ["with a value that is not allowed", (fit) => withValue(fit, "spread", 12)],
  ];

  test.each(spoiled)("%s", async (_, spoil) => {
    const { fit } = await fits(sample("sleeve"));
    expect(checkFit(fit.garment, fit, fit.cost)).toEqual([]);
    expect(checkFit(fit.garment, spoil(fit), fit.cost).length).toBeGreaterThan(0);
  });

  const withPlacement = (fit: Fit, change: Partial<Fit["placements"][number]>): Fit => ({
    ...fit,
    placements: fit.placements.map((one) => ({ ...one, ...change })),
  });
  const withMargins = (fit: Fit, change: Partial<Fit["placements"][number]["margins"]>): Fit =>
    withPlacement(fit, { margins: { ...fit.placements[0]!.margins, ...change } });
  const withPanel = (fit: Fit, shift: number): Fit =>
    withPlacement(fit, {
      panel: { centres: [shift], mirrored: 0, leftEdge: shift - 3, rightEdge: shift + 3 },
    });
  type Look = Fit["looks"][number];
  /** One look told and worked, so that nothing but the look itself is spoiled. */
  const withLook = (fit: Fit, change: (look: Look) => Look): Fit => {
    const look = change(fit.looks[0]!);
    const sections = fit.placements[0]!.sections.map((section) => ({ ...section, look }));
    return { ...withPlacement(fit, { sections }), looks: [look] };
  };
  const withSegment = (fit: Fit, change: Partial<Look["segments"][number]>): Fit =>
    withLook(fit, (look) => ({
      ...look,
      segments: look.segments.map((segment, index) => (index === 1 ? { ...segment, ...change } : segment)),
    }));
  const withValue = (fit: Fit, name: string, value: number): Fit =>
    withLook(fit, (look) => ({ ...look, values: new Map(look.values).set(name, value) }));
  const withSections = (fit: Fit, change: (sections: Sections) => Sections): Fit =>
    withPlacement(fit, { sections: change(fit.placements[0]!.sections) });
  type Sections = Fit["placements"][number]["sections"];
  const withLeftEdge = (fit: Fit, needles: number): Fit => ({
    ...fit,
    pieces: fit.pieces.map((piece) => ({ ...piece, left: piece.left.map(() => needles) })),
  });
});
