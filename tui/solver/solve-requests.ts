import { setImmediate as turn, setTimeout as wait } from "node:timers/promises";
import type { Engine } from "../../solver/program.ts";
import { answerFor, conflictOf } from "../../src/explore/answer.ts";
import { readSource } from "../../src/explore/read-source.ts";
import { rulesFor } from "../../src/explore/rules-for.ts";
import { givingSteps, inOrderOfInterest, tryStep } from "../../src/explore/steps.ts";
import type { SolveReport, SolveRequest } from "./messages.ts";

/** Long enough that a key held down does not set off steps that nobody will read. */
const restBeforeStepsMs = 120;

const limits = { rivals: 5, timeLimitMs: 60_000 };

/**
 * Takes requests one after the other: first the fit, then what one step of each rule would change. A request that
 * a later one has superseded is dropped at the next step.
 */
export function solveRequests(
  engine: Engine,
  report: (report: SolveReport) => void,
): (request: SolveRequest) => void {
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
    const reading = readSource(source, name, beside);
    const { garment } = reading;
    if (!garment) return;
    const answer = await answerFor({ ...reading, garment }, engine, limits);
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
      const outcome = await tryStep(source, name, step, fit, engine, beside);
      if (superseded()) return;
      if (outcome) report({ kind: "step", sequence, outcome });
    }
    report({ kind: "all tried", sequence });
    if (fit) return;
    const conflict = await conflictOf(garment, engine);
    if (!superseded()) report({ kind: "conflict", sequence, conflict });
  }

  return (request) => {
    newest = request;
    if (!running) void run();
  };
}
