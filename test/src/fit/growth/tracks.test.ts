import { beforeAll, describe, expect, test } from "vitest";
import { type Step, type Track, tracksOf } from "../../../../src/fit/growth/tracks.ts";
import type { Look } from "../../../../src/fit/looks.ts";
import { growingQuantity } from "../../../../src/motif/growing-quantity.ts";
import type { CordMotif } from "../../../../src/motif/motif.ts";
import { garmentText } from "../../../support/garment-text.ts";
import { type Wedge, wedge } from "../../../support/growing-wedge.ts";
import { soundGarment } from "../../../support/run-garment.ts";

const spreadOf = ({ values }: Look): number => values.get("spread")!;

const lookWith = ({ looks }: Track, spread: number): Look => looks.find((look) => spreadOf(look) === spread)!;

/** The step from one spread to another. */
const step = (track: Track, from: number, to: number): Step | undefined =>
  track.stepTo(lookWith(track, to), lookWith(track, from));

describe("a plait whose spread may change by one needle", () => {
  let plait: Wedge;
  beforeAll(() => {
    plait = wedge();
  });

  test("has a track for each interval, with the looks of every spread from the narrowest up", () => {
    expect(plait.tracks.map(({ looks }) => looks.map(({ values }) => [...values]))).toEqual(
      [4, 6].map((interval) =>
        [3, 4, 5, 6].map((spread) => [
          ["interval", interval],
          ["spread", spread],
        ]),
      ),
    );
    for (const { motif, quantity } of plait.tracks) {
      expect(motif).toBe(plait.motif);
      expect(quantity).toMatchObject({ name: "spread", change: 1 });
    }
  });

  test("stands on one footing whatever its spread is, since that is settled repeat by repeat", () => {
    expect(plait.tracks.map(({ footing }) => footing)).toEqual([
      {
        leadRows: 4,
        repeatRows: 8,
        reach: { left: 0, right: 0 },
        crossedStitches: 0,
        goingOn: " track of interval 4",
      },
      {
        leadRows: 6,
        repeatRows: 12,
        reach: { left: 0, right: 0 },
        crossedStitches: 0,
        goingOn: " track of interval 6",
      },
    ]);
  });

  test("gives up beforehand what is settled, and no more", () => {
    const [four, six] = plait.tracks.map(({ settled }) => settled);
    expect(four!.terms).toEqual([]);
    expect(four!.cost).toBe(0);
    // Two rows of interval at 1.5 each.
    expect(six!.terms).toMatchObject([{ term: "interval", amount: 2, unit: "rows", motif: "plait" }]);
    expect(six!.cost).toBe(3);
    expect(six!.footing).toBe(plait.tracks[1]!.footing);
  });

  test("goes on with the same spread, or one needle wider or narrower", () => {
    for (const from of [3, 4, 5, 6])
      for (const to of [3, 4, 5, 6])
        expect(step(plait.tracks[0]!, from, to) !== undefined, `${from} to ${to}`).toBe(
          Math.abs(from - to) <= 1,
        );
  });

  test("is joined where the spread changes, by the stretch from the one to the other", () => {
    // From 3 needles on one side to 4 on the other, 6 boundaries in between, over 4 rows: 30 mm and 16 mm, so 34 mm.
    const joins = step(plait.tracks[0]!, 3, 4)!.joins;
    expect(joins).toMatchObject([{ name: "join", needles: 6, rows: 4, spanMm: 34, pickup: 14 }]);
    // 14 cord stitches of 2.5 mm are 35 mm.
    expect(joins[0]!.ease).toBeCloseTo(1 / 34, 12);
    expect(step(plait.tracks[0]!, 4, 4)!.joins).toEqual([]);
  });

  test("gives up at each repeat the mean over the look's stretches and the join, and how far the spread is off", () => {
    const track = wedge().tracks[0]!;
    // Eases 9 x 2.5 / hypot(15, 16) - 1 and 16 x 2.5 / hypot(35, 16) - 1 of the look with 4, and the join's.
    const eases = [22.5 / Math.hypot(15, 16) - 1, 40 / Math.hypot(35, 16) - 1];
    const away = (all: readonly number[]): number =>
      all.reduce((sum, ease) => sum + 100 * Math.abs(ease - 0.02), 0) / all.length;
    expect(step(track, 4, 4)!.easeAway).toBeCloseTo(away(eases), 9);
    expect(step(track, 3, 4)!.easeAway).toBeCloseTo(away([...eases, 1 / 34]), 9);
    expect([3, 4, 5, 6].map((spread) => step(track, spread, spread)!.away)).toEqual([2, 1, 0, 1]);
  });

  test("has its steps worked out once", () => {
    const track = plait.tracks[0]!;
    expect(step(track, 3, 4)).toBe(step(track, 3, 4));
    expect(step(track, 4, 3)).not.toBe(step(track, 3, 4));
    expect(step(track, 3, 3)).not.toBe(step(track, 3, 4));
  });
});

test("no step is taken whose join has no count within the ease's limits", () => {
  // The join from 2 to 3, 4 needles by 4 rows, is 25.6 mm long: 10 cord stitches have an ease of -2.4 %, 11 of 7.4 %.
  const { tracks } = wedge({
    interval: "4",
    spread: "{ allow: 2..3, change: 1 }",
    motif: ", ease: { from: 0.5 %, to: 6.5 % }",
  });
  expect(tracks[0]!.looks.map(spreadOf)).toEqual([2, 3]);
  expect(step(tracks[0]!, 2, 2)).toBeDefined();
  expect(step(tracks[0]!, 2, 3)).toBeUndefined();
  expect(step(tracks[0]!, 3, 2)).toBeUndefined();
});

test("looks and joins keep what a wearer's loops have to keep", () => {
  // Round the crossing of 4 go at least 37.5 mm of cord, 2.6 % short of it, and 38.5 mm of cloth.
  const spreads = (mostLoopMm: number): readonly number[] =>
    wedge({ interval: "4", spread: "{ allow: [3, 4], change: 1 }", limits: { mostLoopMm } }).tracks.flatMap(
      ({ looks }) => looks.map(spreadOf),
    );
  expect(spreads(76.1)).toEqual([3, 4]);
  expect(spreads(75.9)).toEqual([3]);
});

describe("a strand that ends its repeat where it began", () => {
  const trackFrom = (start: string): Track => {
    const garment = soundGarment(
      garmentText({
        gauge: `gauge:
  ground: { stitches: 20, rows: 25, over: 10 cm }
  cord: { needles: 3, stitches: 40, over: 10 cm }`,
        motifs: `motifs:
  wave:
    kind: cord
    quantities:
      rise: { unit: rows, allow: [4] }
      spread: { unit: needles, allow: 3..4, change: 1 }
      fall: { unit: rows, allow: [4] }
    lead: 0
    repeat: rise + fall
    strands: { one: { start: [${start}, 0], repeat: [[spread, rise], [${start}, rise + fall]] } }
    order: [one]`,
        place: "place:\n  - { motif: wave, on: sleeve, margins: { side: { least: 2 } } }",
      }),
    );
    const motif = garment.motifs[0] as CordMotif;
    return tracksOf(motif, growingQuantity(motif)!, garment.gauge, garment.weights, {})[0]!;
  };

  test("at a needle that stays comes to the next repeat over a stretch that its look has anyway", () => {
    expect(step(trackFrom("-1"), 3, 4)!.joins).toEqual([]);
    expect(trackFrom("-1").footing.goingOn).toBe(" track of rise 4, fall 4");
  });

  test("at a needle that changes comes to it over another one", () => {
    expect(step(trackFrom("-spread"), 3, 4)!.joins).toMatchObject([{ needles: 6, rows: 4 }]);
  });
});
