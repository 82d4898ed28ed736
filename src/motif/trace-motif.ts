import type { Path } from "../diagnostics/path.ts";
import type { Motif } from "./motif.ts";
import type { Trace, Values } from "./trace.ts";
import { traceBand } from "./tracing/band.ts";
import { traceCables } from "./tracing/cable.ts";
import { traceCord } from "./tracing/cord.ts";
import { count, Refusal } from "./tracing/numbers.ts";

/** Why a motif cannot be worked with some values; `path` is the expression it is about. */
export interface TraceProblem {
  readonly path: Path;
  readonly problem: string;
}

export const isProblem = (result: Trace | TraceProblem): result is TraceProblem => "problem" in result;

/** Works out a motif for given values, or says why it cannot be worked with them. */
export function traceMotif(motif: Motif, values: Values): Trace | TraceProblem {
  try {
    const rows = {
      leadRows: count(motif.lead, values, "the lead-in", 0),
      repeatRows: count(motif.repeat, values, "a repeat", 1),
    };
    switch (motif.kind) {
      case "cord":
        return traceCord(motif, values, rows);
      case "cable":
        return traceCables(motif, values, rows);
      case "band":
        return traceBand(motif, values, rows);
    }
  } catch (thrown) {
    if (thrown instanceof Refusal) return { path: thrown.path, problem: thrown.message };
    throw thrown;
  }
}
