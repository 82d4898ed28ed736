import { frontier } from "../../solver/choice.ts";
import { highsEngine } from "../../solver/highs-engine.ts";
import { prepare } from "../../src/fit/prepare.ts";
import { measuredProgram, measuresOf } from "../../src/tradeoff/measured.ts";
import { tradeTerms } from "../../src/tradeoff/trade-term.ts";
import { garmentWith } from "./garments.ts";
import { medianMs } from "./measure.ts";

const times = 3;
const traded = ["length", "balance"];

/** The trade-off of length for balance settled group by group, beside HiGHS searching the same program zone by zone. */
export async function benchTrades(): Promise<readonly string[]> {
  const lines = [
    `Trade-off between ${traded.join(" and ")}, the choices worked out, medians of ${times} runs`,
  ];
  for (const placements of [3, 9]) {
    const garment = garmentWith(placements);
    const terms = tradeTerms(garment).filter(({ name }) => traded.includes(name));
    const named = new Set(traded);
    const measures = measuresOf(terms, named);
    const prepared = prepare(garment, { fits: 1, measures })!;
    const unbounded = terms.map(() => Number.POSITIVE_INFINITY);
    const { program, rows } = measuredProgram(prepared, terms, named, measures, unbounded);
    const { points } = await frontier(program, rows, highsEngine);
    // A copy is not known from before, so that looking up its rows counts as well.
    const settling = await medianMs(times, () => frontier(structuredClone(program), rows, highsEngine));
    const searching = await medianMs(times, () =>
      frontier(structuredClone(program), rows, highsEngine, { work: 0 }),
    );
    lines.push(
      `  ${placements} placements, ${points.length} points: ${settling.toFixed(1)} ms settled, ${searching.toFixed(1)} ms by HiGHS, ratio ${(settling / searching).toFixed(2)}`,
    );
  }
  return lines;
}
