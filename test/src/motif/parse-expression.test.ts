import { describe, expect, it } from "vitest";
import { parseExpression } from "../../../src/motif/parse-expression.ts";

const NAMES = new Set(["interval"]);

describe("parseExpression", () => {
  it("takes a number as it is", () => {
    expect(parseExpression(-2, NAMES, ["lead"])).toEqual({
      expression: { source: "-2", path: ["lead"], tree: { kind: "number", value: -2 } },
    });
  });

  it("keeps what was written, and where", () => {
    expect(parseExpression(" interval ", NAMES, ["motifs", "plait", "lead"])).toEqual({
      expression: {
        source: " interval ",
        path: ["motifs", "plait", "lead"],
        tree: { kind: "quantity", name: "interval" },
      },
    });
  });

  it("tells the character at which a sum goes wrong", () => {
    expect(parseExpression("2 * intervall", NAMES, [])).toMatchObject({
      problem: { code: "expression-unknown-name", offset: 4, found: "intervall", expected: "interval" },
    });
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY])("refuses the number %d", (value) => {
    expect(parseExpression(value, NAMES, [])).toHaveProperty("problem");
  });
});
