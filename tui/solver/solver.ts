import type { Worker } from "node:worker_threads";
import { builtWorkerUrl } from "./built-worker-url.ts";
import type { EndSearch, SolveReport, SolveRequest } from "./messages.ts";
import { startThread } from "./start-thread.ts";

/** Looks for fits in a thread of its own. */
export interface Solver {
  readonly ask: (request: SolveRequest) => void;
  /** Ends the search of the request with this sequence, with the best so far. */
  readonly end: (sequence: number) => void;
  readonly close: () => Promise<void>;
}

/** How long an older request may keep the thread busy before a newer one takes the thread away from it. */
const patienceMs = 600;

/**
 * @param report told what the thread finds; only ever about the newest request
 * @param failed told once where a request ends without an answer because the thread broke down
 */
export function createSolver(
  report: (report: SolveReport) => void,
  failed: (sequence: number, reason: string) => void,
  url: URL = builtWorkerUrl("solve-worker"),
): Solver {
  let worker: Worker | undefined;
  let newest = 0;
  let started = 0;
  let closed = false;

  function start(): Worker {
    const made = startThread<SolveReport>(
      url,
      (message) => {
        if (message.kind === "started") started = message.sequence;
        else if (message.sequence === newest && made === worker) report(message);
      },
      (reason) => {
        if (made !== worker || closed) return;
        worker = undefined;
        failed(newest, reason);
      },
      "the solving thread ended",
    );
    return made;
  }

  return {
    ask(request) {
      if (closed) return;
      newest = request.sequence;
      worker ??= start();
      worker.postMessage(request);
      const asked = worker;
      setTimeout(() => {
        const waiting = newest === request.sequence && started < request.sequence && worker === asked;
        if (!waiting || closed) return;
        worker = undefined;
        void asked.terminate();
        worker = start();
        worker.postMessage(request);
      }, patienceMs).unref();
    },
    end(sequence) {
      worker?.postMessage({ end: sequence } satisfies EndSearch);
    },
    async close() {
      closed = true;
      await worker?.terminate();
    },
  };
}
