import { describe, expect, test } from "vitest";
import type { Action } from "../../../src/sheet/sheet.ts";
import { briefsOf } from "../../../src/work/brief.ts";

const ofMotif = { motif: "twist", placement: 1, column: 1 } as const;
const increase = (side: "left" | "right"): Action => ({ act: "increase", needles: 1, side });

test.each<readonly [string, Action]>([
  ["cast on L22-R22", { act: "cast-on", from: -22, to: 22 }],
  ["cast on 4 left", { act: "cast-on", needles: 4, side: "left" }],
  ["increase left", increase("left")],
  ["decrease neck right", { act: "decrease", needles: 1, side: "right", edge: "neck" }],
  ["bind off 6 right", { act: "bind-off", needles: 6, side: "right" }],
  ["bind off L4-R4", { act: "bind-off", from: -4, to: 4, yarn: "separate" }],
  ["bind off all", { act: "bind-off", from: -4, to: 4 }],
  ["hold L30-L5", { act: "hold", from: -30, to: -5 }],
  ["work L30-L5", { act: "work", from: -30, to: -5 }],
  ["left on L3", { act: "hang", strand: "left", count: 0, needle: -3, ...ofMotif }],
  ["left 5 on L3", { act: "hang", strand: "left", count: 5, needle: -3, ...ofMotif }],
  ["left 9 loop on R3", { act: "hang", strand: "left", count: 9, needle: 3, loop: true, ...ofMotif }],
  ["left end on L3", { act: "finish", strand: "left", how: "cut", loops: 4, needle: -3, ...ofMotif }],
  [
    "cross 2/2 L2-R2 left first",
    { act: "cross", from: -2, to: 2, left: 2, right: 2, over: "left", ...ofMotif },
  ],
  [
    "cross 1/2 L1-R2 right first",
    { act: "cross", from: -1, to: 2, left: 1, right: 2, over: "right", ...ofMotif },
  ],
  ["out L5 to L4", { act: "out", needle: -5, onto: -4, ...ofMotif }],
  ["in L5", { act: "in", needle: -5, from: -4, ...ofMotif }],
  ["plain L5-R5", { act: "plain", from: -5, to: 5, ...ofMotif }],
])("in brief: %s", (words, action) => {
  expect(briefsOf([action], () => 1)).toEqual([words]);
});

describe("several actions of a row", () => {
  test("like shaping at both sides is one line, unlike shaping is not", () => {
    expect(briefsOf([increase("left"), increase("right")], () => 1)).toEqual(["increase both"]);
    expect(briefsOf([increase("left"), increase("left")], () => 1)).toEqual([
      "increase left",
      "increase left",
    ]);
  });

  test("a column is named where the motif has several", () => {
    const hang = { act: "hang", strand: "left", count: 5, needle: 3, ...ofMotif, column: 2 } as const;
    expect(briefsOf([hang], () => 2)).toEqual(["2 left 5 on R3"]);
  });
});
