import { beforeAll, describe, expect, test } from "vitest";
import type { CountedPiece } from "../../../../src/cloth/counted-piece.ts";
import { checkPart } from "../../../../src/fit/check/check-part.ts";
import type { FittedPart, FittedPlacement } from "../../../../src/fit/fit.ts";
import type { Garment, Margins, Supply } from "../../../../src/garment/garment.ts";
import {
  fitOf,
  hook,
  lookWith,
  placed,
  section,
  straight,
  stretch,
  swing,
  withNeedles,
  written,
} from "./support/laid-by-hand.ts";

/** What a part is judged by: the placement without it, the garment, the piece and what else is fitted. */
interface Situation {
  readonly garment: Garment;
  readonly fitted: FittedPlacement;
  readonly piece: CountedPiece;
  readonly others?: readonly FittedPlacement[];
}

const found = ({ garment, fitted, piece, others = [] }: Situation, part?: FittedPart): readonly string[] => {
  const told = { ...fitted, ...(part && { part }) };
  const breaches = checkPart(
    garment,
    fitOf(garment, [...others, told], [straight(9, 1, { name: "back" }), piece]),
    told,
  );
  expect(breaches.every(({ rule }) => rule === `${fitted.motif} on panel`)).toBe(true);
  return breaches.map((one) => one.found);
};

/**
 * Nothing is found of this part, and where there is any, something of none: what is judged right is known from the
 * situation, never from what the check says.
 */
function expectPart(situation: Situation, toRow: number, ...columns: FittedPart["columns"]): void {
  const { lastRow } = situation.fitted;
  const all = { lastRow: toRow, rows: toRow - lastRow, columns };
  expect(found(situation, toRow > lastRow ? all : undefined)).toEqual([]);
  if (toRow > lastRow)
    expect(found(situation)).toEqual([`its part is told to row ${lastRow}, and it goes to row ${toRow}`]);
}

const anyMargins: Margins = {
  bottom: { kind: "from", least: 0 },
  top: { kind: "from", least: 0 },
  sides: { kind: "centred", least: 0 },
};

/** A garment whose only placement asks for parts, with these margins. */
const inPart = (motif: object, margins: Partial<Margins> = {}): Garment =>
  withMargins(written({ ornament: motif }, [{ unfinished: "part" }]), margins);

const withMargins = (garment: Garment, margins: Partial<Margins>): Garment => ({
  ...garment,
  placements: garment.placements.map((placement) => ({
    ...placement,
    margins: { ...anyMargins, ...margins },
  })),
});

const opening = (row: number, left: readonly number[], right = left): Partial<CountedPiece> => ({
  neck: { row, left, right },
});

const other = (rows: readonly [number, number], needles: readonly [number, number], piece = "panel") =>
  placed([], {
    index: 1,
    piece,
    firstRow: rows[0],
    lastRow: rows[1],
    panel: { centres: [0], mirrored: 0, leftEdge: needles[0], rightEdge: needles[1] },
  });

/** Two cords that swing from L2 to R2 and back, against each other. */
const pair = {
  ...swing,
  strands: {
    left: swing.strands.cord,
    right: {
      start: ["spread", 0],
      repeat: [
        ["-spread", "interval"],
        ["spread", "2 * interval"],
      ],
    },
  },
};

let cords: Situation;

beforeAll(() => {
  const garment = inPart(pair);
  const look = lookWith(garment.motifs[0]!, { interval: 3, spread: 2 }, [stretch(3, 3, 3)]);
  // Eight repeats of 6 rows from row 2 to row 50; one repeat more is hung at rows 53 and 56.
  const fitted = placed([section(look, 8)], {
    firstRow: 2,
    lastRow: 50,
    panel: { centres: [0], mirrored: 0, leftEdge: -2, rightEdge: 2 },
  });
  cords = { garment, fitted, piece: straight(60, 10) };
});

describe("the independent check of what is told of a part", () => {
  const whole = { lastRow: 56, rows: 6, columns: [{ left: 2, right: 2 }] };

  test("finds nothing of a part that goes as far as it can", () => {
    expect(found(cords, whole)).toEqual([]);
    // The order in which the strands are told says nothing.
    expect(found(cords, { ...whole, columns: [{ right: 2, left: 2 }] })).toEqual([]);
  });

  test("finds rows that do not add up", () => {
    expect(found(cords, { ...whole, rows: 5 })).toEqual(["rows of its part do not add up"]);
  });

  test("finds another last row", () => {
    expect(found(cords, { ...whole, lastRow: 57, rows: 7 })).toEqual([
      "its part is told to row 57, and it goes to row 56",
    ]);
  });

  test("finds other hangings", () => {
    expect(found(cords, { ...whole, columns: [{ left: 1, right: 2 }] })).toEqual([
      "its part is told as left 1, right 2, and it is left 2, right 2",
    ]);
    expect(found(cords, { ...whole, columns: [] })).toEqual([
      "its part is told as , and it is left 2, right 2",
    ]);
  });

  test("tells hangings column by column", () => {
    const panel = { centres: [-4, 4], mirrored: 0, leftEdge: -6, rightEdge: 6 };
    const two = { ...cords, fitted: { ...cords.fitted, columns: 2, panel } };
    const columns = [
      { left: 2, right: 2 },
      { left: 2, right: 1 },
    ];
    expect(found(two, { ...whole, columns })).toEqual([
      "its part is told as left 2, right 2; left 2, right 1, and it is left 2, right 2; left 2, right 2",
    ]);
  });

  test("finds a part where rows are to stay plain", () => {
    const plain = {
      ...cords,
      garment: {
        ...cords.garment,
        placements: cords.garment.placements.map((one) => ({ ...one, unfinished: "plain" as const })),
      },
    };
    expect(found(plain)).toEqual([]);
    expect(found(plain, whole)).toEqual(["is worked in part where rows are to stay plain"]);
  });

  test("finds a part of nothing, and of nowhere", () => {
    expect(found({ ...cords, fitted: { ...cords.fitted, sections: [] } })).toEqual([]);
    const nowhere = { ...cords, piece: straight(60, 10, { name: "front" }) };
    expect(found(nowhere)).toEqual([]);
    expect(found(nowhere, whole)).toEqual(["is worked in part where rows are to stay plain"]);
  });
});

describe("a part goes on", () => {
  test("until a repeat is whole", () => {
    expectPart(cords, 56, { left: 2, right: 2 });
  });

  test.each([
    ["leaves the rows above that have to be free", { kind: "from", least: 4 }, 56, 2],
    ["leaves one row more", { kind: "from", least: 5 }, 53, 1],
    ["takes the least of the margins in a list", { kind: "list", values: [5, 9] }, 53, 1],
    ["finds no room at all", { kind: "from", least: 8 }, 50, 0],
  ] as const)("%s", (_, top, toRow, each) => {
    const garment = withMargins(cords.garment, { top });
    expectPart({ ...cords, garment }, toRow, { left: each, right: each });
  });

  test("up to the mark where its field ends", () => {
    const garment = withMargins(cords.garment, {});
    const ended = { ...garment, placements: [{ ...garment.placements[0]!, to: "high" }] };
    const at = (high: number): Situation => ({
      ...cords,
      garment: ended,
      piece: straight(60, 10, { marks: new Map([["high", high]]) }),
    });
    expectPart(at(56), 56, { left: 2, right: 2 });
    expectPart(at(55), 53, { left: 1, right: 1 });
  });

  test("with a look that another came before", () => {
    // With a spread of 3 the last section reaches needles 3 away from the centre.
    const { sections } = cords.fitted;
    const wide = lookWith(cords.garment.motifs[0]!, { interval: 3, spread: 3 });
    const grown = { ...cords.fitted, sections: [section(sections[0]!.look, 4), section(wide, 4)] };
    const narrow = withNeedles(cords.piece, "left", { 56: 2 });
    expectPart({ ...cords, fitted: grown, piece: narrow }, 56, { left: 1, right: 2 });
    const turned = { ...grown, sections: [...grown.sections].reverse() };
    expectPart({ ...cords, fitted: turned, piece: narrow }, 56, { left: 2, right: 2 });
  });
});

test("strands of a part are hung as often as each of them is in a repeat", () => {
  const garment = inPart({
    ...pair,
    strands: { ...pair.strands, slow: { start: [1, 0], repeat: [[-1, 3]] } },
  });
  const look = lookWith(garment.motifs[0]!, { interval: 3, spread: 2 });
  const fitted = { ...cords.fitted, sections: [section(look, 8)] };
  expectPart({ ...cords, garment, fitted }, 56, { left: 2, right: 2, slow: 1 });
});

describe("a strand ends where its needle does not keep to the side margins", () => {
  // At row 53 the left strand is hung on R2 and the right one on L2, at row 56 the other way round.
  test.each([
    ["left", 53, 4, { left: 2, right: 0 }, 56],
    ["right", 53, 4, { left: 0, right: 2 }, 56],
    ["left", 56, 4, { left: 1, right: 2 }, 56],
    ["right", 56, 4, { left: 2, right: 1 }, 56],
  ] as const)("on the %s at row %i", (side, row, needles, column, toRow) => {
    const sides = { kind: "centred", least: 3 } as const;
    const garment = withMargins(cords.garment, { sides });
    expectPart(
      { ...cords, garment, piece: withNeedles(cords.piece, side, { [row]: needles }) },
      toRow,
      column,
    );
    const room = withNeedles(cords.piece, side, { [row]: needles + 1 });
    expectPart({ ...cords, garment, piece: room }, 56, { left: 2, right: 2 });
  });

  test("each side with its own", () => {
    const sides = {
      kind: "free",
      left: { kind: "list", values: [3, 7] },
      right: { kind: "from", least: 1 },
    } as const;
    const garment = withMargins(cords.garment, { sides });
    const on = (left: number, right: number): Situation => ({
      ...cords,
      garment,
      piece: withNeedles(withNeedles(cords.piece, "left", { 56: left }), "right", { 56: right }),
    });
    expectPart(on(5, 3), 56, { left: 2, right: 2 });
    expectPart(on(4, 3), 56, { left: 1, right: 2 });
    expectPart(on(5, 2), 56, { left: 2, right: 1 });
  });

  test("and the others go on to a lower last row", () => {
    const narrow = withNeedles(withNeedles(cords.piece, "left", { 53: 1, 56: 1 }), "right", { 56: 1 });
    expectPart({ ...cords, piece: narrow }, 53, { left: 1, right: 0 });
  });
});

describe("a strand ends where a neck opens across its way", () => {
  test("even one that is only a slit", () => {
    const slit = {
      ...cords,
      piece: straight(
        60,
        10,
        opening(
          52,
          Array.from({ length: 9 }, () => 0),
        ),
      ),
    };
    expectPart(slit, 50);
    const higher = {
      ...cords,
      piece: straight(
        60,
        10,
        opening(
          53,
          Array.from({ length: 8 }, () => 0),
        ),
      ),
    };
    expectPart(higher, 53, { left: 1, right: 1 });
  });

  /** Two cords that stay on their sides, on the needles 3 and 4 away from the centre. */
  const apart = {
    kind: "cord",
    quantities: {},
    lead: 0,
    repeat: 6,
    strands: {
      left: {
        start: [-3, 0],
        repeat: [
          [-4, 3],
          [-3, 6],
        ],
      },
      right: {
        start: [3, 0],
        repeat: [
          [4, 3],
          [3, 6],
        ],
      },
    },
  };

  test.each([
    // Open from row 53 on: three needles each way are too many for needle 3, two are not.
    ["beside it", [2, 2], [2, 2], { left: 2, right: 2 }, 56],
    ["into its left", [3, 3], [2, 2], { left: 0, right: 2 }, 56],
    ["into its right", [2, 2], [3, 3], { left: 2, right: 0 }, 56],
    ["into both", [3, 3], [3, 3], { left: 0, right: 0 }, 50],
    ["over both", [9, 9], [9, 9], { left: 0, right: 0 }, 50],
    ["wider further up", [2, 3], [3, 2], { left: 1, right: 0 }, 53],
  ] as const)("%s", (_, [left, leftAbove], [right, rightAbove], column, toRow) => {
    const garment = inPart(apart);
    const fitted = { ...cords.fitted, sections: [section(lookWith(garment.motifs[0]!, {}), 8)] };
    const widening = (first: number, then: number) => [0, first, first, first, then, then, then, then, then];
    const neck = { row: 52, left: widening(left, leftAbove), right: widening(right, rightAbove) };
    const piece = straight(60, 10, { neck });
    expectPart({ garment, fitted, piece }, toRow, column);
  });
});

describe("a strand ends where another motif lies on its way", () => {
  const both = (count: number) => ({ left: count, right: count });

  test.each([
    ["ends on the last row of the repeats", [1, 50], [-9, 9], 2],
    ["ends on the row above", [1, 51], [-9, 9], 0],
    ["begins on the row of a hanging", [53, 70], [-9, 9], 0],
    ["begins on the row above that", [54, 70], [-9, 9], 1],
    ["begins on the last row that is hung", [56, 70], [-9, 9], 1],
    ["begins above it", [57, 70], [-9, 9], 2],
    ["lies on the needle beside it at the right", [51, 70], [2, 9], 2],
    ["lies on its rightmost needle", [51, 70], [1, 9], 0],
    ["lies on the needle beside it at the left", [51, 70], [-9, -2], 2],
    ["lies on its leftmost needle", [51, 70], [-9, -1], 0],
    ["lies between its needles", [52, 52], [0, 1], 0],
  ] as const)("and goes on where that %s", (_, rows, needles, count) => {
    expectPart({ ...cords, others: [other(rows, needles)] }, 50 + 3 * count, both(count));
  });

  test("and goes on where that lies on another piece", () => {
    expectPart({ ...cords, others: [other([51, 70], [-9, 9], "back")] }, 56, both(2));
  });

  test("looks at all of them", () => {
    const others = [other([1, 9], [-9, 9]), other([54, 70], [0, 9])];
    expectPart({ ...cords, others }, 53, both(1));
  });

  test("and never at its own placement", () => {
    // Hung once a repeat, at its third row: the stretch to the next hanging begins among its own rows.
    const garment = inPart({
      ...swing,
      quantities: {},
      repeat: 6,
      strands: { cord: { start: [1, 0], repeat: [[1, 3]] } },
    });
    const fitted = { ...cords.fitted, sections: [section(lookWith(garment.motifs[0]!, {}), 8)] };
    expectPart({ ...cords, garment, fitted }, 53, { cord: 1 });
  });
});

describe("a part of columns", () => {
  const hooks = (mirrored: number, piece: CountedPiece): Situation => {
    const garment = inPart(hook);
    return {
      garment,
      piece,
      fitted: {
        ...cords.fitted,
        columns: 2,
        sections: [section(lookWith(garment.motifs[0]!, {}), 8)],
        panel: { centres: [-4, 4], mirrored, leftEdge: -5, rightEdge: 5 + 2 * (1 - mirrored) },
      },
    };
  };

  test("ends in each where that one's needle ends", () => {
    // The right column is hung on needle 7 at row 53 and on needle 4 at row 56.
    expectPart(hooks(0, withNeedles(straight(60, 10), "right", { 53: 6 })), 56, { cord: 2 }, { cord: 0 });
    expectPart(hooks(0, withNeedles(straight(60, 10), "right", { 56: 4 })), 56, { cord: 2 }, { cord: 2 });
    expectPart(hooks(0, withNeedles(straight(60, 10), "left", { 56: 4 })), 56, { cord: 1 }, { cord: 2 });
  });

  test("is turned with the column", () => {
    // Turned, it is hung on needle 2 at row 53 and on needle 5 at row 56.
    expectPart(hooks(1, withNeedles(straight(60, 10), "right", { 53: 2 })), 56, { cord: 2 }, { cord: 2 });
    expectPart(hooks(1, withNeedles(straight(60, 10), "right", { 53: 1 })), 56, { cord: 2 }, { cord: 0 });
    expectPart(hooks(1, withNeedles(straight(60, 10), "right", { 56: 5 })), 56, { cord: 2 }, { cord: 2 });
    expectPart(hooks(1, withNeedles(straight(60, 10), "right", { 56: 4 })), 56, { cord: 2 }, { cord: 1 });
  });
});

describe("a part of a cable", () => {
  const rope = {
    kind: "cable",
    lead: 0,
    repeat: 6,
    cross: [2, 1],
    crossings: {
      start: [0, 0],
      repeat: [
        [0, 3],
        [0, 6],
      ],
    },
    ladders: [-3, 3],
  };

  const ropes = (piece: CountedPiece, ladders = true): Situation => {
    const garment = inPart(ladders ? rope : { ...rope, ladders: [] });
    const sections = [section(lookWith(garment.motifs[0]!, {}), 8)];
    return { garment, piece, fitted: { ...cords.fitted, sections } };
  };
  const crossed = (count: number) => ({ crossing: count });

  test("ends where the stitches that cross have no room", () => {
    expectPart(ropes(straight(60, 10), false), 56, crossed(2));
    expectPart(ropes(withNeedles(straight(60, 10), "left", { 56: 2 }), false), 56, crossed(2));
    expectPart(ropes(withNeedles(straight(60, 10), "left", { 56: 1 }), false), 53, crossed(1));
    expectPart(ropes(withNeedles(straight(60, 10), "right", { 56: 1 }), false), 56, crossed(2));
    expectPart(ropes(withNeedles(straight(60, 10), "right", { 56: 0 }), false), 53, crossed(1));
  });

  test("ends where a ladder has none, also between the crossings", () => {
    // The ladder at R3 and the needle beside it, which takes its stitch.
    expectPart(ropes(withNeedles(straight(60, 10), "right", { 51: 4, 52: 4 })), 56, crossed(2));
    expectPart(ropes(withNeedles(straight(60, 10), "right", { 52: 3 })), 50, crossed(0));
    expectPart(ropes(withNeedles(straight(60, 10), "left", { 51: 3 })), 50, crossed(0));
    expectPart(ropes(withNeedles(straight(60, 10), "left", { 53: 3 })), 50, crossed(0));
    expectPart(ropes(withNeedles(straight(60, 10), "left", { 54: 3 })), 53, crossed(1));
    expectPart(ropes(withNeedles(straight(60, 10), "left", { 56: 3 })), 53, crossed(1));
    expectPart(ropes(withNeedles(straight(60, 10), "left", { 57: 3 })), 56, crossed(2));
  });

  test("ends where another motif lies on a ladder", () => {
    const beside = { ...ropes(straight(60, 10)), others: [other([54, 54], [3, 9])] };
    expectPart(beside, 53, crossed(1));
    expectPart({ ...beside, others: [other([54, 54], [4, 9])] }, 56, crossed(2));
    expectPart({ ...beside, others: [other([50, 50], [-9, 9])] }, 56, crossed(2));
  });
});

describe("a part of a band", () => {
  const bands = (colours: number, piece: CountedPiece, high: readonly number[] = [6]): Situation => {
    const garment = inPart({
      kind: "band",
      quantities: { high: { unit: "rows", allow: [4, 6] } },
      stitches: 5,
      repeat: "high",
      colours,
    });
    return {
      garment,
      piece,
      fitted: {
        ...cords.fitted,
        sections: high.map((rows) => section(lookWith(garment.motifs[0]!, { high: rows }), 4)),
        panel: { centres: [0], mirrored: 0, leftEdge: -2, rightEdge: 3 },
      },
    };
  };
  const narrowAt = (row: number) => withNeedles(straight(60, 10), "right", { [row]: 2 });

  test("goes on row by row as far as all of it has room", () => {
    expectPart(bands(1, straight(60, 10)), 56);
    expectPart(bands(1, narrowAt(56)), 55);
    expectPart(bands(1, narrowAt(54)), 53);
    expectPart(bands(1, narrowAt(51)), 50);
    expectPart(bands(1, withNeedles(straight(60, 10), "right", { 54: 3 })), 56);
    expectPart(bands(1, withNeedles(straight(60, 10), "left", { 54: 1 })), 53);
    expectPart(bands(1, straight(60, 10), [6, 4]), 54);
  });

  test("in colours goes forth and back to their yarns", () => {
    expectPart(bands(2, straight(60, 10)), 56);
    expectPart(bands(2, narrowAt(56)), 54);
    expectPart(bands(2, narrowAt(55)), 54);
    expectPart(bands(2, narrowAt(52)), 50);
  });

  test("ends where another motif lies or a neck opens", () => {
    expectPart({ ...bands(1, straight(60, 10)), others: [other([53, 53], [2, 9])] }, 52);
    expectPart({ ...bands(1, straight(60, 10)), others: [other([53, 53], [3, 9])] }, 56);
    const neck = Array.from({ length: 9 }, () => 1);
    expectPart(bands(1, straight(60, 10, opening(52, neck))), 52);
  });
});

describe("a part for which there is too little on hand", () => {
  /** Without a reserve, and with cord that is told in metres. */
  const cordOnHand = (...metres: readonly number[]): Situation => {
    const motifs = cords.garment.motifs.map((motif) => ({ ...motif, reserve: 0 }));
    const supplies = metres.map((amount): Supply => ({ path: ["on hand"], of: "cord", amount, unit: "m" }));
    return {
      ...cords,
      garment: {
        ...cords.garment,
        motifs: motifs as Garment["motifs"],
        onHand: { supplies, leastWaste: false },
      },
    };
  };

  // Each strand has one cord stitch at its start and 3 on each of 16 stretches, 18 with the part: 2 * 55 * 5 mm.
  const whole = { lastRow: 56, rows: 6, columns: [{ left: 2, right: 2 }] };

  test("may be left out, and not where there is enough", () => {
    expect(found(cordOnHand(0.549))).toEqual([]);
    const left = ["its part is told to row 50, and it goes to row 56"];
    expect(found(cordOnHand(0.55))).toEqual(left);
    expect(found(cordOnHand(9, 0.549))).toEqual([]);
    expect(found(cordOnHand(9, 0.55))).toEqual(left);
  });

  test("is judged as it is told where it is told", () => {
    expect(found(cordOnHand(0.549), whole)).toEqual([]);
    expect(found(cordOnHand(0.549), { ...whole, columns: [{ left: 2, right: 1 }] })).toEqual([
      "its part is told as left 2, right 1, and it is left 2, right 2",
    ]);
  });

  test("is counted together with what the others take", () => {
    // Another placement of 2 * 49 cord stitches: 0.49 m more.
    const second = { ...cords.fitted, index: 1, firstRow: 200, lastRow: 248 };
    const left = ["its part is told to row 50, and it goes to row 56"];
    expect(found({ ...cordOnHand(1.04), others: [second] })).toEqual(left);
    expect(found({ ...cordOnHand(1.039), others: [second] })).toEqual([]);
  });
});
