import { describe, expect, test } from "vitest";
import { shapingRuns } from "../../../../src/sheet/shaping/shaping-runs.ts";
import type { Action, SheetPiece } from "../../../../src/sheet/sheet.ts";
import { pieceWith } from "./support/pieces.ts";

const on = (side: "left" | "right", act: "increase" | "decrease" = "increase"): Action => ({
  act,
  side,
  needles: 1,
});
const off = (side: "left" | "right", needles: number): Action => ({ act: "bind-off", side, needles });

/** "whole: increase at left 10x1 12x1": block, act, place, then each step's row and needles. */
const told = (piece: SheetPiece): string[] =>
  shapingRuns(piece).map(
    ({ block, act, at, steps }) =>
      `${block}: ${act} at ${at} ${steps.map(({ row, needles }) => `${row}x${needles}`).join(" ")}`,
  );

describe("runs of shaping", () => {
  test("casting on and binding off a whole piece, ornament and holding are none", () => {
    const piece = pieceWith([
      [0, { act: "cast-on", from: -10, to: 10 }],
      [4, { act: "out", needle: 3, onto: 4, motif: "m", placement: 1, column: 1 }],
      [60, { act: "bind-off", from: -10, to: 10 }],
    ]);
    expect(told(piece)).toEqual([]);
  });

  test("are one for each side and each kind of step, by their first rows", () => {
    const piece = pieceWith([
      [2, on("right")],
      [3, on("left")],
      [4, on("right")],
      [7, on("left", "decrease")],
      [9, on("left")],
      [10, { act: "cast-on", side: "right", needles: 6 }],
    ]);
    expect(told(piece)).toEqual([
      "whole: increase at right 2x1 4x1",
      "whole: increase at left 3x1",
      "whole: decrease at left 7x1",
      "whole: increase at left 9x1",
      "whole: cast-on at right 10x6",
    ]);
  });

  test("that are alike at the left and at the right are one at each side", () => {
    expect(
      told(
        pieceWith([
          [2, on("left"), on("right")],
          [4, off("left", 3), off("right", 3)],
        ]),
      ),
    ).toEqual(["whole: increase at each side 2x1", "whole: bind-off at each side 4x3"]);
  });

  test.each<[string, [number, ...Action[]][], string[]]>([
    [
      "act",
      [[2, on("left"), on("right", "decrease")]],
      ["whole: increase at left 2x1", "whole: decrease at right 2x1"],
    ],
    [
      "number of needles",
      [[2, off("left", 3), off("right", 4)]],
      ["whole: bind-off at left 2x3", "whole: bind-off at right 2x4"],
    ],
    [
      "row",
      [
        [2, on("left")],
        [3, on("right")],
      ],
      ["whole: increase at left 2x1", "whole: increase at right 3x1"],
    ],
    [
      "last step",
      [
        [2, on("left"), on("right")],
        [4, on("left")],
        [5, on("right")],
      ],
      ["whole: increase at left 2x1 4x1", "whole: increase at right 2x1 5x1"],
    ],
    [
      "number of steps, more at the left",
      [
        [2, on("left"), on("right")],
        [4, on("left")],
      ],
      ["whole: increase at left 2x1 4x1", "whole: increase at right 2x1"],
    ],
    [
      "number of steps, more at the right",
      [
        [2, on("left"), on("right")],
        [4, on("right")],
      ],
      ["whole: increase at left 2x1", "whole: increase at right 2x1 4x1"],
    ],
  ])("that differ in their %s stay apart", (_, rows, wanted) => {
    expect(told(pieceWith(rows))).toEqual(wanted);
  });

  // Needles L2 to R3 are five, since there is no needle 0.
  test("of a neck are its centre with the whole piece, then each half by itself, at its neck edge and at its side", () => {
    const neck = (side: "left" | "right", needles: number): Action => ({
      act: "bind-off",
      side,
      needles,
      edge: "neck",
    });
    const piece = pieceWith([
      [20, on("left"), on("right")],
      [40, { act: "bind-off", from: -2, to: 3, yarn: "separate" }, { act: "hold", from: 4, to: 20 }],
      [41, neck("right", 2)],
      [42, neck("right", 1), off("left", 4)],
      [50, { act: "bind-off", from: -20, to: -6 }],
      [40, { act: "work", from: 4, to: 20 }],
      [41, neck("left", 2)],
      [50, { act: "bind-off", from: 6, to: 20 }],
    ]);
    expect(told(piece)).toEqual([
      "whole: increase at each side 20x1",
      "whole: bind-off at centre 40x5",
      "first half: bind-off at neck edge 41x2 42x1",
      "first half: bind-off at left 42x4",
      "second half: bind-off at neck edge 41x2",
    ]);
  });
});
