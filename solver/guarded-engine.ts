import { createEngineLane, type Reply } from "./engine-lane.ts";
import { HIGHS, SIMPLEX } from "./engine-names.ts";
import { createFindings, type Findings } from "./findings.ts";
import { HIGHS_PACKAGE, highsIsInstalled } from "./highs-installed.ts";
import type { Engine, Outcome, Progress } from "./program.ts";
import { programFault } from "./program-fault.ts";
import { builtWorkerUrl } from "./worker-url.ts";

export interface GuardOptions {
  /** How long the usual engine may take for one program before the other takes over. Default {@link PATIENCE_MS}. */
  readonly patienceMs?: number;
  /** Ask HiGHS for everything, instead of only where the usual engine does not answer. */
  readonly only?: "highs";
  /** Default: whether the package of HiGHS is installed. Without it the usual engine has {@link ALONE_PATIENCE_MS}. */
  readonly isHighsThere?: boolean;
  /** The built engine worker. Default: the one that belongs to this build. */
  readonly workerUrl?: URL;
}

/** An engine that always ends, in threads of its own. */
export interface GuardedEngine {
  /** May be called again before it has answered: programs are solved one after the other. */
  readonly solve: Engine;
  /** Starts the usual engine's worker, so that starting overlaps with other work. */
  readonly warm: () => void;
  /** Ends all workers; what is being solved fails. */
  readonly close: () => Promise<void>;
}

/**
 * The usual engine takes below 100 ms for the programs it is made for; where it has not answered after several
 * times that, it is on one that the other engine solves in a fraction of it, or on one from which it never returns.
 * Three quarters of a second leave the other engine time to start and to answer within about two.
 */
const PATIENCE_MS = 750;

/** There is nothing to take over from it then, but a program from which it never returns must end some time. */
const ALONE_PATIENCE_MS = 60_000;

/**
 * After so many programs in a row that used up the whole patience, the usual engine is not asked again: programs
 * that one caller asks about are alike, and each would cost that much again.
 */
const TRIALS = 2;

/**
 * javascript-lp-solver in a worker, watched: where it does not answer in time, gives up, breaks down, or answers
 * with a point that the program does not allow or that goes against what was found before, HiGHS answers in its place, and the outcome's note says so. Where
 * HiGHS is asked for, it alone is asked, and its answer is held to the same.
 */
export function createGuardedEngine(options: GuardOptions = {}): GuardedEngine {
  const patienceMs = options.patienceMs ?? PATIENCE_MS;
  const workerUrl = options.workerUrl ?? builtWorkerUrl();
  const isHighsThere = options.isHighsThere ?? highsIsInstalled();
  const usual = createEngineLane(workerUrl, { engine: "simplex" }, TRIALS);
  const other = createEngineLane(workerUrl, { engine: "highs" });

  const solve: Engine = async (program, { timeLimitMs, onProgress, signal } = {}) => {
    const fault = programFault(program);
    if (fault !== undefined) return { status: "failed", reason: fault, engine: "none" };
    const deadline = timeLimitMs === undefined ? undefined : Date.now() + timeLimitMs;
    const isOver = () => signal?.aborted === true || (deadline !== undefined && Date.now() >= deadline);
    const found = createFindings(program);
    if (isOver()) return found.stopped();
    const limitsFor = (engine: string) => ({
      ...(deadline !== undefined && { deadline }),
      ...(signal !== undefined && { signal }),
      onProgress: (word: Progress) => {
        const known = found.hear(word, engine);
        onProgress?.(known);
      },
    });

    if (options.only === "highs") {
      const reply = await other.send(program, limitsFor(HIGHS));
      if (reply.kind === "closed") return CLOSED;
      found.read(reply, HIGHS);
      const shortfall = shortfallOf(found, reply);
      if (reply.kind === "answered" && shortfall === undefined) return reply.outcome;
      if (isStopped(reply)) return found.stopped();
      return { status: "failed", reason: `The solver HiGHS ${shortfall}.`, engine: HIGHS };
    }

    // The other engine gets ready while there is still hope for the usual one.
    const doubt = setTimeout(() => isHighsThere && other.warm(), patienceMs / 2);
    const first = await usual.send(program, {
      patienceMs: isHighsThere ? patienceMs : ALONE_PATIENCE_MS,
      ...limitsFor(SIMPLEX),
    });
    clearTimeout(doubt);
    if (first.kind === "closed") return CLOSED;
    found.read(first, SIMPLEX);
    const shortfall = shortfallOf(found, first);
    if (first.kind === "answered" && shortfall === undefined) return first.outcome;
    if (isOver()) return found.stopped();
    if (!isHighsThere)
      return {
        status: "failed",
        reason: `The usual solver ${shortfall}, and the second one, the package ${HIGHS_PACKAGE}, is not installed.`,
        engine: "none",
      };

    const second = await other.send(program, limitsFor(HIGHS));
    if (second.kind === "closed") return CLOSED;
    found.read(second, HIGHS);
    const note = `The usual solver ${shortfall}; this answer comes from the second solver, HiGHS.`;
    if (isStopped(second)) {
      const stopped = found.stopped();
      const isItsOwn = stopped.point !== undefined && stopped.engine === HIGHS;
      return isItsOwn ? { ...stopped, note } : stopped;
    }
    const secondShortfall = shortfallOf(found, second);
    if (second.kind === "answered" && secondShortfall === undefined) return { ...second.outcome, note };
    const reason = `No solver could answer: the usual one ${shortfall}, the second ${secondShortfall}.`;
    return { status: "failed", reason, engine: HIGHS };
  };

  return {
    solve,
    warm: options.only === "highs" ? other.warm : usual.warm,
    close: async () => {
      await Promise.all([usual.close(), other.close()]);
    },
  };
}

const CLOSED: Outcome = { status: "failed", reason: "The solver was closed.", engine: "none" };

const isStopped = (reply: Reply): boolean =>
  reply.kind === "silent" || (reply.kind === "answered" && reply.outcome.status === "stopped");

/** Why a reply cannot be passed on as it is, in words to follow "the solver"; undefined where it can. */
function shortfallOf(found: Findings, reply: Reply): string | undefined {
  switch (reply.kind) {
    case "silent":
      return "gave no answer in time and was stopped";
    case "unasked":
      return "was not asked, because it gave no answer in time to the programs before this one";
    case "broken":
      return `broke down (${reply.reason})`;
    case "closed":
      return "was closed";
    case "answered":
      return shortfallOfOutcome(found, reply.outcome);
  }
}

function shortfallOfOutcome(found: Findings, outcome: Outcome): string | undefined {
  if (outcome.status === "failed") return `failed (${outcome.reason.replace(/\.$/, "")})`;
  if (outcome.status === "stopped") return "did not finish in time";
  return found.faultOf(outcome);
}
