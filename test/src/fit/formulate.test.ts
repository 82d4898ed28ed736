import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { ChoiceProgram, ChoiceRow } from "../../../solver/choice.ts";
import type { Field } from "../../../src/fit/field.ts";
import { footingKey, footingOf } from "../../../src/fit/footing.ts";
import { type Choices, formulate } from "../../../src/fit/formulate.ts";
import type { Layout } from "../../../src/fit/layouts.ts";
import type { Look } from "../../../src/fit/looks.ts";
import type { Measure } from "../../../src/fit/measure.ts";
import type { Piece } from "../../../src/garment/garment.ts";
import { holdsMoreThan } from "./support/held.ts";
import { field, footing, layout, look, piece, placement, trace } from "./support/plain-parts.ts";

const choices = (changes: Partial<Choices> = {}): Choices => ({
  matches: [],
  measures: [],
  limits: [],
  looks: [[look()]],
  layouts: [[layout()]],
  ...changes,
});

function keeps(sum: number, relation: ChoiceRow["relation"], bound: number): boolean {
  switch (relation) {
    case "=":
      return sum === bound;
    case "<=":
      return sum <= bound;
    case ">=":
      return sum >= bound;
    default:
      throw new Error(`no relation: ${relation}`);
  }
}

/** Each way to pick one option out of each group that keeps every row, as the options' indexes. */
function allowedPicks({ groups, rows }: ChoiceProgram): readonly string[] {
  let picks: readonly (readonly number[])[] = [[]];
  for (const { options } of groups)
    picks = picks.flatMap((pick) => options.map((_, index) => [...pick, index]));
  return picks
    .filter((pick) => {
      const sums = rows.map(() => 0);
      pick.forEach((index, group) => {
        for (const [row, coefficient] of groups[group]!.options[index]!.terms) sums[row]! += coefficient;
      });
      return rows.every(({ relation, bound }, row) => keeps(sums[row]!, relation, bound));
    })
    .map((pick) => pick.join());
}

/** The rows of a program that an option adds to, by name. */
const rowsOfOption = (program: ChoiceProgram, group: number, option: number) =>
  program.groups[group]!.options[option]!.terms.map(([row, coefficient]) => [
    program.rows[row]!.name,
    coefficient,
  ]);

const wide = footing({ reach: { left: 5, right: 5 } });
const wideTrace = trace({ reach: { left: 5, right: 5 } });

describe("a look and the layouts under it", () => {
  const program = formulate(
    choices({
      looks: [[look({ cost: 1 }), look({ cost: 2, trace: wideTrace }), look({ cost: 3 })]],
      layouts: [[layout({ cost: 4 }), layout({ cost: 5, footing: wide })]],
    }),
  );

  test("are tied by one row for each footing: as many layouts on it as looks", () => {
    expect(program.rows).toEqual([
      { name: "link 1 4+8n 3|3 x0", relation: "=", bound: 0 },
      { name: "link 1 4+8n 5|5 x0", relation: "=", bound: 0 },
    ]);
    expect(program.groups.map(({ options }) => options.map(({ terms }) => terms))).toEqual([
      [[[0, -1]], [[1, -1]], [[0, -1]]],
      [[[0, 1]], [[1, 1]]],
    ]);
    expect(allowedPicks(program)).toEqual(["0,0", "1,1", "2,0"]);
  });

  test("cost what they cost", () => {
    expect(program.groups.map(({ options }) => options.map(({ cost }) => cost))).toEqual([
      [1, 2, 3],
      [4, 5],
    ]);
  });

  test("are groups named after the motif and the piece", () => {
    expect(program.groups.map(({ name }) => name)).toEqual(["look of plait", "layout 1 on panel"]);
  });

  test("go by the footing that a look has of its own", () => {
    const own = footing({ goingOn: " long" });
    const apart = formulate(
      choices({ looks: [[look({ footing: own }), look()]], layouts: [[layout({ footing: own }), layout()]] }),
    );
    expect(allowedPicks(apart)).toEqual(["0,0", "1,1"]);
  });

  test("go by the footing that whoever asks wants", () => {
    const turned = formulate(
      choices({
        looks: [[look(), look({ trace: wideTrace })]],
        layouts: [[layout(), layout({ footing: wide })]],
      }),
      ({ trace: own }) => (own === wideTrace ? footing() : wide),
    );
    expect(allowedPicks(turned)).toEqual(["0,1", "1,0"]);
  });

  test("of several placements hang on their own motif, each by itself", () => {
    const rope = field({ index: 2, placement: placement({ motif: "rope" }) });
    const tied = formulate(
      choices({
        looks: [
          [look(), look({ trace: wideTrace })],
          [look({ name: "rope" }), look({ name: "rope", trace: wideTrace })],
        ],
        layouts: [
          [layout(), layout({ footing: wide })],
          [layout({ field: field({ index: 1 }) })],
          [layout({ field: rope }), layout({ field: rope, footing: wide })],
        ],
      }),
    );
    // The plait's second placement has no layout on the wide footing.
    expect(allowedPicks(tied)).toEqual(["0,0,0,0,0", "0,1,0,0,1"]);
  });
});

describe("what a knitter would notice of an option", () => {
  test("is a look's values and its counts", () => {
    const segment = { name: "run", needles: 1, rows: 1, climbs: 0, spanMm: 5, ease: 0 };
    const counted = look({ segments: [3, 5].map((pickup) => ({ ...segment, pickup })) });
    const [ofLooks] = formulate(choices({ looks: [[counted, look()]] })).groups;
    expect(ofLooks!.options.map(({ face, name }) => [face, name])).toEqual([
      ["interval 4, spread 3, count 3 5", "plait: interval 4, spread 3, count 3 5"],
      ["interval 4, spread 3", "plait: interval 4, spread 3"],
    ]);
  });

  test("is a layout's repeats, length and columns, and no place across", () => {
    const far = layout({ repeats: 3, change: -1, columns: 2, gap: 5, shift: 7 });
    const [, ofLayouts] = formulate(choices({ layouts: [[far, { ...far, shift: -7 }]] })).groups;
    const face = "3 repeats, -1 rows longer, 2 columns, gap 5";
    expect(ofLayouts!.options.map((one) => one.face)).toEqual([face, face]);
    expect(ofLayouts!.options.map(({ name }) => name)).toEqual([
      `1: 4+8n 3|3 x0, ${face}, shift 7`,
      `1: 4+8n 3|3 x0, ${face}, shift -7`,
    ]);
  });

  test("is how a growing motif grows", () => {
    const section = (interval: number, repeats: number) => ({
      look: look({
        values: new Map([
          ["interval", interval],
          ["spread", 3],
        ]),
      }),
      repeats,
      joins: [],
    });
    const [, ofLayouts] = formulate(
      choices({ layouts: [[layout({ sections: [section(4, 2), section(6, 1)] })]] }),
    ).groups;
    expect(ofLayouts!.options[0]!.face).toBe(
      "4 repeats, 0 rows longer, 1 columns, gap 0, 2 of 4 3, 1 of 6 3",
    );
  });

  test("names what is left of a group that has nothing to choose from", () => {
    const { groups, rows } = formulate(choices({ looks: [[]], layouts: [[]] }));
    expect(groups).toEqual([
      { name: "look of 0", options: [] },
      { name: "layout 1 on ", options: [] },
    ]);
    expect(rows).toEqual([]);
    expect(formulate(choices({ looks: [[]] })).rows).toEqual([]);
  });
});

describe("limits", () => {
  const cord: Measure = {
    name: "cord",
    ofLook: ({ cost }) => 10 * cost,
    ofLayout: () => Number.NaN,
  };
  const yarn: Measure = { name: "yarn", ofLook: () => 0, ofLayout: () => Number.NaN };

  test("add up, in the measure they are of, looks and layouts that are chosen", () => {
    const limit = { measure: 1, name: "cord on hand", relation: "<=", bound: 25 } as const;
    const program = formulate(
      choices({
        measures: [yarn, cord],
        limits: [limit],
        looks: [[look({ cost: 1 }), look({ cost: 2 })]],
        layouts: [[layout({ amounts: [99, 5] }), layout({ amounts: [99, 12] })]],
      }),
    );
    expect(program.rows.at(-1)).toEqual({ name: "cord on hand", relation: "<=", bound: 25 });
    // 10 + 5, 10 + 12 and 20 + 5 keep to 25, 20 + 12 do not.
    expect(allowedPicks(program)).toEqual(["0,0", "0,1", "1,0"]);
  });

  test("asked for beside come after those of the choices", () => {
    const { rows } = formulate(
      choices({
        measures: [cord],
        limits: [{ measure: 0, name: "most", relation: "<=", bound: 3 }],
        layouts: [[layout({ amounts: [0] })]],
      }),
      undefined,
      [{ measure: 0, name: "least", relation: ">=", bound: 1 }],
    );
    expect(rows.slice(1)).toEqual([
      { name: "most", relation: "<=", bound: 3 },
      { name: "least", relation: ">=", bound: 1 },
    ]);
  });
});

describe("placements that stand alike at a mark", () => {
  const on = (index: number, name: string): Field => field({ index, piece: piece({ name }) });
  const match = (mark: string, ...placements: readonly number[]) => ({ path: [], mark, placements });
  const phased = (of: Field, ...phases: readonly (readonly number[])[]): readonly Layout[] =>
    phases.map((own) => layout({ field: of, phases: own }));

  test("are tied phase by phase on the footing they share", () => {
    const program = formulate(
      choices({
        matches: [match("underarm", 0, 1)],
        layouts: [phased(on(0, "front"), [3], [5]), phased(on(1, "back"), [5], [3], [7])],
      }),
    );
    expect(program.rows.slice(2)).toEqual(
      [3, 5, 7].map((phase) => ({
        name: `match 1.1: 4+8n 3|3 x0 phase ${phase}`,
        relation: "=",
        bound: 0,
      })),
    );
    expect(allowedPicks(program)).toEqual(["0,0,1", "0,1,0"]);
  });

  test("are tied one after another where there are more than two", () => {
    const program = formulate(
      choices({
        matches: [match("underarm", 0, 1, 2)],
        layouts: ["front", "back", "sleeve"].map((name, index) => phased(on(index, name), [3], [5])),
      }),
    );
    expect(allowedPicks(program)).toEqual(["0,0,0,0", "0,1,1,1"]);
  });

  test("stand each at the mark of the match that ties them", () => {
    // The back is in both matches: its phases stand in their order. The sleeve is in the second alone.
    const program = formulate(
      choices({
        matches: [match("underarm", 0, 1), match("neck", 1, 2)],
        layouts: [
          phased(on(0, "front"), [3], [5]),
          phased(on(1, "back"), [3, 1], [5, 2]),
          phased(on(2, "sleeve"), [1], [2]),
        ],
      }),
    );
    expect(allowedPicks(program)).toEqual(["0,0,0,0", "0,1,1,1"]);
    expect(rowsOfOption(program, 2, 0).slice(1)).toEqual([
      ["match 1.1: 4+8n 3|3 x0 phase 3", -1],
      ["match 2.1: 4+8n 3|3 x0 phase 1", 1],
    ]);
  });
});

describe("placements that share a piece", () => {
  const shared = piece({ name: "front" });
  const on = (index: number, fromRow: number, toRow: number, more: Partial<Field> = {}): Field =>
    field({ index, piece: shared, fromRow, toRow, ...more });
  const changed = (of: Field, ...changes: readonly number[]): readonly Layout[] =>
    changes.map((change) => layout({ field: of, change, panel: apart(of.index) }));
  /** Panels beside one another, so that nothing but length ties them. */
  const apart = (index: number) => ({
    centres: [10 * index],
    mirrored: 0,
    leftEdge: 10 * index,
    rightEdge: 10 * index + 6,
  });

  test("in one field have one change of length", () => {
    const program = formulate(
      choices({
        layouts: [changed(on(0, 0, 20), 0, 1), changed(on(1, 0, 20), 1, 0), changed(on(2, 0, 20), 0, 1)],
      }),
    );
    expect(allowedPicks(program)).toEqual(["0,0,1,0", "0,1,0,1"]);
    expect(rowsOfOption(program, 1, 1)).toEqual([
      ["link 1 4+8n 3|3 x0", 1],
      ["change 1=2: 1 4+8n 3|3 x0", 1],
      ["change 1=3: 1 4+8n 3|3 x0", 1],
    ]);
  });

  test("in one field but of two motifs are tied whatever their footings", () => {
    const rope = on(1, 0, 20, { placement: placement({ motif: "rope" }) });
    const program = formulate(
      choices({
        looks: [[look()], [look({ name: "rope", trace: wideTrace })]],
        layouts: [changed(on(0, 0, 20), 0, 1), changed(rope, 0, 1).map((one) => ({ ...one, footing: wide }))],
      }),
    );
    expect(allowedPicks(program)).toEqual(["0,0,0,0", "0,0,1,1"]);
    expect(rowsOfOption(program, 2, 1)[1]).toEqual(["change 1=2: 1", 1]);
  });

  test("in fields apart keep the limits of the piece's length together", () => {
    const limits = { leastChange: -1, mostChange: 2 };
    const program = formulate(
      choices({
        layouts: [changed(on(0, 0, 20, limits), -1, 0, 2), changed(on(1, 20, 40, limits), -1, 0, 1, 2)],
      }),
    );
    expect(program.rows.slice(2)).toEqual([
      { name: "grow front", relation: "<=", bound: 2 },
      { name: "shrink front", relation: ">=", bound: -1 },
    ]);
    // Sums from -1 to 2: not -2 (both shorter), and not 3 or 4.
    expect(allowedPicks(program)).toEqual([
      "0,0,1",
      "0,0,2",
      "0,0,3",
      "0,1,0",
      "0,1,1",
      "0,1,2",
      "0,1,3",
      "0,2,0",
      "0,2,1",
    ]);
  });

  test("count the change of one field once, however many lie in it", () => {
    const limits = { leastChange: 0, mostChange: 2 };
    const program = formulate(
      choices({
        layouts: [
          changed(on(0, 0, 20, limits), 0, 1),
          changed(on(1, 0, 20, limits), 0, 1),
          changed(on(2, 20, 40, limits), 0, 1),
        ],
      }),
    );
    // All three by a row make two rows.
    expect(allowedPicks(program)).toEqual(["0,0,0,0", "0,0,0,1", "0,1,1,0", "0,1,1,1"]);
    expect(rowsOfOption(program, 2, 1).map(([name]) => name)).not.toContain("grow front");
  });

  test("take the widest limits of their fields, and those of the piece at every gauge", () => {
    const bounds = (
      more: Partial<Field>,
      other: Partial<Field> = more,
    ): readonly (readonly [string, number])[] =>
      formulate(
        choices({ layouts: [changed(on(0, 0, 20, more), -1, 1), changed(on(1, 20, 40, other), -1, 1)] }),
      )
        .rows.slice(2)
        .map(({ name, bound }) => [name, bound]);
    const limits = { leastChange: -3, mostChange: 4 };
    expect(bounds(limits, { leastChange: -5, mostChange: 2 })).toEqual([
      ["grow front", 4],
      ["shrink front", -5],
    ]);
    expect(bounds({ ...limits, steadyChanges: { least: -2, most: 3 } })).toEqual([
      ["grow front", 3],
      ["shrink front", -2],
    ]);
    expect(bounds({ ...limits, steadyChanges: { least: -9, most: 9 } })).toEqual([
      ["grow front", 4],
      ["shrink front", -3],
    ]);
  });

  test("have no such limits where none of their layouts changes anything", () => {
    const program = formulate(choices({ layouts: [changed(on(0, 0, 20), 0), changed(on(1, 20, 40), 0)] }));
    expect(program.rows).toHaveLength(2);
  });

  test("are held to a change that the piece has to make even where no layout makes any", () => {
    const limits = { leastChange: -5, mostChange: 5 };
    const picks = (least: number, most: number) => {
      const more = { ...limits, steadyChanges: { least, most } };
      return allowedPicks(
        formulate(choices({ layouts: [changed(on(0, 0, 20, more), 0), changed(on(1, 20, 40, more), 0)] })),
      );
    };
    expect([picks(0, 0), picks(1, 3), picks(-3, -1)]).toEqual([["0,0,0"], [], []]);
  });

  test("are of one variant where those are told apart, whatever changes", () => {
    const variants = (of: Field, ...own: readonly string[]): readonly Layout[] =>
      own.map((variant, index) => ({ ...changed(of, index)[0]!, variant }));
    const limits = { leastChange: 0, mostChange: 0 };
    const program = formulate(
      choices({
        layouts: [
          variants(on(0, 0, 20, limits), "0,0", "1,0", "1,1"),
          variants(on(1, 0, 20, limits), "1,0", "0,0"),
          variants(on(2, 20, 40, limits), "0,0", "1,0"),
        ],
      }),
    );
    expect(allowedPicks(program)).toEqual(["0,0,1,0", "0,1,0,1"]);
    // The variants keep the limits of length themselves.
    expect(program.rows.map(({ name }) => name).filter((name) => /grow|shrink|change/.test(name))).toEqual(
      [],
    );
    expect(rowsOfOption(program, 1, 0)[1]).toEqual(["length 1=2: 0,0 4+8n 3|3 x0", 1]);
  });

  test("are not tied to those of another piece", () => {
    const program = formulate(
      choices({
        layouts: [
          changed(on(0, 0, 20), 0, 1),
          changed(on(1, 0, 20, { piece: piece({ name: "back" }) }), 0, 1),
        ],
      }),
    );
    expect(allowedPicks(program)).toHaveLength(4);
  });
});

describe("motifs of one piece keep apart", () => {
  const shared = piece();
  interface Spot {
    readonly firstRow: number;
    readonly height: number;
    readonly leftEdge: number;
    readonly width: number;
  }
  const at = (of: Field, { firstRow, height, leftEdge, width }: Spot, change = 0): Layout =>
    layout({
      field: of,
      change,
      firstRow,
      height,
      bottom: firstRow - of.fromRow,
      top: of.toRow + change - firstRow - height,
      panel: { centres: [], mirrored: 0, leftEdge, rightEdge: leftEdge + width },
    });
  const spot = fc.record({
    firstRow: fc.integer({ min: 0, max: 5 }),
    height: fc.integer({ min: 1, max: 4 }),
    leftEdge: fc.integer({ min: -4, max: 3 }),
    width: fc.integer({ min: 1, max: 5 }),
  });

  /** Whether two rectangles share a row, both ends included, and a needle. */
  const meet = (one: Spot, other: Spot): boolean =>
    one.firstRow <= other.firstRow + other.height &&
    other.firstRow <= one.firstRow + one.height &&
    one.leftEdge < other.leftEdge + other.width &&
    other.leftEdge < one.leftEdge + one.width;

  test("exactly where their rectangles would share a needle on a row", () => {
    const some = fc.array(spot, { minLength: 1, maxLength: 3 });
    fc.assert(
      fc.property(fc.array(some, { minLength: 2, maxLength: 3 }), (spots) => {
        const program = formulate(
          choices({
            layouts: spots.map((own, index) =>
              own.map((one) => at(field({ index, piece: shared, fromRow: 0, toRow: 10 }), one)),
            ),
          }),
        );
        let picks: readonly (readonly number[])[] = [[]];
        for (const own of spots) picks = picks.flatMap((pick) => own.map((_, index) => [...pick, index]));
        const free = picks.filter((pick) => {
          const taken = pick.map((index, placed) => spots[placed]![index]!);
          return taken.every((one, index) => taken.slice(index + 1).every((other) => !meet(one, other)));
        });
        expect(allowedPicks(program)).toEqual(free.map((pick) => [0, ...pick].join()));
        // Each row ties several placements: a cell of one alone keeps nothing apart.
        for (const [row, { name }] of program.rows.entries()) {
          if (!name.startsWith("spot")) continue;
          const by = program.groups.filter(({ options }) =>
            options.some(({ terms }) => terms.some(([own]) => own === row)),
          );
          expect(by.length).toBeGreaterThan(1);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("in fields that overlap in part", () => {
    const low = { firstRow: 0, height: 12, leftEdge: -3, width: 6 };
    const picks = (firstRow: number) =>
      allowedPicks(
        formulate(
          choices({
            layouts: [
              [at(field({ index: 0, piece: shared, fromRow: 0, toRow: 20 }), low)],
              [at(field({ index: 1, piece: shared, fromRow: 10, toRow: 40 }), { ...low, firstRow })],
            ],
          }),
        ),
      );
    expect([picks(12), picks(13)]).toEqual([[], ["0,0,0"]]);
  });

  test("in each of two fields, where several lie in either", () => {
    const across = { height: 8, leftEdge: -3, width: 6 };
    const of = (index: number, fromRow: number) => {
      const own = field({ index, piece: shared, fromRow, toRow: fromRow + 20 });
      return [-3, 3].map((leftEdge) => at(own, { ...across, firstRow: fromRow + 2, leftEdge }));
    };
    const program = formulate(choices({ layouts: [of(0, 0), of(1, 0), of(2, 20), of(3, 20)] }));
    // One at the left and one at the right below, and so above.
    expect(allowedPicks(program)).toEqual(["0,0,1,0,1", "0,0,1,1,0", "0,1,0,0,1", "0,1,0,1,0"]);
  });

  test("in fields apart that a third overlaps, each with that one", () => {
    const across = { height: 8, leftEdge: -3, width: 6 };
    const of = (index: number, fromRow: number, toRow: number, ...firstRows: readonly number[]) =>
      firstRows.map((firstRow) =>
        at(field({ index, piece: shared, fromRow, toRow }), { ...across, firstRow }),
      );
    const program = formulate(
      choices({ layouts: [of(0, 0, 20, 0, 8), of(1, 10, 30, 10, 18), of(2, 20, 40, 20, 28)] }),
    );
    // Rows 0 to 8 or 8 to 16; 10 to 18 or 18 to 26; 20 to 28 or 28 to 36.
    expect(allowedPicks(program)).toEqual(["0,0,0,0", "0,0,0,1", "0,0,1,1", "0,1,1,1"]);
  });

  test("and need no row where their fields lie apart with a margin between them", () => {
    const program = formulate(
      choices({
        layouts: [
          [
            at(field({ index: 0, piece: shared, toRow: 20 }), {
              firstRow: 0,
              height: 19,
              leftEdge: 0,
              width: 6,
            }),
          ],
          [
            at(field({ index: 1, piece: shared, fromRow: 20 }), {
              firstRow: 20,
              height: 20,
              leftEdge: 0,
              width: 6,
            }),
          ],
        ],
      }),
    );
    expect(program.rows).toHaveLength(2);
  });

  describe("on the row between two fields", () => {
    const low = (index: number, more: Partial<Field> = {}): Field =>
      field({
        index,
        piece: shared,
        fromRow: 0,
        toRow: 20,
        sharedRows: { first: false, last: true },
        ...more,
      });
    const high = (index: number, more: Partial<Field> = {}): Field =>
      field({
        index,
        piece: shared,
        fromRow: 20,
        toRow: 40,
        sharedRows: { first: true, last: false },
        ...more,
      });
    const where = (firstRow: number, height: number, leftEdge = 0): Spot => ({
      firstRow,
      height,
      leftEdge,
      width: 6,
    });

    test("which only one of them can have", () => {
      const program = formulate(
        choices({
          layouts: [
            [at(low(0), where(0, 20)), at(low(0), where(0, 19, 3))],
            [at(high(1), where(20, 20)), at(high(1), where(21, 19)), at(high(1), where(20, 20, 6))],
          ],
        }),
      );
      // Both on row 20 at the same needles is all that cannot be.
      expect(allowedPicks(program)).toEqual(["0,0,1", "0,0,2", "0,1,0", "0,1,1", "0,1,2"]);
      expect(program.rows.slice(2)).toEqual([{ name: "between panel 20 0", relation: "<=", bound: 1 }]);
    });

    test("wherever a change of length has moved it", () => {
      const program = formulate(
        choices({
          layouts: [
            // Two rows longer it ends at row 22, which is then where the upper field begins; or two rows below that.
            [at(low(0, { mostChange: 2 }), where(0, 22), 2), at(low(0, { mostChange: 2 }), where(0, 20), 2)],
            [at(high(1), where(20, 20)), at(high(1), where(21, 18))],
          ],
        }),
      );
      expect(allowedPicks(program)).toEqual(["0,0,1", "0,1,0", "0,1,1"]);
    });

    test("and what lies side by side in a field that grows does not reach into the one above", () => {
      const layouts = [low(0, { mostChange: 2 }), low(1, { mostChange: 2 }), high(2), high(3)].map(
        (of, index) => [
          of.fromRow === 0 ? at(of, where(0, 21, 6 * index), 2) : at(of, where(20, 19, 6 * (index - 2))),
        ],
      );
      // Rows 0 to 21 of 22, and rows 22 to 41 as they come to lie.
      expect(allowedPicks(formulate(choices({ layouts })))).toEqual(["0,0,0,0,0"]);
    });
  });

  test("as long as the cells they cover, and the program's terms for them, can be held in memory", () => {
    const at0 = { firstRow: 0, height: 4, leftEdge: 0, width: 2 };
    // Two first rows and two left edges: the first covers all four cells, the second the one at its corner, which makes
    // a term for each of them.
    const layouts = [
      [at(field({ index: 0, piece: shared, toRow: 9 }), at0)],
      [at(field({ index: 1, piece: shared, toRow: 9 }), { ...at0, firstRow: 2, leftEdge: 1 })],
    ];
    const work = () => formulate(choices({ layouts }));
    expect([holdsMoreThan(4.5, work), holdsMoreThan(4.25, work)]).toEqual([false, true]);
    // One that is alone covers none.
    expect(holdsMoreThan(0, () => formulate(choices({ layouts: layouts.slice(0, 1) })))).toBe(false);
  });
});

test("looks, layouts, lengths and marks together allow exactly what goes together", () => {
  const front: Piece = piece({ name: "front" });
  const back: Piece = piece({ name: "back" });
  const footings = [footing(), wide];
  const traces = [trace(), wideTrace];
  const limits = { leastChange: -1, mostChange: 1 };
  const fields = [
    field({ index: 0, piece: front, fromRow: 0, toRow: 20, ...limits, matchedRows: [5] }),
    field({
      index: 1,
      piece: front,
      fromRow: 20,
      toRow: 40,
      ...limits,
      placement: placement({ motif: "rope" }),
    }),
    field({ index: 2, piece: back, ...limits, matchedRows: [5] }),
  ];
  const own = fc.record({
    on: fc.integer({ min: 0, max: 1 }),
    change: fc.integer({ min: -1, max: 1 }),
    phase: fc.integer({ min: 0, max: 1 }),
    amount: fc.integer({ min: 0, max: 3 }),
  });
  const some = fc.array(own, { minLength: 1, maxLength: 3 });
  fc.assert(
    fc.property(fc.tuple(some, some, some), (ways) => {
      const layouts = ways.map((ofPlacement, index) =>
        ofPlacement.map(({ on, change, phase, amount }) =>
          layout({
            field: fields[index]!,
            footing: footings[on]!,
            change,
            phases: index === 1 ? [] : [phase],
            amounts: [amount],
          }),
        ),
      );
      const looks: readonly (readonly Look[])[] = ["plait", "rope"].map((name) =>
        traces.map((of) => look({ name, trace: of })),
      );
      const measure: Measure = { name: "cord", ofLook: () => 1, ofLayout: () => 0 };
      const program = formulate({
        matches: [{ path: [], mark: "underarm", placements: [0, 2] }],
        measures: [measure],
        limits: [{ measure: 0, name: "cord on hand", relation: "<=", bound: 7 }],
        looks,
        layouts,
      });
      const allowed: string[] = [];
      for (const plait of [0, 1])
        for (const rope of [0, 1])
          for (const [a, one] of layouts[0]!.entries())
            for (const [b, other] of layouts[1]!.entries())
              for (const [c, third] of layouts[2]!.entries()) {
                const key = (index: number): string => footingKey(footingOf(traces[index]!));
                const stands = (of: Layout, index: number): boolean => footingKey(of.footing) === key(index);
                const amount = 2 + one.amounts[0]! + other.amounts[0]! + third.amounts[0]!;
                if (
                  stands(one, plait) &&
                  stands(other, rope) &&
                  stands(third, plait) &&
                  Math.abs(one.change + other.change) <= 1 &&
                  one.phases[0] === third.phases[0] &&
                  amount <= 7
                )
                  allowed.push([plait, rope, a, b, c].join());
              }
      expect(allowedPicks(program)).toEqual(allowed);
    }),
    { numRuns: 60 },
  );
});
