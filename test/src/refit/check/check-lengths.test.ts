import { beforeAll, describe, expect, test } from "vitest";
import type { Garment } from "../../../../src/garment/garment.ts";
import { checkLengths } from "../../../../src/refit/check/check-lengths.ts";
import { fitOf, placed, straight, swing, written } from "../../fit/check/support/laid-by-hand.ts";

/** A panel of 60 rows whose marks are at rows 0, 30 and 58, of which 6 rows are knitted. */
let garment: Garment;

beforeAll(() => {
  garment = written({ swing }, [{ to: "high" }, { from: "bottom", to: "high" }], {
    pieces: {
      panel: {
        outline: [
          { height: "0 mm", width: "80 mm" },
          { height: "180 mm", width: "80 mm" },
        ],
        marks: { bottom: "0 mm", middle: "90 mm", high: "174 mm" },
        grow: "9 mm",
        shrink: "9 mm",
      },
    },
  });
});

const panel = (rows: number, middle: number, high: number) =>
  straight(rows, 10, {
    marks: new Map([
      ["cast-on", 0],
      ["bottom", 0],
      ["middle", middle],
      ["high", high],
      ["bind-off", rows],
    ]),
  });

/** The panel as it is fitted anew, with what each of its two placements is told to change. */
function found(of: Garment, piece: ReturnType<typeof panel>, changes: readonly number[]): readonly string[] {
  const was = panel(60, 30, 58);
  const placements = changes.map((change, index) => placed([], { index, change }));
  const unchanged = placements.map((one) => ({ ...one, change: 0 }));
  return checkLengths(fitOf(of, unchanged, [was]), was, fitOf(of, placements, [piece]), piece, 6).map(
    (one) => one.found,
  );
}

describe("the independent check of the lengths of a piece fitted anew", () => {
  test("counts a change once for all that lie in its field, whatever the field's marks are called", () => {
    expect(found(garment, panel(62, 31, 60), [2, 2])).toEqual([]);
    expect(found(garment, panel(57, 29, 55), [-3, -3])).toEqual([]);
    expect(found(garment, panel(64, 32, 62), [2, 2])).toEqual([
      "bind-off is told at row 64, and it is at row 62",
      "high is told at row 62, and it is at row 60",
    ]);
    expect(found(garment, panel(64, 32, 62), [4, 4])).toEqual([
      "its length changes by 4 rows, more than it may",
    ]);
  });

  test("adds the changes of fields one above the other", () => {
    const [low, high] = garment.placements;
    const apart = {
      ...garment,
      placements: [
        { ...low!, to: "middle" },
        { ...high!, from: "middle" },
      ],
    };
    expect(found(apart, panel(61, 32, 59), [2, -1])).toEqual([]);
    expect(found(apart, panel(61, 31, 59), [2, -1])).toEqual([
      "middle is told at row 31, and it is at row 32",
    ]);
  });
});
