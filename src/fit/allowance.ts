/**
 * What working out the choices of a garment may take. A file of a few lines can ask for more than any machine holds, so
 * the loops that grow with it ask here whether they may go on, and are ended from within where they may not.
 *
 * It is one for the whole thread instead of a value handed on from function to function: a thread works for one caller at
 * a time, and the loops lie many calls below whoever knows how long it wants to wait.
 */

/** Ends work that took more than it may; `message` says in a knitter's words what was reached. */
export class WorkEnded extends Error {
  override readonly name = "WorkEnded";
}

interface Allowance {
  /** By performance.now(). */
  readonly deadline: number;
  held: number;
}

/**
 * Layouts, looks and the places that they keep apart, all taken together, that one garment's choices may hold. Each takes
 * three quarters of a kilobyte until its program is written, and the program and its text come to as much again, so this
 * stays within a gigabyte. The samples hold up to 2,600 of them, seven cords that share their rows 8,700.
 */
const MOST_HELD = 400_000;

let current: Allowance = { deadline: Number.POSITIVE_INFINITY, held: 0 };

/**
 * Does some work that may hold so much and take so long; inside other such work, no longer than that has left.
 *
 * @param limitMs no limit where it is undefined
 * @throws WorkEnded where the work asks for more
 */
export function within<Result>(limitMs: number | undefined, work: () => Result): Result {
  const outer = current;
  current = { deadline: Math.min(outer.deadline, performance.now() + (limitMs ?? Infinity)), held: 0 };
  try {
    return work();
  } finally {
    current = outer;
  }
}

/** The same for work that waits for others meanwhile; the thread may do nothing else that is limited until it is done. */
export async function duringAll<Result>(limitMs: number, work: () => Promise<Result>): Promise<Result> {
  const outer = current;
  current = { deadline: Math.min(outer.deadline, performance.now() + limitMs), held: 0 };
  try {
    return await work();
  } finally {
    current = outer;
  }
}

/** Undefined where it takes more than it may: for what is told beside an answer that stands without it. */
export async function unlessEnded<Result>(work: () => Promise<Result>): Promise<Result | undefined> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof WorkEnded) return undefined;
    throw error;
  }
}

/** Asked in every loop that a file can make long. */
export function goOn(): void {
  if (performance.now() > current.deadline)
    throw new WorkEnded("the time allowed was up before a fit was found");
}

/** Told how much more is kept in memory. */
export function hold(more: number): void {
  current.held += more;
  if (current.held > MOST_HELD)
    throw new WorkEnded(
      "there are more ways to lay the motifs than can be held in memory; allow fewer columns, gaps, margins, values or changes of length",
    );
}
