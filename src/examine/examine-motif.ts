import type { Diagnostic } from "../diagnostics/diagnostic.ts";
import { allowedValues, valuesOf } from "../fit/looks.ts";
import type { Motif } from "../motif/motif.ts";
import { isProblem, traceMotif } from "../motif/trace-motif.ts";

/** Combinations of quantities that are worked out in well under a second. */
const mostCombinations = 20_000;

/** Hangings or crossings over all of them that are worked out in a few seconds. */
const mostPlaces = 3_000_000;

/** Strands or cables for which no time is lost on comparing each with each. */
const fewBlocks = 24;

/** Every combination of allowed values must give whole needles and rows, or its rules must keep it out. */
export function examineMotif(motif: Motif): readonly Diagnostic[] {
  const combinations = motif.quantities.reduce((all, quantity) => all * allowedValues(quantity).length, 1);
  const most = Math.max(1, Math.min(mostCombinations, Math.floor(mostPlaces / placesOf(motif))));
  if (combinations > most)
    return [
      {
        severity: "error",
        code: "too-many-looks",
        message: `${motif.name} could look in ${combinations} ways, more than can be tried`,
        expected: `at most ${most}: allow fewer values for some of ${motif.quantities.map(({ name }) => name).join(", ")}`,
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

/** How many places have to be worked out for one combination; of very many strands or cables, weighed by their number. */
function placesOf(motif: Motif): number {
  const blocks = motif.kind === "cord" ? motif.strands : motif.kind === "cable" ? motif.cables : [];
  const places = blocks.reduce((sum, { leadIn, repeat }) => sum + 1 + leadIn.length + repeat.length, 0);
  return Math.max(1, places * Math.ceil(blocks.length / fewBlocks));
}
