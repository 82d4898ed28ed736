import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { clearsNeck, isMirrored, narrowest, oneColumn, panelOf } from "../../../src/fit/panel.ts";
import { counted } from "./support/plain-parts.ts";

const reach = { left: 3, right: 3 };

describe("columns side by side", () => {
  test("one stands about the centre, as far as it reaches to each side", () => {
    expect(panelOf(oneColumn, { left: 3, right: 5 })).toEqual({
      centres: [0],
      mirrored: 0,
      leftEdge: -3,
      rightEdge: 5,
    });
  });

  test("two stand with the gap between them across the centre", () => {
    // 2 columns of 6 needles and 4 between them are 16: 8 to each side, centres 5 from the middle.
    expect(panelOf({ columns: 2, gap: 4, mirror: false }, reach)).toEqual({
      centres: [-5, 5],
      mirrored: 0,
      leftEdge: -8,
      rightEdge: 8,
    });
  });

  test("two with an odd gap stand half a needle to the left", () => {
    // 15 needles: 7.5 to each side.
    expect(panelOf({ columns: 2, gap: 3, mirror: false }, reach)).toMatchObject({
      centres: [-5, 4],
      leftEdge: -8,
      rightEdge: 7,
    });
  });

  test("three have one of them in the middle", () => {
    // 3 columns of 6 and 2 gaps of 2 are 22 needles; a column every 8.
    expect(panelOf({ columns: 3, gap: 2, mirror: false }, reach)).toMatchObject({
      centres: [-8, 0, 8],
      leftEdge: -11,
      rightEdge: 11,
    });
  });

  test("a lopsided one stands about its own centres, not about its middle", () => {
    expect(panelOf({ columns: 3, gap: 0, mirror: false }, { left: 2, right: 4 })).toMatchObject({
      centres: [-6, 0, 6],
      leftEdge: -8,
      rightEdge: 10,
    });
  });

  test("of an even number of odd columns that leaves half a needle, the left has more", () => {
    // 2 columns of 5 needles: a centre every 5, so 2.5 from the middle.
    expect(panelOf({ columns: 2, gap: 0, mirror: false }, { left: 2, right: 3 })).toMatchObject({
      centres: [-3, 2],
      leftEdge: -5,
      rightEdge: 5,
    });
  });

  test("with edge stitches stand about the centre as a whole", () => {
    // 2 repeats of 6 with 1 edge stitch at the left and 3 at the right: 16 needles, 8 to each side.
    const panel = panelOf(
      { columns: 2, gap: 0, mirror: false },
      { left: 0, right: 6, edge: { left: 1, right: 3 } },
    );
    expect(panel).toEqual({ centres: [-7, -1], mirrored: 0, leftEdge: -8, rightEdge: 8 });
  });

  test("with edge stitches and needles of an odd number, the left side has one more", () => {
    const panel = panelOf(
      { columns: 1, gap: 0, mirror: false },
      { left: 0, right: 6, edge: { left: 1, right: 0 } },
    );
    expect(panel).toEqual({ centres: [-3], mirrored: 0, leftEdge: -4, rightEdge: 3 });
  });

  test("that are mirrored reach outward as far at the right as at the left", () => {
    // Each column 6 wide, its centre 2 from its left edge, mirrored 2 from its right one; a gap of 1: 13 needles.
    expect(panelOf({ columns: 2, gap: 1, mirror: true }, { left: 2, right: 4 })).toEqual({
      centres: [-5, 4],
      mirrored: 1,
      leftEdge: -7,
      rightEdge: 6,
    });
  });

  test("of an odd number that are mirrored keep the one in the middle as it is", () => {
    // 3 columns of 6 are 18 needles from -9; the third is mirrored, its centre 4 from its left edge.
    expect(panelOf({ columns: 3, gap: 0, mirror: true }, { left: 2, right: 4 })).toMatchObject({
      centres: [-7, -1, 7],
      mirrored: 1,
    });
  });

  test("one alone is never mirrored, and stands about its own centre", () => {
    expect(panelOf({ columns: 1, gap: 0, mirror: true }, { left: 2, right: 4 })).toEqual({
      centres: [0],
      mirrored: 0,
      leftEdge: -2,
      rightEdge: 4,
    });
  });

  const cases = fc.record({
    columns: fc.integer({ min: 1, max: 6 }),
    gap: fc.integer({ min: 0, max: 7 }),
    mirror: fc.boolean(),
    left: fc.integer({ min: 0, max: 9 }),
    right: fc.integer({ min: 1, max: 9 }),
    edge: fc.option(
      fc.record({ left: fc.integer({ min: 0, max: 4 }), right: fc.integer({ min: 0, max: 4 }) }),
    ),
    shift: fc.integer({ min: -20, max: 20 }),
  });

  test("fill a panel from edge to edge, wherever it stands", () => {
    fc.assert(
      fc.property(cases, ({ columns, gap, mirror, left, right, edge, shift }) => {
        const own = { left, right, ...(edge && { edge }) };
        const panel = panelOf({ columns, gap, mirror }, own, shift);
        const still = panelOf({ columns, gap, mirror }, own);
        const ends = edge ?? { left: 0, right: 0 };
        expect(panel.rightEdge - panel.leftEdge).toBe(
          ends.left + columns * (left + right) + (columns - 1) * gap + ends.right,
        );
        expect(panel.centres).toEqual(still.centres.map((centre) => centre + shift));
        expect(panel.leftEdge).toBe(still.leftEdge + shift);
        // Column by column from the left: each has its own needles, then the gap.
        let needle = panel.leftEdge + ends.left;
        panel.centres.forEach((centre, column) => {
          expect(centre - needle).toBe(isMirrored(panel, column) ? right : left);
          needle += left + right + gap;
        });
        expect(needle - gap + ends.right).toBe(panel.rightEdge);
        expect(panel.mirrored).toBe(mirror ? Math.floor(columns / 2) : 0);
      }),
      { numRuns: 60 },
    );
  });
});

test("only the last columns of a mirrored panel are mirrored", () => {
  const panel = { centres: [-9, -3, 0, 3, 9], mirrored: 2 };
  expect(panel.centres.map((_, column) => isMirrored(panel, column))).toEqual([
    false,
    false,
    false,
    true,
    true,
  ]);
});

describe("where a piece is narrowest", () => {
  const shaped = counted({ rows: 5, left: [9, 7, 8, 6, 8, 5], right: [4, 6, 5, 7, 3, 9] });

  test("both ends of the rows count, and each side by itself", () => {
    expect(narrowest(shaped, 0, 2)).toEqual({ left: 7, right: 4 });
    expect(narrowest(shaped, 1, 3)).toEqual({ left: 6, right: 5 });
    expect(narrowest(shaped, 2, 2)).toEqual({ left: 8, right: 5 });
    expect(narrowest(shaped, 4, 5)).toEqual({ left: 5, right: 3 });
  });

  test("asked again it is the same, and other rows or another piece are not mixed up with it", () => {
    const other = counted({ rows: 5, left: [1, 1, 1, 1, 1, 1], right: [2, 2, 2, 2, 2, 2] });
    expect(narrowest(shaped, 0, 2)).toBe(narrowest(shaped, 0, 2));
    expect(narrowest(other, 0, 2)).toEqual({ left: 1, right: 2 });
    expect(narrowest(shaped, 0, 1)).toEqual({ left: 7, right: 4 });
    expect(narrowest(shaped, 0, 3)).toEqual({ left: 6, right: 4 });
  });
});

test("of all pieces together a hundred thousand ranges of rows are kept, and no more", () => {
  const [long, other] = [counted({ rows: 4 }), counted({ rows: 100_000 })];
  let row = 0;
  /** Ranges of the other piece until the one of the long piece is measured anew. */
  const untilMeasuredAnew = (): number => {
    const kept = narrowest(long, 0, 4);
    for (let ranges = 1; ; ranges++) {
      narrowest(other, row, row);
      row = (row + 1) % 100_000;
      const now = narrowest(long, 0, 4);
      if (now === kept) continue;
      expect(now).toEqual(kept);
      return ranges;
    }
  };
  untilMeasuredAnew();
  // Two are kept then, the last of the other piece and the long piece's own.
  expect(untilMeasuredAnew()).toBe(99_999);
});

describe("a panel at a neck", () => {
  // Above row 3 the neck stands 2 needles wide at each side, from row 5 on 4 at the left and 3 at the right.
  const necked = counted({
    rows: 8,
    neck: { row: 3, left: [0, 2, 4, 4, 4, 4], right: [0, 2, 3, 3, 3, 3] },
  });
  const panel = (leftEdge: number, rightEdge: number) => ({ centres: [0], mirrored: 0, leftEdge, rightEdge });

  test.each([
    ["ends on the neck's own row, before the centre is bound off", panel(-3, 3), 0, 3, true],
    ["goes on over a row above it", panel(-3, 3), 0, 4, false],
    ["lies above the neck alone", panel(-3, 3), 4, 4, false],
    ["lies on the left half, up to the neck", panel(-9, -4), 0, 8, true],
    ["lies on the left half, a needle too near once it widens", panel(-9, -3), 0, 8, false],
    ["lies on the left half, as near as the lower rows allow", panel(-9, -2), 0, 4, true],
    ["lies on the right half, up to the neck", panel(3, 9), 0, 8, true],
    ["lies on the right half, a needle too near once it widens", panel(2, 9), 0, 8, false],
    ["lies on the right half, a needle too near on its last row only", panel(2, 9), 0, 5, false],
    ["is past the widening alone", panel(2, 9), 4, 4, true],
  ])("%s", (_, where, firstRow, lastRow, clears) =>
    expect(clearsNeck(necked, where, firstRow, lastRow)).toBe(clears),
  );

  test("has nothing to keep clear of where there is no neck", () =>
    expect(clearsNeck(counted(), panel(-3, 3), 0, 40)).toBe(true));
});
