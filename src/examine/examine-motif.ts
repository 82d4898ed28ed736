import type { Diagnostic } from "../diagnostics/diagnostic.ts";
import { allowedValues, valuesOf } from "../fit/looks.ts";
import type { Motif } from "../motif/motif.ts";
import { isProblem, traceMotif } from "../motif/trace-motif.ts";

/** Combinations of quantities that are worked out in well under a second. */
const mostCombinations = 20_000;

/** Every combination of allowed values must give whole needles and rows, or its rules must keep it out. */
export function examineMotif(motif: Motif): readonly Diagnostic[] {
  const combinations = motif.quantities.reduce((all, quantity) => all * allowedValues(quantity).length, 1);
  if (combinations > mostCombinations)
    return [
      {
        severity: "error",
        code: "too-many-looks",
        message: `${motif.name} could look in ${combinations} ways, more than can be tried`,
        expected: `at most ${mostCombinations}: allow fewer values for some of ${motif.quantities.map(({ name }) => name).join(", ")}`,
        path: motif.path,
      },
    ];
  const problems = new Map<string, Diagnostic>();
  for (const values of valuesOf(motif)) {
    const trace = traceMotif(motif, values);
    if (!isProblem(trace)) continue;
    const key = JSON.stringify(trace.path);
    if (!problems.has(key))
      problems.set(key, {
        severity: "error",
        code: "anchor",
        message: `${motif.name}: ${trace.problem}`,
        expected:
          "a place on whole needles and rows for every allowed value, or a rule that keeps the others out",
        path: trace.path,
      });
  }
  return [...problems.values()];
}
