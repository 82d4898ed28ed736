/**
 * A linear program as plain data: minimise `sum of cost * x` over the columns, subject to the rows, every x at
 * least 0. Whole columns take whole numbers only.
 */
export interface Program {
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
}

/** One unknown, called x. */
export interface Column {
  /** For people; neither uniqueness nor any particular characters are required. */
  readonly name: string;
  /** What one unit of it adds to the objective. */
  readonly cost: number;
  /** Whether x must be a whole number. */
  readonly whole: boolean;
  /** Greatest value of x; absent means there is none. */
  readonly upper?: number;
}

/** `sum of coefficient * x  relation  bound`. */
export interface Row {
  /** For people; neither uniqueness nor any particular characters are required. */
  readonly name: string;
  /** A column that is named twice counts with the sum of its coefficients. */
  readonly terms: readonly Term[];
  readonly relation: Relation;
  readonly bound: number;
}

export type Relation = "<=" | "=" | ">=";

/** `column` is an index into the program's columns. */
export type Term = readonly [column: number, coefficient: number];

/**
 * How a solve ended. Why it stopped (`status`) and whether there is a point are told apart: a solve that was
 * stopped at a limit may still carry the best point it had.
 */
export type Outcome = Optimal | Infeasible | Unbounded | Stopped | Failed;

interface Ended {
  /** Name of the engine that answered. */
  readonly engine: string;
  /** In plain words, that another engine had to take over; absent where none had to. */
  readonly note?: string;
}

interface Optimal extends Ended {
  readonly status: "optimal";
  /** One value for each column of the program, in its order. */
  readonly point: readonly number[];
  readonly cost: number;
  /** No point costs less than this; equal to `cost` up to the engine's tolerance. */
  readonly bound: number;
  /** Branch and bound nodes that were solved; 1 where the root was enough. */
  readonly nodes: number;
}

interface Infeasible extends Ended {
  readonly status: "infeasible";
  readonly nodes: number;
}

/** The cost falls without end. */
interface Unbounded extends Ended {
  readonly status: "unbounded";
  readonly nodes: number;
}

/** A limit was reached before the optimum was proven. */
export interface Stopped extends Ended {
  readonly status: "stopped";
  /** The best point found, where there is one. */
  readonly point?: readonly number[];
  readonly cost?: number;
  /** No point costs less than this, where a bound is known. */
  readonly bound?: number;
  readonly nodes: number;
}

/** The engine gave no answer that can be used. */
interface Failed extends Ended {
  readonly status: "failed";
  /** A sentence for people. */
  readonly reason: string;
}

/** How far a solve has come. */
export interface Progress {
  /** Branch and bound nodes so far. */
  readonly nodes: number;
  /** No point costs less than this, where a bound is known. */
  readonly bound?: number;
  /** What the best point so far costs, where there is one. */
  readonly best?: number;
  /** That point; only told when it is new. */
  readonly point?: readonly number[];
}

export interface EngineOptions {
  /** Stop after about this many milliseconds with what there is; absent means no limit. */
  readonly timeLimitMs?: number;
  /** Told often how far a solve has come that takes some time; must not throw. */
  readonly onProgress?: (progress: Progress) => void;
  /** Ends the solve with what there is. An engine that keeps its thread busy looks at it after `onProgress`. */
  readonly signal?: AbortSignal;
}

/** Solves one program. Never rejects for what is in the program: that is an {@link Outcome} too. */
export type Engine = (program: Program, options?: EngineOptions) => Promise<Outcome>;
