import { createEngineLane, type Reply } from "./engine-lane.ts";
import { violations } from "./feasibility.ts";
import type { Engine, Outcome, Program } from "./program.ts";
import { programFault } from "./program-fault.ts";
import { builtWorkerUrl } from "./worker-url.ts";

export interface GuardOptions {
  /** How long the usual engine may take for one program before the other takes over. Default {@link PATIENCE_MS}. */
  readonly patienceMs?: number;
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

/**
 * After so many programs in a row that used up the whole patience, the usual engine is not asked again: programs
 * that one caller asks about are alike, and each would cost that much again.
 */
const TRIALS = 2;

/**
 * javascript-lp-solver in a worker, watched: where it does not answer in time, gives up, breaks down, or answers
 * with a point that the program does not allow, HiGHS answers in its place, and the outcome's note says so.
 */
export function createGuardedEngine(options: GuardOptions = {}): GuardedEngine {
  const patienceMs = options.patienceMs ?? PATIENCE_MS;
  const workerUrl = options.workerUrl ?? builtWorkerUrl();
  const usual = createEngineLane(workerUrl, { engine: "simplex" }, TRIALS);
  const other = createEngineLane(workerUrl, { engine: "highs" });

  const solve: Engine = async (program, { timeLimitMs } = {}) => {
    const fault = programFault(program);
    if (fault !== undefined) return { status: "failed", reason: fault, engine: "none" };
    const limits = timeLimitMs === undefined ? {} : { deadline: Date.now() + timeLimitMs };

    // The other engine gets ready while there is still hope for the usual one.
    const doubt = setTimeout(other.warm, patienceMs / 2);
    const first = await usual.send(program, { patienceMs, ...limits });
    clearTimeout(doubt);
    const shortfall = shortfallOf(program, first);
    if (first.kind === "closed") return CLOSED;
    if (first.kind === "answered" && shortfall === undefined) return first.outcome;
    const partial =
      first.kind === "answered" && first.outcome.status === "stopped" ? first.outcome : undefined;
    if (limits.deadline !== undefined && Date.now() >= limits.deadline)
      return partial ?? { status: "stopped", nodes: 0, engine: "none" };

    const second = await other.send(program, limits);
    if (second.kind === "closed") return CLOSED;
    const note = `The usual solver ${shortfall}; this answer comes from the second solver, HiGHS.`;
    if (second.kind === "silent") return partial ?? { status: "stopped", nodes: 0, engine: HIGHS, note };
    if (second.kind === "answered" && second.outcome.status === "stopped")
      return second.outcome.point === undefined && partial !== undefined
        ? partial
        : { ...second.outcome, note };
    const secondShortfall = shortfallOf(program, second);
    if (second.kind === "answered" && secondShortfall === undefined) return { ...second.outcome, note };
    const reason = `No solver could answer: the usual one ${shortfall}, the second ${secondShortfall}.`;
    return { status: "failed", reason, engine: HIGHS };
  };

  return {
    solve,
    warm: usual.warm,
    close: async () => {
      await Promise.all([usual.close(), other.close()]);
    },
  };
}

const HIGHS = "HiGHS";

const CLOSED: Outcome = { status: "failed", reason: "The solver was closed.", engine: "none" };

/** Why a reply cannot be passed on as it is, in words to follow "the solver"; undefined where it can. */
function shortfallOf(program: Program, reply: Reply): string | undefined {
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
      return shortfallOfOutcome(program, reply.outcome);
  }
}

function shortfallOfOutcome(program: Program, outcome: Outcome): string | undefined {
  if (outcome.status === "failed") return `failed (${outcome.reason.replace(/\.$/, "")})`;
  if (outcome.status === "stopped") return "did not finish in time";
  if (outcome.status === "optimal" && violations(program, outcome.point).length > 0)
    return "gave an answer that breaks the program's own rows";
  return undefined;
}
