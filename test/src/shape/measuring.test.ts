import { describe, expect, test } from "vitest";
import type { Measurement } from "../../../src/shape/description.ts";
import { type Given, measuring } from "../../../src/shape/measuring.ts";
import { ShapeStop, type ShapeTrouble } from "../../../src/shape/trouble.ts";
import { SIZES } from "../../../src/sizes/body.ts";

const MEASUREMENTS = {
  chest: { means: "round the chest" },
  ease: { means: "added", otherwise: "fit", from: "below nothing", orFit: true },
  width: { means: "width of the piece", otherwise: "(chest + ease) / 2" },
  length: {
    means: "length of the piece",
    otherwise: ["back_hip_length", { sum: "2 * back_waist_length", because: "our own" }],
  },
  "back waist length": { means: "down to the waist" },
  "back hip length": { means: "down to the hips" },
  hem: { means: "height of the hem", otherwise: "length / 10", from: "nothing" },
  ratio: { means: "one by the other", otherwise: "width / hem" },
  edge: { means: "length of the edge", otherwise: "width + rise" },
  rise: {
    means: "how far it rises",
    otherwise: {
      make: "edge",
      equal: "length",
      from: "length / 100",
      to: "length",
      because: "as long as the piece",
      trouble: "no rise makes such an edge",
      right: "a narrower piece",
      blame: ["width"],
    },
  },
} as const satisfies Readonly<Record<string, Measurement>>;

const measuringOf = (written: Readonly<Record<string, number>>, more: Partial<Given> = {}) =>
  measuring({
    shape: "piece",
    measurements: MEASUREMENTS,
    written: new Map(Object.entries(written)),
    choices: new Map(),
    fitMm: 0,
    stitch: { widthMm: 4, heightMm: 3 },
    ...more,
  });

function troubleOf(work: () => unknown): ShapeTrouble {
  try {
    work();
  } catch (stop) {
    if (stop instanceof ShapeStop) return stop.trouble;
    throw stop;
  }
  throw new Error("nothing was refused");
}

const woman = SIZES.get("woman M")!;
const man = SIZES.get("man M")!;

describe("a measurement", () => {
  test("is what is written, else what the size has, else what follows from others", () => {
    expect(measuringOf({ chest: 900 }, { size: woman }).length("chest")).toBe(900);
    expect(measuringOf({}, { size: woman }).length("chest")).toBe(940);
    expect(measuringOf({}, { size: woman, fitMm: 60 }).length("width")).toBe(500);
    expect(measuringOf({ width: 480 }, { size: woman, fitMm: 60 }).length("width")).toBe(480);
  });

  test("follows from the first of several sums whose measurements are known", () => {
    expect(measuringOf({}, { size: man }).length("length")).toBeCloseTo(25.5 * 25.4, 5);
    expect(measuringOf({}, { size: woman }).length("length")).toBe(870);
    expect(measuringOf({ "back hip length": 600 }, { size: woman }).length("length")).toBe(600);
  });

  test("tells what was taken from the size and what was assumed, and only what was used", () => {
    const measure = measuringOf({}, { size: woman });
    expect(measure.taken()).toEqual([]);
    measure.length("hem");
    expect(measure.taken()).toEqual([
      { from: "size", measurement: "back waist length", mm: 435 },
      { from: "assumption", measurement: "length", mm: 870, because: "our own" },
    ]);
  });

  test("that is sought makes what hangs on it come out", () => {
    const measure = measuringOf({ width: 300, length: 500 });
    expect(measure.length("rise")).toBeCloseTo(200, 1);
    expect(measure.sum("edge - length")).toBeCloseTo(0, 1);
  });

  test("may use the cloth's own stitch and row", () => {
    expect(measuringOf({}).sum("2 * stitch + row")).toBe(11);
  });
});

describe("a measurement is refused", () => {
  test("where it is not known, with all that would have to be written", () => {
    expect(troubleOf(() => measuringOf({}).require(["width", "hem"]))).toMatchObject({
      code: "missing-measurement",
      message: "a piece needs its chest and length",
      expected:
        "chest: 20 cm, or what it measures; length: 20 cm, or what it measures, or a size: size: woman M",
    });
    const { message } = troubleOf(() => measuringOf({}, { size: SIZES.get("man 5X")! }).require(["length"]));
    expect(message).toBe("a piece needs its length: length of the piece");
  });

  test("where it comes out as nothing or less, unless it may", () => {
    const tight = measuringOf({ chest: 900, ease: -900 });
    expect(tight.length("ease")).toBe(-900);
    expect(troubleOf(() => tight.length("width"))).toMatchObject({
      code: "shape-impossible",
      found: "0 cm",
      blame: ["width", "chest", "ease"],
    });
    expect(measuringOf({ hem: 0 }).length("hem")).toBe(0);
  });

  test("where it would be divided by nothing", () => {
    const { message, found } = troubleOf(() => measuringOf({ width: 300, hem: 0 }).length("ratio"));
    expect(message).toBe("the ratio of a piece can't be worked out from these measurements");
    expect(found).toBe("width 30 cm, hem 0 cm");
  });

  test("where it is sought and there is none", () => {
    expect(troubleOf(() => measuringOf({ width: 600, length: 500 }).length("rise"))).toMatchObject({
      message: "this piece can't be made: no rise makes such an edge",
      expected: "a narrower piece",
    });
  });
});
