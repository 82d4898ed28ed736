import type { Path } from "./path.ts";

export type Severity = "error" | "warning" | "note";

/** One thing to tell the knitter about the file, as data; renderers turn it into text or JSON. */
export interface Diagnostic {
  /** A note says where a value came from; nothing has to be done about it. */
  readonly severity: Severity;
  /** Stable short name of the kind of mistake, such as `unknown-key`. */
  readonly code: string;
  /** What is wrong, in one sentence. */
  readonly message: string;
  /** What was read, where showing it helps. */
  readonly found?: string;
  /** What would be right. */
  readonly expected?: string;
  /** The value it is about, by path; the source turns it into a place. */
  readonly path: Path;
  readonly place?: Place;
}

/** Line and column count from 1. */
export interface Place {
  readonly line: number;
  readonly column: number;
}
