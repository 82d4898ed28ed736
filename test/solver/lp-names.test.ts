import { describe, expect, it } from "vitest";
import { lpNames } from "../../solver/lp-names.ts";

const columnNames = (...names: string[]) =>
  lpNames({ columns: names.map((name) => ({ name, cost: 0, whole: false })), rows: [] }).columns;

describe("lpNames", () => {
  it("leaves legal names as they are", () => {
    expect(columnNames("sleeve.layout_4", "Edge", "eaves")).toEqual(["sleeve.layout_4", "Edge", "eaves"]);
  });

  it("replaces what the format does not allow", () => {
    expect(columnNames("a + b", "3 rows", ".5", "Ärmel", "", "袖")).toEqual([
      "a_b",
      "x_3_rows",
      "x_.5",
      "Armel",
      "x_",
      "x__",
    ]);
  });

  it("keeps away from exponents and from words of the format", () => {
    expect(columnNames("e", "E5", "e_4", "End", "free", "s.t.", "Generals")).toEqual([
      "x_e",
      "x_E5",
      "x_e_4",
      "x_End",
      "x_free",
      "x_s.t.",
      "x_Generals",
    ]);
  });

  it("makes names unique, whatever their case, and keeps them so", () => {
    expect(columnNames("a", "A", "a_2", "a", "a")).toEqual(["a", "A_2", "a_2_2", "a_3", "a_4"]);
    const many = columnNames(...Array.from({ length: 500 }, () => "long ".repeat(60)));
    expect(new Set(many).size).toBe(500);
    for (const name of many) expect(name.length).toBeLessThan(100);
  });

  it("keeps rows away from the objective's name", () => {
    const row = { terms: [], relation: "=" as const, bound: 0 };
    expect(lpNames({ columns: [], rows: [{ ...row, name: "cost" }] }).rows).toEqual(["cost_2"]);
  });
});
