import type { Engine, Progress } from "../../../solver/program.ts";
import { progressWords } from "../../report/progress-words.ts";
import type { Terminal } from "../command.ts";

/** Who ended a search before it was done. */
export type Ending = "knitter" | "time limit";

/** An engine lent to a command, and what the command can say and ask about its work. */
export interface SolveWatch {
  /** As given, but it ends at the time limit and when the knitter stops it, and is seen at work. */
  readonly engine: Engine;
  /** Says what is being done from now on, in a few words: "Best fit"; and whether it takes many programs. */
  readonly phase: (words: string, programs: "one" | "many") => void;
  /**
   * Between two questions that may take no engine: says what is being asked, and lets a Ctrl-C come through, which the
   * knitter's program is too busy to hear otherwise.
   *
   * @returns whether to go on: false once the time is up or the knitter stops the work
   */
  readonly turn: (words: string) => Promise<boolean>;
  /** What is left of the time allowed, in ms; 0 where nothing is. */
  readonly leftMs: () => number;
  /** Who ended the work early; undefined where all of it came to its end. */
  readonly ending: () => Ending | undefined;
  /** Takes the status line away. */
  readonly close: () => void;
}

export interface WatchOptions {
  readonly timeLimitMs: number;
  /** What the work begins with. */
  readonly phase: string;
  readonly clock?: Clock;
}

/** Time as the watch sees it; tests give their own. */
export interface Clock {
  readonly now: () => number;
  /** Calls again and again, until what is returned is called. */
  readonly every: (ms: number, tick: () => void) => () => void;
  /** Lets what is waiting have its turn. */
  readonly pause: () => Promise<void>;
}

const realClock: Clock = {
  now: () => performance.now(),
  every: (ms, tick) => {
    const timer = setInterval(tick, ms).unref();
    return () => clearInterval(timer);
  },
  pause: () => new Promise((resolve) => setImmediate(resolve)),
};

/** Shorter work says nothing at all. */
const silenceMs = 1000;
/** How often a line on a terminal is written anew. */
const rewriteEveryMs = 250;
/** How often a line is added where none can be written over. */
const lineEveryMs = 5000;
/** Questions that are asked one after the other without an engine are so short that a turn for each would cost more. */
const turnEveryMs = 50;

/**
 * Watches a command's solves. Work that takes longer than a second is shown on the terminal's status line; without a
 * terminal a line is said every few seconds. While a solve is under way, or questions are asked
 * by turns, the first Ctrl-C ends it and all that follow with what they have.
 */
export function watchSolves(engine: Engine, terminal: Terminal, options: WatchOptions): SolveWatch {
  const { now, every, pause } = options.clock ?? realClock;
  const startedAt = now();
  const deadline = startedAt + options.timeLimitMs;
  const stopping = new AbortController();
  let ending: Ending | undefined;
  let phase = options.phase;
  let solved: number | undefined;
  let asked: number | undefined;
  let running = 0;
  let progress: Progress | undefined;
  let shownAt = startedAt;
  let turnedAt: number | undefined;
  let endTicks: (() => void) | undefined;
  let giveBackInterrupts: (() => void) | undefined;

  const leftMs = (): number => Math.max(0, deadline - now());

  const show = (): void => {
    const at = now();
    if (at - startedAt < silenceMs) return;
    if (!terminal.status && at - shownAt < lineEveryMs) return;
    shownAt = at;
    const words = progressWords({
      phase,
      elapsedMs: at - startedAt,
      ...(solved !== undefined && { solved }),
      ...(asked !== undefined && { asked }),
      ...(progress && { progress }),
    });
    if (!terminal.status) terminal.say(`${words} ...`);
    else if (stopping.signal.aborted) terminal.status("Stopping ...");
    else terminal.status(terminal.onInterrupt ? `${words} (Ctrl-C stops)` : words);
  };

  const takeInterrupts = (): void => {
    giveBackInterrupts ??= terminal.onInterrupt?.(() => {
      stopping.abort();
      show();
    });
  };
  const begin = (): void => {
    running += 1;
    endTicks ??= every(rewriteEveryMs, show);
    takeInterrupts();
  };
  const end = (): void => {
    running -= 1;
    progress = undefined;
    if (running > 0 || turnedAt !== undefined) return;
    // Between solves the program is busy itself, and would not hear of a Ctrl-C that was taken from the system.
    giveBackInterrupts?.();
    giveBackInterrupts = undefined;
  };

  const turn = async (words: string): Promise<boolean> => {
    if (words !== phase) asked = 0;
    asked = (asked ?? 0) + 1;
    phase = words;
    takeInterrupts();
    if (turnedAt === undefined || now() - turnedAt >= turnEveryMs) {
      if (now() - shownAt >= rewriteEveryMs) show();
      await pause();
      turnedAt = now();
    }
    if (stopping.signal.aborted) ending ??= "knitter";
    else if (leftMs() === 0) ending ??= "time limit";
    return !stopping.signal.aborted && leftMs() > 0;
  };

  const watched: Engine = async (program, asking = {}) => {
    begin();
    try {
      const timeLimitMs = Math.min(asking.timeLimitMs ?? Infinity, leftMs());
      const outcome = await engine(program, {
        timeLimitMs,
        signal: stopping.signal,
        onProgress: (word) => {
          progress = word;
          asking.onProgress?.(word);
        },
      });
      if (outcome.status === "stopped") ending ??= stopping.signal.aborted ? "knitter" : "time limit";
      else if (solved !== undefined) solved += 1;
      return outcome;
    } finally {
      end();
    }
  };

  return {
    engine: watched,
    phase: (words, programs) => {
      if (words !== phase) solved = programs === "many" ? 0 : undefined;
      asked = undefined;
      phase = words;
    },
    turn,
    leftMs,
    ending: () => ending,
    close: () => {
      endTicks?.();
      giveBackInterrupts?.();
      terminal.status?.(undefined);
    },
  };
}
