import { expect, it } from "vitest";
import { programFault } from "../../solver/program-fault.ts";

const column = { name: "width", cost: 1, whole: false };
const row = { name: "edge", terms: [[0, 1]] as const, relation: "<=" as const, bound: 1 };

it("finds nothing wrong with finite numbers", () => {
  expect(programFault({ columns: [column], rows: [row] })).toBeUndefined();
});

it("names the column or the row and the number", () => {
  expect(programFault({ columns: [{ ...column, cost: Number.NaN }], rows: [] })).toBe(
    'The cost of column "width" is NaN, not a finite number.',
  );
  expect(programFault({ columns: [{ ...column, upper: Infinity }], rows: [] })).toContain('"width"');
  expect(programFault({ columns: [column], rows: [{ ...row, bound: -Infinity }] })).toContain('row "edge"');
  expect(programFault({ columns: [column], rows: [{ ...row, terms: [[0, Number.NaN]] }] })).toBe(
    'The coefficient of column "width" in row "edge" is NaN, not a finite number.',
  );
  expect(programFault({ columns: [column], rows: [{ ...row, terms: [[1, 2]] }] })).toBe(
    'Row "edge" names column 1, which is not there.',
  );
});
