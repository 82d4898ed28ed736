import { evaluateTree } from "../arithmetic/evaluate-tree.ts";
import { parseArithmetic } from "../arithmetic/parse-arithmetic.ts";
import { quoted } from "../diagnostics/shown.ts";
import { type UnitProblem, unitProblem } from "./problem.ts";

/** Longer than any percentage that is a sum of a few numbers. */
const LONGEST_PERCENTAGE = 40;

const NO_NAMES: ReadonlySet<string> = new Set();

/**
 * Reads a percentage: a number, or a sum of numbers, and one % after it: `2 %`, `-5%`.
 *
 * @returns the percentage as a fraction (2 % is 0.02), of either sign, or what is wrong with the text
 */
export function parsePercentage(
  text: string,
): { readonly fraction: number } | { readonly problem: UnitProblem } {
  const written = text.trim();
  if (written.length > LONGEST_PERCENTAGE) {
    return unitProblem("not-a-percentage", "this is too long for a percentage", "a percentage such as 2 %");
  }
  const number = written.replace(/%$/, "").trim();
  if (/^[-+]?\d+,\d+$/.test(number)) {
    return unitProblem("decimal-comma", "decimals are written with a point", `${number.replace(",", ".")} %`);
  }
  const parsed = parseArithmetic(number, NO_NAMES);
  if ("problem" in parsed) {
    return unitProblem(
      "not-a-percentage",
      `${quoted(written)} is not a percentage`,
      "a percentage such as 2 %",
    );
  }
  if (!written.endsWith("%")) {
    return unitProblem("missing-percent", "a percentage needs its %", `${number} %`);
  }
  const value = evaluateTree(parsed.tree, {});
  return typeof value === "number"
    ? { fraction: value / 100 }
    : unitProblem("not-a-percentage", value.problem, "a percentage such as 2 %");
}
