import { describe, expect, test } from "vitest";
import { assemble } from "../../../src/fit/assemble.ts";
import { enumerate } from "../../../src/fit/enumerate.ts";
import { type Field, fieldsOf } from "../../../src/fit/field.ts";
import type { Garment, Piece, Placement } from "../../../src/garment/garment.ts";
import type { Motif } from "../../../src/motif/motif.ts";
import { garmentOf } from "../../support/run-garment.ts";
import { threeByFour } from "../../support/three-by-four.ts";
import { footing, garment, layout, look, piece, placement, trace } from "./support/plain-parts.ts";

/** A panel of 40 rows with a mark at row 20. */
const marked = (changes: Partial<Piece> = {}): Piece =>
  piece({ marks: [...piece().marks, { name: "middle", heightMm: 80 }], ...changes });

const garmentWith = (placements: readonly Partial<Placement>[], changes: Partial<Garment> = {}): Garment =>
  garment({ pieces: [marked()], placements: placements.map(placement), ...changes });

const term = (name: string, cost: number) => ({ term: name, amount: cost, unit: "rows", weight: 1, cost });

describe("a placement", () => {
  test("is laid where its layout says, with what is left on all sides", () => {
    const own = garmentWith([{}]);
    const [of] = fieldsOf(own);
    const chosen = look();
    const { placements, looks, pieces, garment: same } = assemble(own, [chosen], [layout({ field: of! })]);
    expect(same).toBe(own);
    expect(looks).toEqual([chosen]);
    expect(pieces.map(({ name, rows }) => [name, rows])).toEqual([["panel", 40]]);
    // A lead-in of 4 rows and 4 repeats of 8 above 2 rows; 3 of 20 needles to each side.
    expect(placements).toEqual([
      {
        index: 0,
        piece: "panel",
        motif: "plait",
        sections: [{ look: chosen, repeats: 4, joins: [] }],
        repeats: 4,
        columns: 1,
        gap: 0,
        change: 0,
        firstRow: 2,
        lastRow: 38,
        margins: { bottom: 2, top: 2, left: 17, right: 17 },
        panel: { centres: [0], mirrored: 0, leftEdge: -3, rightEdge: 3 },
      },
    ]);
  });

  test("has its margins at the narrowest row that it covers", () => {
    // 40 needles at the cast-on, 50 from row 10 on: 25 to each side, whatever is below the motif.
    const wider = marked({
      outline: [
        { heightMm: 0, widthMm: 120 },
        { heightMm: 40, widthMm: 150 },
        { heightMm: 160, widthMm: 150 },
      ],
    });
    const own = garmentWith([{ from: "middle" }], { pieces: [wider] });
    const [of] = fieldsOf(own);
    const panel = { centres: [2], mirrored: 0, leftEdge: -1, rightEdge: 5 };
    const [placed] = assemble(
      own,
      [look()],
      [layout({ field: of!, repeats: 1, bottom: 4, top: 4, panel })],
    ).placements;
    expect([placed!.firstRow, placed!.lastRow, placed!.margins]).toEqual([
      24,
      36,
      { bottom: 4, top: 4, left: 24, right: 20 },
    ]);
  });

  test("stands on the look of its own motif and on its own piece", () => {
    const sleeve = marked({
      name: "sleeve",
      outline: [
        { heightMm: 0, widthMm: 60 },
        { heightMm: 200, widthMm: 60 },
      ],
    });
    const own = garmentWith([{}, { motif: "rope", piece: "sleeve" }], { pieces: [marked(), sleeve] });
    const fields = fieldsOf(own);
    const looks = [look(), look({ name: "rope" })];
    const { placements } = assemble(
      own,
      looks,
      fields.map((of) => layout({ field: of })),
    );
    expect(placements.map(({ sections }) => sections[0]!.look)).toEqual(looks);
    // 10 needles to each side of the sleeve.
    expect(placements.map(({ margins }) => margins.left)).toEqual([17, 7]);
  });
});

describe("the pieces", () => {
  test("are as long as their fields make them, those above moved up", () => {
    const own = garmentWith([{ to: "middle" }, { from: "middle" }], {
      pieces: [marked({ growMm: 40, shrinkMm: 40 }), marked({ name: "plain" })],
    });
    const [low, high] = fieldsOf(own);
    const { pieces, placements } = assemble(
      own,
      [look()],
      [
        layout({ field: low!, repeats: 1, change: 3, bottom: 5 }),
        layout({ field: high!, repeats: 1, change: -1, bottom: 4 }),
      ],
    );
    expect(pieces.map(({ rows }) => rows)).toEqual([42, 40]);
    expect(pieces[0]!.marks.get("middle")).toBe(23);
    expect(placements.map(({ firstRow, lastRow, change }) => [firstRow, lastRow, change])).toEqual([
      [5, 17, 3],
      [27, 39, -1],
    ]);
  });

  test("change once for several motifs in one field", () => {
    const own = garmentWith([{}, {}], { pieces: [marked({ growMm: 40 })] });
    const layouts = fieldsOf(own).map((of) => layout({ field: of, change: 2 }));
    expect(assemble(own, [look()], layouts).pieces[0]!.rows).toBe(42);
  });

  test("have needles added for all that is drawn in on them", () => {
    const rope = { name: "rope", kind: "cable", drawIn: 0.5 } as Motif;
    const own = garmentWith([{ motif: "rope" }, { motif: "rope" }, {}, { motif: "rope", piece: "other" }], {
      pieces: [marked(), marked({ name: "other" })],
    });
    const crossing = footing({ crossedStitches: 4 });
    const layouts = fieldsOf(own).map((of, index) =>
      layout({ field: of, footing: crossing, columns: index === 0 ? 2 : 1 }),
    );
    const { pieces } = assemble(own, [look({ motif: rope }), look()], layouts);
    // 2 + 1 columns of 4 stitches lose half, 6: 3 needles at each side; on the other piece 2: 1 needle.
    expect(pieces.map(({ left, right }) => [left[0], right[0]])).toEqual([
      [23, 23],
      [21, 21],
    ]);
  });
});

describe("a growing motif", () => {
  const section = (reach: number, repeats: number) => ({
    look: look({ trace: trace({ reach: { left: reach, right: reach } }) }),
    repeats,
    joins: [],
  });
  const grown = (of: Field) =>
    layout({ field: of, repeats: 3, sections: [section(2, 1), section(5, 2)], bottom: 0 });

  test("is told by the look it begins with, and by its sections", () => {
    const own = garmentWith([{}, { motif: "rope" }]);
    const [of, other] = fieldsOf(own);
    const layouts = [layout({ field: other! }), grown(of!)];
    const settled = [look(), look({ name: "rope" })];
    const { looks, placements } = assemble(own, settled, layouts);
    expect(looks).toEqual([layouts[1]!.sections![0]!.look, settled[1]]);
    expect(placements[1]!.sections).toBe(layouts[1]!.sections);
    expect(placements[1]!.lastRow).toBe(28);
  });

  test("that is laid nowhere is told by its own look", () => {
    const own = garmentWith([{}]);
    const [of] = fieldsOf(own);
    const settled = [look(), look({ name: "rope" })];
    expect(assemble(own, settled, [layout({ field: of! })]).looks).toEqual(settled);
  });

  test("has its margins where it comes nearest to an edge", () => {
    // 20 needles to each side up to row 12, then steadily fewer, down to 10 at row 40.
    const tapered = marked({
      outline: [
        { heightMm: 0, widthMm: 120 },
        { heightMm: 48, widthMm: 120 },
        { heightMm: 160, widthMm: 60 },
      ],
    });
    const own = garmentWith([{}], { pieces: [tapered] });
    const [of] = fieldsOf(own);
    const { placements, pieces } = assemble(own, [look()], [grown(of!)]);
    // It ends at row 28, 5 needles wide; below row 12 it is 2 wide.
    expect(placements[0]!.margins.left).toBe(pieces[0]!.left[28]! - 5);
    expect(pieces[0]!.left[28]!).toBeLessThan(20);
  });
});

describe("what a fit gives up", () => {
  test("is what its looks do and then what its layouts do, and their sum", () => {
    const own = garmentWith([{}]);
    const [of] = fieldsOf(own);
    const { terms, cost } = assemble(
      own,
      [look({ terms: [term("ease", 2)] })],
      [layout({ field: of!, terms: [term("length", 3), term("balance", 0.5)] })],
    );
    expect(terms.map((one) => one.term)).toEqual(["ease", "length", "balance"]);
    expect(cost).toBe(5.5);
  });

  test("is what is left over, too, where as little as can be is to be, just as its choices were weighed", () => {
    const own = garmentOf({
      ...threeByFour,
      "on hand": { cord: "2 m", prefer: "least waste" },
      pieces: {
        panel: {
          outline: [
            { height: "0 cm", width: "12 cm" },
            { height: "16 cm", width: "12 cm" },
          ],
        },
      },
      motifs: {
        rails: {
          kind: "cord",
          quantities: {},
          lead: 0,
          repeat: 5,
          strands: { one: { start: [1, 0], repeat: [[1, 5]] } },
          ease: { from: "-30 %", to: "30 %", prefer: "0 %" },
        },
      },
      place: [{ motif: "rails", on: "panel", repeats: { allow: "5..8", prefer: 8 } }],
    });
    const { looks, layouts } = enumerate(own);
    const chosen = looks[0]![0]!;
    const under = layouts[0]!.filter((one) => one.footing.goingOn === chosen.footing!.goingOn);
    expect(under.length).toBeGreaterThan(1);
    for (const one of under) {
      const fit = assemble(own, [chosen], [one]);
      expect(fit.terms.at(-1)).toMatchObject({ term: "waste", supply: "cord" });
      expect(fit.cost).toBeCloseTo(chosen.cost + one.cost, 6);
    }
  });

  test("is nothing more for what is worked of an unfinished repeat", () => {
    const own = garmentWith([{ unfinished: "part" }]);
    const [of] = fieldsOf(own);
    const band = look({ motif: { name: "plait", kind: "band", colours: 1 } as Motif });
    const fit = assemble(own, [band], [layout({ field: of!, repeats: 3, bottom: 2, top: 10 })]);
    // Rows 2 to 30 of 40: a whole repeat more would go to row 38.
    expect(fit.placements[0]!.part).toEqual({ lastRow: 38, rows: 8, columns: [] });
    expect(fit.placements[0]!.lastRow).toBe(30);
    expect([fit.terms, fit.cost]).toEqual([[], 0]);
  });
});
