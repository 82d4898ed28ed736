import { expect, test } from "vitest";
import type { Fit, FittedPlacement } from "../../../src/fit/fit.ts";
import { stitchesAcross } from "../../../src/fit/stitches-across.ts";
import type { Motif } from "../../../src/motif/motif.ts";
import { counted, fittedPlacement, garment, trace } from "./support/plain-parts.ts";

const point = { needle: 0, row: 0, rank: 0 };
const none = { source: "0", path: [], tree: { kind: "number", value: 0 } } as const;

/** A rope that crosses three stitches with three, and draws in a fifth of them. */
const rope: Motif = {
  kind: "cable",
  name: "rope",
  path: [],
  quantities: [],
  lead: none,
  repeat: none,
  rules: [],
  cables: [],
  ladders: [],
  drawIn: 0.2,
  limits: {},
};

const cord: Motif = {
  ...rope,
  kind: "cord",
  strands: [],
  folded: [],
  order: [],
  ease: { from: 0, to: 0 },
  reserve: 0,
  markerEvery: 10,
};

const crossing = trace({
  cables: [{ name: "cable", left: 3, right: 3, start: point, leadIn: [], repeat: [] }],
});

const laid = (motif: Motif, changes: Partial<FittedPlacement> = {}): FittedPlacement =>
  fittedPlacement({
    firstRow: 10,
    lastRow: 30,
    sections: [{ look: { motif, values: new Map(), trace: crossing, segments: [] }, repeats: 2, joins: [] }],
    ...changes,
  });

const across = (row: number, ...placements: readonly FittedPlacement[]): number => {
  const panel = counted();
  const fit: Fit = { garment: garment(), cost: 0, terms: [], looks: [], placements, pieces: [panel] };
  return stitchesAcross(fit, panel, row);
};

test("a piece lies as wide as its needles where nothing draws it in", () => {
  expect(across(20)).toBe(40);
  expect(across(20, laid(cord))).toBe(40);
});

test("a cable takes away its share of what it crosses, column by column, from its first row to its last", () => {
  // A fifth of 6 stitches is 1.2; of two columns 2.4.
  expect(across(20, laid(rope))).toBeCloseTo(38.8, 9);
  expect(across(20, laid(rope, { columns: 2 }))).toBeCloseTo(37.6, 9);
  expect([9, 10, 30, 31].map((row) => across(row, laid(rope)))).toEqual([40, 38.8, 38.8, 40]);
});

test("what is worked of an unfinished repeat draws in as well", () => {
  const part = { lastRow: 33, rows: 3, columns: [{ cable: 1 }] };
  expect([33, 34].map((row) => across(row, laid(rope, { part })))).toEqual([38.8, 40]);
});

test("several on a row add up, and those of another piece do not", () => {
  const other = laid(rope, { index: 1, piece: "sleeve" });
  expect(across(20, laid(rope), laid(rope, { index: 1 }))).toBeCloseTo(37.6, 9);
  expect(across(20, laid(rope), other)).toBeCloseTo(38.8, 9);
});
