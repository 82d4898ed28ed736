import { expect, test } from "vitest";
import { hungOn } from "../../../../src/refit/check/hung.ts";
import { lookWith, placed, section, stretch } from "../../fit/check/support/laid-by-hand.ts";
import { motifWritten } from "../../fit/check/support/motif-written.ts";

test("every hanging is told with what is counted to it, a standing loop by its own count", () => {
  const loops = motifWritten({
    kind: "cord",
    quantities: { loop: { unit: "stitches", allow: "5..9" } },
    lead: 0,
    repeat: 4,
    strands: {
      cord: {
        start: [1, 0],
        // Twice over the same needle and two rows: plain, then as a loop.
        repeat: [
          [1, 2],
          [1, 4, { count: "loop" }],
        ],
      },
    },
  });
  const look = lookWith(loops, { loop: 9 }, [stretch(0, 2, 2), stretch(0, 2, 9, { fixed: 9 })]);
  const counts = hungOn(placed([section(look, 2)], { firstRow: 10 })).map(
    ({ strand, row, pickup }) => `${strand} ${pickup} at row ${row}`,
  );
  expect(counts).toEqual([
    "cord 0 at row 10",
    "cord 2 at row 12",
    "cord 9 at row 14",
    "cord 2 at row 16",
    "cord 9 at row 18",
  ]);
  const bare = hungOn(placed([section(lookWith(loops, { loop: 9 }), 1)]));
  expect(bare.map(({ pickup }) => pickup)).toEqual([0, Number.NaN, Number.NaN]);
});

test("a crossing is told without a count, and a placement without a section has none", () => {
  const cable = motifWritten({ like: "transferred cable", cross: [2, 2], interval: 6 });
  const look = lookWith(cable, { interval: 6, offset: 0 });
  const crossings = hungOn(placed([section(look, 1)], { firstRow: 3 }));
  expect(crossings.map(({ row }) => row)).toEqual([3, 9]);
  expect(crossings.every((one) => !("pickup" in one))).toBe(true);
  expect(hungOn(placed([]))).toEqual([]);
});
