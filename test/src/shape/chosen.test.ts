import { expect, test } from "vitest";
import { chosen } from "../../../src/shape/chosen.ts";

const choices = new Map([["neck", "boat"]]);

test("what hangs on no choice is taken as it stands", () => {
  expect(chosen("width / 3", choices)).toBe("width / 3");
});

test("what hangs on a choice is taken by its word, then by the rest, else not at all", () => {
  expect(chosen({ by: "neck", when: { boat: "wide" }, else: "narrow" }, choices)).toBe("wide");
  expect(chosen({ by: "neck", when: { V: "deep" }, else: "narrow" }, choices)).toBe("narrow");
  expect(chosen({ by: "neck", when: { V: "deep" } }, choices)).toBeUndefined();
  expect(chosen({ by: "armhole", when: { drop: "straight" }, else: "curved" }, choices)).toBe("curved");
});
