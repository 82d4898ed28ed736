import fc from "fast-check";
import loadHighs from "highs";
import { describe, expect, it } from "vitest";
import { lpNames } from "../../solver/lp-names.ts";
import { programToLpText } from "../../solver/lp-text.ts";
import type { Column, Program, Relation } from "../../solver/program.ts";
import { leastCost } from "./support/exhaustive.ts";
import { solveTextWithGlpk } from "./support/glpk-engine.ts";
import { readLp } from "./support/lp-reader.ts";
import { wholeProgram } from "./support/random-programs.ts";

const column = (name: string, more: Partial<Column> = {}): Column => ({
  name,
  cost: 1,
  whole: false,
  ...more,
});

describe("programToLpText", () => {
  it("writes every part of a program", () => {
    const program: Program = {
      columns: [
        column("look 4/3", { cost: 1.637, whole: true, upper: 1 }),
        column("repeats", { cost: -2, whole: true, upper: 99 }),
        column("spare", { cost: 0 }),
        column("Länge", { cost: 0.1, upper: 12.5 }),
        column("fixed", { cost: 0, upper: 0 }),
        column("below", { cost: 0, whole: true, upper: -3 }),
      ],
      rows: [
        { name: "one look", terms: [[0, 1]], relation: "=", bound: 1 },
        {
          name: "rows",
          terms: [
            [1, 8],
            [3, -1],
            [3, -0.5],
          ],
          relation: "<=",
          bound: 68,
        },
        { name: "rows", terms: [], relation: ">=", bound: -1e-7 },
      ],
    };
    expect(programToLpText(program, { comments: ["A sleeve,", "", "written as an example"] })).toBe(
      [
        "\\ A sleeve,",
        "\\",
        "\\ written as an example",
        "Minimize",
        " cost: 1.637 look_4_3 - 2 repeats + 0 spare + 0.1 Lange + 0 fixed",
        "Subject To",
        " one_look: look_4_3 = 1",
        " rows: 8 repeats - 1.5 Lange <= 68",
        " rows_2: 0 look_4_3 >= -1e-7",
        " upper_bound_of_below: below <= -3",
        "Bounds",
        " repeats <= 99",
        " Lange <= 12.5",
        " fixed = 0",
        "Binaries",
        " look_4_3",
        "Generals",
        " repeats below",
        "End",
        "",
      ].join("\n"),
    );
  });

  it("writes a program without columns so that it can be read", () => {
    const text = programToLpText({ columns: [], rows: [{ name: "r", terms: [], relation: "<=", bound: 1 }] });
    expect(readLp(text).rows).toHaveLength(1);
    expect(solveTextWithGlpk(text)).toMatchObject({ status: "optimal", cost: 0 });
  });

  it("gives a program without rows one that always holds, which GLPK asks for", () => {
    const text = programToLpText({ columns: [column("a", { upper: 2, cost: -1 })], rows: [] });
    expect(text).toContain("\nSubject To\n no_rows: 0 a >= 0\n");
    expect(solveTextWithGlpk(text)).toMatchObject({ status: "optimal", cost: -2 });
  });

  it("keeps lines short however many terms a row has and however long the comments are", () => {
    const columns = Array.from({ length: 200 }, (_, index) =>
      column(`a column with a rather long name ${index} `.repeat(4)),
    );
    const terms = columns.map((_, index) => [index, 1 / (index + 3)] as const);
    const text = programToLpText(
      { columns, rows: [{ name: "all", terms, relation: ">=", bound: 1 }] },
      { comments: ["word ".repeat(300)] },
    );
    for (const line of text.split("\n")) expect(line.length).toBeLessThan(255);
    const [row] = readLp(text).rows;
    expect(row?.terms.map(({ coefficient }) => coefficient)).toEqual(
      terms.map(([, coefficient]) => coefficient),
    );
  });

  it("refuses numbers that have no place in a text", () => {
    expect(() => programToLpText({ columns: [column("a", { cost: Number.NaN })], rows: [] })).toThrow(
      RangeError,
    );
  });

  it("says exactly what the program says", () => {
    const size = fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e12, max: 1e12 });
    const anyProgram: fc.Arbitrary<Program> = fc.record({
      columns: fc.array(
        fc.record({
          name: fc.string({ unit: "grapheme", maxLength: 12 }),
          cost: size,
          whole: fc.boolean(),
          upper: fc.double({ min: 0, max: 1e9, noNaN: true }),
        }),
        { minLength: 3, maxLength: 3 },
      ),
      rows: fc.array(
        fc.record({
          name: fc.string({ unit: "grapheme", maxLength: 12 }),
          terms: fc.array(fc.tuple(fc.nat(2), size), { maxLength: 3 }),
          relation: fc.constantFrom<Relation>("<=", "=", ">="),
          bound: size,
        }),
        { maxLength: 4 },
      ),
    });
    fc.assert(
      fc.property(anyProgram, (program) => {
        const names = lpNames(program);
        const model = readLp(programToLpText(program));
        const coefficients = (terms: readonly { name: string; coefficient: number }[]) =>
          new Map(terms.map(({ name, coefficient }) => [name, coefficient]));
        const objective = coefficients(model.objective);
        program.columns.forEach(({ cost, whole, upper }, index) => {
          const name = names.columns[index]!;
          expect(objective.get(name) ?? 0).toBe(cost + 0);
          expect(model.binaries.has(name)).toBe(whole && upper === 1);
          expect(model.generals.has(name)).toBe(whole && upper !== 1);
          if (!model.binaries.has(name)) expect(model.bounds.get(name)?.high).toBe(upper);
        });
        program.rows.forEach(({ terms, relation, bound }, index) => {
          const read = model.rows[index]!;
          expect([read.name, read.relation, read.bound]).toEqual([names.rows[index], relation, bound + 0]);
          const found = coefficients(read.terms);
          program.columns.forEach((_, at) => {
            const sum = terms.reduce((total, [of, by]) => (of === at ? total + by : total), 0);
            expect(found.get(names.columns[at]!) ?? 0).toBe(sum);
          });
        });
      }),
      { seed: 30, numRuns: 300 },
    );
  });

  it("leads HiGHS and GLPK to the optimum of trying every point", async () => {
    const highs = await loadHighs();
    fc.assert(
      fc.property(wholeProgram, (program) => {
        const text = programToLpText(program);
        const least = leastCost(program);
        const byHighs = highs.solve(text, { output_flag: false });
        const byGlpk = solveTextWithGlpk(text);
        if (least === undefined) {
          expect([byHighs.Status, byGlpk.status]).toEqual(["Infeasible", "infeasible"]);
          return;
        }
        expect(byHighs.ObjectiveValue).toBeCloseTo(least, 6);
        expect(byGlpk.cost).toBeCloseTo(least, 6);
      }),
      { seed: 31, numRuns: 300 },
    );
  });
});
