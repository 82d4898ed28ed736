import { describe, expect, test } from "vitest";
import type { CountedPiece } from "../../../../src/cloth/counted-piece.ts";
import { extentsOf, roomBeside, wider } from "../../../../src/fit/growth/extents.ts";
import type { Reach, Trace } from "../../../../src/motif/trace.ts";

const trace = (left: number, right: number): Trace => ({
  leadRows: 4,
  repeatRows: 8,
  reach: { left, right },
  strands: [],
  folded: [],
  cables: [],
  ladders: [],
});

const reach = (left: number, right: number): Reach => ({ left, right });

describe("what a growing motif reaches over", () => {
  test("is at each repeat what the wider of it and the one below reaches, the lead-in with the first", () => {
    expect(extentsOf([trace(3, 5), trace(4, 4), trace(2, 6)])).toEqual([
      { fromRow: 0, toRow: 12, reach: reach(3, 5) },
      { fromRow: 12, toRow: 20, reach: reach(4, 5) },
      { fromRow: 20, toRow: 28, reach: reach(4, 6) },
    ]);
  });

  test("is nothing where there is no repeat", () => {
    expect(extentsOf([])).toEqual([]);
  });

  test("is at either side the further of two", () => {
    expect(wider(reach(3, 5), reach(4, 2))).toEqual(reach(4, 5));
  });
});

describe("needles left beside a growing motif", () => {
  /** 40 rows: at the left a needle more every row from 10, at the right one fewer every row from 60. */
  const piece: CountedPiece = {
    name: "slanted",
    rows: 40,
    carriage: "right",
    left: Array.from({ length: 41 }, (_, row) => 10 + row),
    right: Array.from({ length: 41 }, (_, row) => 60 - row),
    marks: new Map(),
  };

  test("are told where they are fewest, at each side by itself", () => {
    // From row 5: rows 5 to 17 with reach 3|5, rows 17 to 25 with 14|5. Left 15 - 3 = 12 and 27 - 14 = 13; right 60 - 17 - 5 = 38 and 60 - 25 - 5 = 30.
    const extents = [
      { fromRow: 0, toRow: 12, reach: reach(3, 5) },
      { fromRow: 12, toRow: 20, reach: reach(14, 5) },
    ];
    expect(roomBeside(piece, 5, extents)).toEqual({ left: 12, right: 30 });
    // From row 10 as well: left 20 - 3 = 17 and 32 - 14 = 18; right 60 - 22 - 5 = 33 and 60 - 30 - 5 = 25.
    expect(roomBeside(piece, 10, extents)).toEqual({ left: 17, right: 25 });
  });
});
