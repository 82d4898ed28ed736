import { setImmediate as turn, setTimeout as wait } from "node:timers/promises";
import type { Engine, Progress } from "../../solver/program.ts";
import { type Answer, answerFor, conflictOf } from "../../src/explore/answer.ts";
import { readSource } from "../../src/explore/read-source.ts";
import { rulesFor } from "../../src/explore/rules-for.ts";
import { givingSteps, inOrderOfInterest, tryStep } from "../../src/explore/steps.ts";
import { createKept } from "../../src/fit/kept.ts";
import type { EndSearch, SolveReport, SolveRequest } from "./messages.ts";
import { findWhy } from "./why-request.ts";

/** Long enough that a key held down does not set off steps that nobody will read. */
const restBeforeStepsMs = 120;

const limits = { rivals: 5, timeLimitMs: 60_000 };

/** A search that takes no longer than this says nothing of itself. */
const silenceMs = 1000;
const wordEveryMs = 500;

/**
 * Takes requests one after the other: first the fit, then what one step of each rule would change. A request that
 * a later one has superseded ends its search, and is dropped at the next step.
 */
export function solveRequests(
  engine: Engine,
  report: (report: SolveReport) => void,
): (request: SolveRequest | EndSearch) => void {
  // A change of one rule leaves most of what was worked out as it was.
  const kept = createKept();
  let stopping = new AbortController();
  let newest: SolveRequest | undefined;
  let running = false;

  async function run(): Promise<void> {
    running = true;
    for (let request = newest; request !== undefined; request = newest === request ? undefined : newest)
      await solve(request, () => newest !== request);
    running = false;
  }

  async function solve(request: SolveRequest, superseded: () => boolean): Promise<void> {
    const { sequence, source, name, first, ...beside } = request;
    report({ kind: "started", sequence });
    if (request.why) return findWhy(request, engine, report, superseded);
    const reading = readSource(source, name, beside);
    const { garment } = reading;
    if (!garment) return;
    const search = watched(engine, request);
    const answer = byWhom(
      await answerFor({ ...reading, garment }, search.engine, { ...limits, kept, onRivals: search.onRivals }),
    );
    if (superseded()) return;
    report({ kind: "answer", sequence, answer });
    if (answer.kind === "failed" || answer.result.status === "stopped") return;
    const fit = answer.result.status === "fits" ? answer.result.fit : undefined;
    await wait(restBeforeStepsMs);
    const rules = rulesFor(garment);
    for (const step of inOrderOfInterest(givingSteps(rules), rules, fit, first)) {
      // Requests that came meanwhile are taken in before the next step starts.
      await turn();
      if (superseded()) return;
      const outcome = await tryStep(source, name, step, fit, engine, beside, kept);
      if (superseded()) return;
      if (outcome) report({ kind: "step", sequence, outcome });
    }
    report({ kind: "all tried", sequence });
    if (fit) return;
    const conflict = await conflictOf(garment, engine);
    if (!superseded()) report({ kind: "conflict", sequence, conflict });
  }

  /** An engine that ends when the search does, and tells now and then how far it has come. */
  function watched(engine: Engine, { sequence }: SolveRequest) {
    const { signal } = stopping;
    const startedAt = performance.now();
    let toldAt = startedAt;
    let phase = "Best fit";
    let solved: number | undefined;
    const tell = (progress?: Progress): void => {
      const at = performance.now();
      if (signal.aborted || at - startedAt < silenceMs || at - toldAt < wordEveryMs) return;
      toldAt = at;
      const elapsedMs = at - startedAt;
      const reached = {
        phase,
        elapsedMs,
        ...(solved !== undefined && { solved }),
        ...(progress && { progress }),
      };
      report({ kind: "progress", sequence, reached });
    };
    const asked: Engine = async (program, options = {}) => {
      const outcome = await engine(program, { ...options, signal, onProgress: tell });
      if (solved !== undefined) solved += 1;
      tell();
      return outcome;
    };
    const onRivals = (found: number, of: number): void => {
      if (of === 0) return;
      phase = `Next best fit ${Math.min(found + 1, of)} of ${of}`;
      solved = 0;
    };
    return { engine: asked, onRivals };
  }

  /** The engine does not know who ended it. */
  function byWhom(answer: Answer): Answer {
    if (!stopping.signal.aborted || answer.kind !== "result" || answer.result.status !== "stopped")
      return answer;
    return { ...answer, result: { ...answer.result, reason: "ended by you before a fit was found" } };
  }

  return (request) => {
    if ("end" in request) {
      if (newest?.sequence === request.end) stopping.abort();
      return;
    }
    stopping.abort();
    stopping = new AbortController();
    newest = request;
    if (!running) void run();
  };
}
