import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { within } from "../../../src/fit/allowance.ts";
import type { Candidate, Filling, Room } from "../../../src/fit/candidates.ts";
import type { Field } from "../../../src/fit/field.ts";
import type { Footing } from "../../../src/fit/footing.ts";
import {
  columnChoices,
  createLayouts,
  type Layout,
  layoutAt,
  type Surroundings,
} from "../../../src/fit/layouts.ts";
import type { Measure } from "../../../src/fit/measure.ts";
import { anyFrom, only } from "../../../src/garment/allowed.ts";
import type { Placement } from "../../../src/garment/garment.ts";
import { holdsMoreThan } from "./support/held.ts";
import { field, footing, piece, placement, stitch, trace } from "./support/plain-parts.ts";

const around = (changes: Partial<Surroundings> = {}): Surroundings => ({
  fields: [],
  stitch,
  weights: {},
  bed: { needles: 100, carriage: "right" },
  lostPerColumn: () => 0,
  lostBeside: () => 0,
  anyLayout: false,
  keep: 100,
  measures: [],
  ...changes,
});

/** What is asked of one way to fill a field after another, answered with candidates that cost so much. */
function asking(costs: (room: Room) => readonly number[] = () => [0]) {
  const rooms: Room[] = [];
  const fill: Filling = (room) => {
    rooms.push(room);
    const { change, columns, gap } = room;
    return costs(room).map(
      (cost, at): Candidate => ({
        place: { ...room, repeats: at + 1 },
        bottom: 0,
        top: 0,
        phases: [],
        shift: 0,
        cost,
        change,
        repeats: at + 1,
        columns,
        gap,
      }),
    );
  };
  return { rooms, fill };
}

const layoutsOf = (changes: Partial<Surroundings>, of: Field, ...more: LayoutArguments): readonly Layout[] =>
  createLayouts(around({ fields: [of], ...changes }))(of, footing(), ...more);

type LayoutArguments = [fill?: Filling, alike?: readonly Footing[]];

const changing = (leastChange: number, mostChange: number, of: Partial<Placement> = {}): Field =>
  field({ leastChange, mostChange, placement: placement(of) });

const costs = (layouts: readonly Layout[]): readonly number[] => layouts.map(({ cost }) => cost);

describe("columns and the gaps between them", () => {
  const choices = (columns: Placement["columns"]["allowed"], gap: Placement["gap"]["allowed"]) =>
    columnChoices(field({ placement: placement({ columns: { allowed: columns }, gap: { allowed: gap } }) }));

  test("are all that is allowed, one column with the least gap alone", () => {
    expect(choices(only(1, 3), only(2, 4))).toEqual([
      [1, 2],
      [3, 2],
      [3, 4],
    ]);
  });

  test("of open ranges go as far as any bed", () => {
    expect(choices(anyFrom(49), anyFrom(199))).toEqual([
      [49, 199],
      [49, 200],
      [50, 199],
      [50, 200],
    ]);
  });
});

describe("layouts", () => {
  test("are the candidates of their field, laid out and cheapest first", () => {
    // 4 repeats of 8 rows and a lead-in of 4 are 36 of 40 rows, 3 of them 28 rows; preferred are 3.
    const [best, next, ...others] = layoutsOf(
      {},
      changing(0, 0, { repeats: { allowed: only(3, 4), prefer: 3 } }),
    );
    expect(others).toEqual([]);
    expect(best).toEqual({
      field: best!.field,
      footing: footing(),
      repeats: 3,
      change: 0,
      bottom: 6,
      top: 6,
      firstRow: 6,
      height: 28,
      columns: 1,
      gap: 0,
      phases: [],
      shift: 0,
      panel: { centres: [0], mirrored: 0, leftEdge: -3, rightEdge: 3 },
      terms: [],
      cost: 0,
      amounts: [],
    });
    expect(next).toMatchObject({ repeats: 4, bottom: 2, top: 2, firstRow: 2, height: 36, cost: 1 });
    expect(next!.terms.map(({ term, placement: of, cost }) => [term, of, cost])).toEqual([["repeats", 0, 1]]);
  });

  test("of a field that begins higher stand on the rows of the piece", () => {
    const higher = field({ fromRow: 10, toRow: 30, placement: placement({ repeats: { allowed: only(2) } }) });
    // 20 rows that 2 repeats fill.
    expect(layoutsOf({}, higher)).toMatchObject([{ bottom: 0, top: 0, firstRow: 10, height: 20 }]);
  });

  test("change the length of their field, least first, each row at its cost", () => {
    const layouts = layoutsOf({}, changing(-1, 2, { repeats: { allowed: only(4) } }));
    // 3 a row, and half a row of balance where the spare rows are odd: 4 + 0 -> even, 3 and 5 odd, 6 even.
    expect(layouts.map(({ change, bottom, top, cost }) => [change, bottom, top, cost])).toEqual([
      [0, 2, 2, 0],
      [-1, 1, 2, 3.5],
      [1, 2, 3, 3.5],
      [2, 3, 3, 6],
    ]);
  });

  test("have no gap where they have one column", () => {
    const of = { repeats: { allowed: only(4) }, columns: { allowed: only(1, 2) }, gap: { allowed: only(3) } };
    expect(layoutsOf({}, changing(0, 0, of)).map(({ columns, gap }) => [columns, gap])).toEqual([
      [1, 0],
      [2, 3],
    ]);
  });

  test("stand on a bed that has a needle for each stitch", () => {
    const of = (needles: number, lost = 0): number =>
      layoutsOf({ bed: { needles, carriage: "right" }, lostPerColumn: () => lost }, field()).length;
    expect([of(40), of(39)]).toEqual([4, 0]);
    // 2 stitches lost are one needle more at each side.
    expect([of(42, 2), of(41, 2)]).toEqual([4, 0]);
  });

  test("stand on a piece with needles added for what is drawn in, by each column and by what is beside", () => {
    const { rooms, fill } = asking();
    const of = field({
      placement: placement({ columns: { allowed: only(1, 2) }, gap: { allowed: only(0) } }),
    });
    const asked: unknown[] = [];
    const lostPerColumn = (own: Field, on: Footing): number => {
      asked.push(own, on);
      return 4;
    };
    createLayouts(around({ fields: [of], lostPerColumn, lostBeside: (own) => (own === of ? 2 : 90) }))(
      of,
      footing(),
      fill,
    );
    // Half of 4 + 2 and of 8 + 2.
    expect(rooms.map(({ pieces }) => pieces[0]!.piece.left[0])).toEqual([20 + 3, 20 + 5]);
    expect(asked[0]).toBe(of);
    expect(asked[1]).toEqual(footing());
  });

  test("fill the rows that a changed field has, on the piece as it is then", () => {
    const { rooms, fill } = asking();
    layoutsOf(
      { weights: { length: 0 } },
      field({ fromRow: 10, toRow: 30, leastChange: -1, mostChange: 1 }),
      fill,
    );
    expect(
      rooms.map(({ change, rows, company, pieces }) => [
        change,
        rows,
        company,
        pieces.length,
        pieces[0]!.piece.rows,
      ]),
    ).toEqual([
      [0, 20, 0, 1, 40],
      [-1, 19, 0, 1, 39],
      [1, 21, 0, 1, 41],
    ]);
    expect(rooms[0]).toMatchObject({ columns: 1, gap: 0, footing: footing(), pieces: [{ fromRow: 10 }] });
  });
});

describe("of the layouts on one footing", () => {
  const cheap = changing(-9, 9);

  test("only the cheapest are kept, and no length is tried that costs more by itself", () => {
    const { rooms, fill } = asking(({ change }) => [change === 0 ? 4 : 20]);
    // A row is 3: after one layout that costs 4, changes of one row are tried and of two (6) are not.
    expect(costs(layoutsOf({ keep: 1 }, cheap, fill))).toEqual([4]);
    expect(rooms.map(({ change }) => change)).toEqual([0, -1, 1]);
  });

  test("a length that costs as much as the dearest that is kept is tried", () => {
    const { rooms, fill } = asking(() => [3]);
    layoutsOf({ keep: 1 }, cheap, fill);
    expect(rooms.map(({ change }) => change)).toEqual([0, -1, 1]);
  });

  test("as many are kept as are asked for, as if all had been made", () => {
    const offers = fc.array(fc.array(fc.integer({ min: 0, max: 30 }), { maxLength: 4 }), {
      minLength: 5,
      maxLength: 5,
    });
    fc.assert(
      fc.property(offers, fc.integer({ min: 1, max: 6 }), (ofChange, keep) => {
        // Whatever a layout costs, its change of length is part of it: 3 a row.
        const { rooms, fill } = asking(({ change }) =>
          ofChange[change + 2]!.map((more) => 3 * Math.abs(change) + more),
        );
        const kept = costs(layoutsOf({ keep }, changing(-2, 2), fill));
        const all = [-2, -1, 0, 1, 2].flatMap((change) =>
          ofChange[change + 2]!.map((more) => 3 * Math.abs(change) + more),
        );
        expect(kept).toEqual(all.sort((a, b) => a - b).slice(0, keep));
        // What is asked for next need not cost more than the dearest that would be kept of those before it.
        const before: number[] = [];
        for (const { change, dearest } of rooms) {
          const least = [...before].sort((a, b) => a - b);
          expect(dearest).toBe(least[keep - 1] ?? Number.POSITIVE_INFINITY);
          before.push(...ofChange[change + 2]!.map((more) => 3 * Math.abs(change) + more));
        }
      }),
      { numRuns: 60 },
    );
  });

  test("the cheapest are kept of very many, too", () => {
    const { fill } = asking(({ change }) => Array.from({ length: 20_001 }, (_, at) => 20_001 - at + change));
    expect(costs(layoutsOf({ keep: 2, weights: { length: 0 } }, changing(0, 1), fill))).toEqual([1, 2]);
  });

  test("all are kept where another placement is on the piece, whatever they cost", () => {
    const { rooms, fill } = asking(() => [9, 3, 6]);
    const [one, other] = twoFields({ leastChange: -1, mostChange: 1 }, {});
    const layouts = createLayouts(around({ fields: [one, other], keep: 1 }))(one, footing(), fill);
    expect(costs(layouts)).toEqual([9, 3, 6, 9, 3, 6, 9, 3, 6]);
    expect(rooms.every(({ dearest }) => dearest === Number.POSITIVE_INFINITY)).toBe(true);
  });

  test("one is enough where only that something fits is asked", () => {
    const { rooms, fill } = asking(({ change }) => (Math.abs(change) === 1 ? [50, 60] : []));
    const layouts = layoutsOf({ anyLayout: true, weights: { length: 0 } }, cheap, fill);
    expect(rooms.map(({ change }) => change)).toEqual([0, -1]);
    expect(costs(layouts)).toEqual([50, 60]);
  });

  test("one is not enough where something else is tied to it", () => {
    const tried = (changes: Partial<Surroundings>, of: Field): number => {
      const { rooms, fill } = asking();
      createLayouts(around({ fields: [of], anyLayout: true, ...changes }))(of, footing(), fill);
      return rooms.length;
    };
    const small = changing(-1, 1);
    const [one, other] = twoFields({ leastChange: -1, mostChange: 1 }, {});
    const measure: Measure = { name: "cord", ofLook: () => 0, ofLayout: () => 1 };
    expect(tried({}, small)).toBe(1);
    expect(tried({ fields: [one, other] }, one)).toBe(3);
    expect(tried({}, { ...small, matchedRows: [20] })).toBe(3);
    expect(tried({ measures: [measure] }, small)).toBe(3);
  });

  test("as many are kept in each phase, whatever they cost", () => {
    const matched = { ...changing(0, 3), matchedRows: [20] };
    const { rooms, fill } = asking();
    const phased: Filling = (room) =>
      fill(room).flatMap((one) => [
        { ...one, cost: 10 + room.change, phases: [0] },
        { ...one, cost: room.change, phases: [5] },
      ]);
    const layouts = layoutsOf({ keep: 2 }, matched, phased);
    expect(layouts.map(({ cost, phases }) => [cost, phases[0]])).toEqual([
      [0, 5],
      [1, 5],
      [10, 0],
      [11, 0],
    ]);
    expect(rooms.map(({ dearest }) => dearest)).toEqual(Array(4).fill(Number.POSITIVE_INFINITY));
  });
});

/** The first where it is asked for layouts, both on one piece. */
const twoFields = (first: Partial<Field>, second: Partial<Field>): readonly [Field, Field] => {
  const shared = piece();
  return [field({ piece: shared, ...first }), field({ index: 1, piece: shared, ...second })];
};

describe("other fields of the piece", () => {
  const pieceRows = (first: Partial<Field>, ...others: readonly Partial<Field>[]) => {
    const { rooms, fill } = asking();
    const shared = piece();
    const fields = [first, ...others].map((one, index) => field({ index, piece: shared, ...one }));
    createLayouts(around({ fields }))(fields[0]!, footing(), fill);
    return rooms.map(({ company, pieces }) => ({
      company,
      pieces: pieces.map(({ piece: own, fromRow }) => [own.rows, fromRow]),
    }));
  };
  const [low, high] = [
    { fromRow: 0, toRow: 20 },
    { fromRow: 20, toRow: 40 },
  ];

  test("below may bring the carriage to the other side by an odd change of length", () => {
    expect(pieceRows(high, { ...low, mostChange: 3 })).toEqual([
      {
        company: 0,
        pieces: [
          [40, 20],
          [41, 21],
        ],
      },
    ]);
    expect(pieceRows(high, { ...low, leastChange: -3 })).toEqual([
      {
        company: 0,
        pieces: [
          [40, 20],
          [39, 19],
        ],
      },
    ]);
    expect(pieceRows(high, { ...low, leastChange: -3, mostChange: 3 })).toEqual([
      {
        company: 0,
        pieces: [
          [40, 20],
          [41, 21],
        ],
      },
    ]);
    expect(pieceRows(high, low)).toEqual([{ company: 0, pieces: [[40, 20]] }]);
  });

  test("below are asked for the one that can change, whichever that is", () => {
    const [first, second] = [
      { fromRow: 0, toRow: 8 },
      { fromRow: 8, toRow: 20 },
    ];
    expect(pieceRows(high, first, { ...second, mostChange: 1 })).toEqual([
      {
        company: 0,
        pieces: [
          [40, 20],
          [41, 21],
        ],
      },
    ]);
    expect(pieceRows(high, { ...first, mostChange: 1 }, { ...second, leastChange: -1 })).toEqual([
      {
        company: 0,
        pieces: [
          [40, 20],
          [41, 21],
        ],
      },
    ]);
    expect(pieceRows(high, first, { ...second, leastChange: -1 })).toEqual([
      {
        company: 0,
        pieces: [
          [40, 20],
          [39, 19],
        ],
      },
    ]);
  });

  test("below are lengthened or shortened where they may be", () => {
    const markRows = (first: Partial<Field>, second: Partial<Field>): readonly (number | undefined)[] => {
      const { rooms, fill } = asking();
      const shared = piece({ marks: [{ name: "row 8", heightMm: 32 }] });
      const fields = [high, { fromRow: 0, toRow: 8, ...first }, { fromRow: 8, toRow: 20, ...second }].map(
        (one, index) => field({ index, piece: shared, ...one }),
      );
      createLayouts(around({ fields }))(fields[0]!, footing(), fill);
      return rooms[0]!.pieces.map(({ piece: own }) => own.marks.get("row 8"));
    };
    // What is added to the field above the mark, or taken from it, leaves the mark where it is.
    expect(markRows({ mostChange: 2 }, {})).toEqual([8, 9]);
    expect(markRows({}, { mostChange: 2 })).toEqual([8, 8]);
    expect(markRows({ leastChange: -2 }, {})).toEqual([8, 7]);
    expect(markRows({}, { leastChange: -2 })).toEqual([8, 8]);
    expect(markRows({ leastChange: -2 }, { mostChange: 2 })).toEqual([8, 8]);
  });

  test("above, or on the same rows, leave it where it is", () => {
    expect(pieceRows(low, { ...high, mostChange: 3 })).toEqual([{ company: 0, pieces: [[40, 0]] }]);
    expect(pieceRows(low, { ...low, mostChange: 3 })).toEqual([{ company: 1, pieces: [[40, 0]] }]);
  });

  test("may want the same rows", () => {
    expect(pieceRows(low, low, { fromRow: 10, toRow: 30 }, high)).toEqual([
      { company: 2, pieces: [[40, 0]] },
    ]);
  });

  test("that change below are stretched beside the field itself", () => {
    const { rooms, fill } = asking();
    const shared = piece();
    const fields = [
      field({ piece: shared, ...high, leastChange: 2, mostChange: 2 }),
      field({ index: 1, piece: shared, ...low, mostChange: 1 }),
    ];
    createLayouts(around({ fields }))(fields[0]!, footing(), fill);
    expect(rooms[0]!.pieces.map(({ piece: own, fromRow }) => [own.rows, fromRow])).toEqual([
      [42, 20],
      [43, 21],
    ]);
  });

  test("take the whole of what a layout draws in from the bed", () => {
    const wide = (needles: number): number => {
      const [one, other] = twoFields(low, high);
      const { rooms, fill } = asking();
      const bed = { needles, carriage: "right" } as const;
      createLayouts(around({ fields: [one, other], bed, lostBeside: () => 4 }))(one, footing(), fill);
      return rooms.length;
    };
    // Half of 4 stitches are two needles more at each side of 20.
    expect([wide(44), wide(43)]).toEqual([1, 0]);
  });
});

describe("what is measured of layouts", () => {
  const cord: Measure = {
    name: "cord",
    ofLook: () => 0,
    ofLayout: ({ repeats }) => 10 * repeats,
    costEach: 0.5,
  };
  const rows: Measure = { name: "rows", ofLook: () => 0, ofLayout: ({ change }) => change };

  test("stands beside each of them and adds what it costs", () => {
    const layouts = layoutsOf({ measures: [cord, rows] }, changing(0, 1), asking(() => [1, 2]).fill);
    // 10 or 20 stitches of cord at a half each.
    expect(layouts.map(({ amounts, cost }) => [...amounts, cost])).toEqual([
      [10, 0, 6],
      [10, 1, 6],
      [20, 0, 12],
      [20, 1, 12],
    ]);
  });

  test("is kept in each amount, as many as there are fits to tell apart", () => {
    const costly = asking(({ change }) => [10 * Math.abs(change), 7]);
    const layouts = layoutsOf(
      { measures: [{ ...cord, costEach: 0 }], keep: 2 },
      changing(-1, 1),
      costly.fill,
    );
    expect(layouts.map(({ amounts, cost }) => [...amounts, cost])).toEqual([
      [10, 0],
      [20, 7],
      [20, 7],
      [10, 10],
    ]);
    // Nothing is let go for its cost before it is measured.
    expect(costly.rooms.map(({ dearest }) => dearest)).toEqual(Array(3).fill(Number.POSITIVE_INFINITY));
  });

  test("is measured on each footing that is alike, and kept on each", () => {
    const byFooting: Measure = {
      name: "cord",
      ofLook: () => 0,
      ofLayout: ({ place }) => (place.footing.goingOn === " long" ? 7 : 3),
    };
    const alike = [" short", " long", " as short"].map((goingOn) => footing({ goingOn }));
    const layouts = layoutsOf({ measures: [byFooting], keep: 1 }, changing(0, 1), asking().fill, alike);
    expect(layouts.map(({ footing: on, amounts, change }) => [on.goingOn, amounts[0], change])).toEqual([
      [" short", 3, 0],
      [" long", 7, 0],
      [" as short", 3, 0],
    ]);
  });

  test("is not asked of footings where nothing is measured", () => {
    const alike = [" short", " long"].map((goingOn) => footing({ goingOn }));
    expect(layoutsOf({}, changing(0, 0), asking().fill, alike)).toHaveLength(1);
  });
});

describe("what layouts hold in memory", () => {
  test("is those that are kept, of one that has its piece for itself", () => {
    const work = () => layoutsOf({ keep: 2 }, field(), asking(() => [1, 2, 3, 4]).fill);
    expect([holdsMoreThan(2, work), holdsMoreThan(1, work)]).toEqual([false, true]);
  });

  test("is all that are made, of one that shares its piece", () => {
    const [one, other] = twoFields({ mostChange: 1 }, {});
    const work = () =>
      createLayouts(around({ fields: [one, other], keep: 2 }))(one, footing(), asking(() => [1, 2, 3]).fill);
    expect([holdsMoreThan(6, work), holdsMoreThan(5, work)]).toEqual([false, true]);
  });

  test("is not gone beyond in time", () => {
    expect(() => within(-1, () => layoutsOf({}, field(), asking().fill))).toThrow(
      "the time allowed was up before a fit was found",
    );
  });
});

describe("a layout of a candidate", () => {
  const candidate = (changes: Partial<Candidate> = {}): Candidate => {
    const { rooms, fill } = asking();
    const of = field({ placement: placement({ columns: { allowed: only(2) }, gap: { allowed: only(4) } }) });
    layoutsOf({}, of, fill);
    return { ...fill(rooms[0]!)[0]!, bottom: 3, top: 1, shift: 5, ...changes };
  };

  test("has its panel where it was shifted to, and what is measured", () => {
    const layout = layoutAt(candidate({ amounts: [7], phases: [2], cost: 9 }));
    // 2 columns of 6 and a gap of 4 are 16 needles.
    expect(layout).toMatchObject({
      firstRow: 3,
      height: 12,
      columns: 2,
      gap: 4,
      shift: 5,
      panel: { leftEdge: -3, rightEdge: 13, mirrored: 0 },
      amounts: [7],
      phases: [2],
      cost: 9,
    });
    expect(layout.terms.map(({ term, amount }) => [term, amount])).toEqual([["balance", 2]]);
    expect(layout).not.toHaveProperty("sections");
    expect(layout).not.toHaveProperty("variant");
  });

  test("is mirrored where its placement is, and of the variant that its place is of", () => {
    const plain = candidate();
    const of = { ...plain.place.field, placement: { ...plain.place.field.placement, mirror: true } };
    const layout = layoutAt({ ...plain, place: { ...plain.place, field: of, variant: "1,0" } });
    expect([layout.panel.mirrored, layout.variant]).toEqual([1, "1,0"]);
  });

  test("of a growing motif reaches as far as its widest section, and gives up what that does", () => {
    const look = (reach: number) => ({
      motif: {} as never,
      values: new Map(),
      trace: trace({ reach: { left: reach, right: reach } }),
      segments: [],
    });
    const sections = [
      { look: look(4), repeats: 2, joins: [] },
      { look: look(6), repeats: 1, joins: [] },
    ];
    const term = { term: "ease", motif: "plait", amount: 1, unit: "percentage points", weight: 1, cost: 1 };
    const plain = candidate({ growth: { sections, terms: [term] }, shift: 0 });
    const layout = layoutAt({ ...plain, place: { ...plain.place, columns: 1 } });
    expect(layout.panel).toMatchObject({ leftEdge: -6, rightEdge: 6 });
    expect(layout.sections).toBe(sections);
    expect(layout.terms.map(({ term: name }) => name)).toEqual(["balance", "ease"]);
  });
});
