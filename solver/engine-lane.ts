import type { Worker } from "node:worker_threads";
import type { EngineOptions, Outcome, Program } from "./program.ts";
import type { Question, WorkerMessage, WorkerRole } from "./worker-messages.ts";
import { startWorker } from "./worker-start.ts";

/** What came back from a lane: an outcome, or why there is none. */
export type Reply =
  | { readonly kind: "answered"; readonly outcome: Outcome }
  /** The worker did not answer in time and was ended. */
  | { readonly kind: "silent" }
  /** It was not asked, because too many programs before this one used up their patience. */
  | { readonly kind: "unasked" }
  /** The worker broke down. */
  | { readonly kind: "broken"; readonly reason: string }
  | { readonly kind: "closed" };

interface LaneLimits extends Pick<EngineOptions, "onProgress" | "signal"> {
  /** How long one program may take once the worker has begun with it; absent means for ever. */
  readonly patienceMs?: number;
  /** By Date.now(); absent means never. */
  readonly deadline?: number;
}

/** One engine in one worker at a time: programs are answered in the order in which they are sent. */
export interface EngineLane {
  readonly send: (program: Program, limits: LaneLimits) => Promise<Reply>;
  /** Starts the worker, if none is running. */
  readonly warm: () => void;
  readonly close: () => Promise<void>;
}

/**
 * How much later than the engine's own limit the worker is ended: an engine that looks at the clock between two
 * steps gets to say itself that it stopped, and with what.
 */
const GRACE_MS = 50;

/** A worker that is not ready by then is taken for broken: starting takes about 50 ms on an idle machine. */
const START_MS = 3000;

/**
 * How long an engine that is asked to stop may take before its worker is ended: HiGHS looks up about once a second on
 * programs that keep it busy, and what it has then is a little better than what it told last.
 */
const STOP_GRACE_MS = 1000;

interface Waiting {
  readonly question: Question;
  readonly limits: LaneLimits;
  readonly reply: (reply: Reply) => void;
}

/** @param trials after so many programs in a row that used up their patience, no more are tried */
export function createEngineLane(
  workerUrl: URL,
  role: WorkerRole,
  trials: number = Number.POSITIVE_INFINITY,
): EngineLane {
  let worker: Worker | undefined;
  let ready = false;
  let closed = false;
  let timer: NodeJS.Timeout | undefined;
  let lastId = 0;
  let impatient = 0;
  const waiting: Waiting[] = [];

  const start = (): void => {
    const { worker: started, isReady } = startWorker(workerUrl, role);
    worker = started;
    ready = isReady;
    // A worker that is not `worker` any more has been ended; what it still says is about nothing.
    started.on("message", (message: WorkerMessage) => started === worker && hear(message));
    started.on("error", (error) => started === worker && fail({ kind: "broken", reason: error.message }));
    started.on(
      "exit",
      (code) => started === worker && fail({ kind: "broken", reason: `its worker ended with code ${code}` }),
    );
    for (const { question } of waiting) started.postMessage(question);
    watch();
  };

  /** Only a worker that has something to do keeps the process alive. */
  const watch = (): void => {
    clearTimeout(timer);
    const head = waiting[0];
    if (head === undefined) {
      worker?.unref();
      return;
    }
    worker?.ref();
    const { patienceMs = Infinity, deadline = Infinity } = head.limits;
    const leftMs = Math.max(0, deadline - Date.now());
    const limit = ready ? Math.min(patienceMs, leftMs) + GRACE_MS : Math.min(START_MS, leftMs + GRACE_MS);
    const silenceMs = Math.min(limit, head.limits.signal?.aborted === true ? STOP_GRACE_MS : Infinity);
    if (silenceMs !== Infinity) timer = setTimeout(silence, silenceMs);
  };

  const hear = (message: WorkerMessage): void => {
    const head = waiting[0];
    if (message === "ready") ready = true;
    else if (message.id !== head?.question.id) return;
    else if ("progress" in message) {
      // The patience goes on as it was.
      head.limits.onProgress?.(message.progress);
      return;
    } else {
      waiting.shift();
      impatient = message.outcome.status === "stopped" && isOwnFault(head) ? impatient + 1 : 0;
      head.reply({ kind: "answered", outcome: message.outcome });
      dismissWhenTried();
    }
    watch();
  };

  const silence = (): void => {
    const head = waiting[0];
    if (head === undefined) return;
    if (isOwnFault(head)) impatient += 1;
    fail({ kind: "silent" });
  };

  const dismissWhenTried = (): void => {
    if (impatient >= trials) for (const { reply } of waiting.splice(0)) reply({ kind: "unasked" });
  };

  /** The first in the queue takes the blame; the others are put to a fresh worker. */
  const fail = (reply: Reply): void => {
    const ended = worker;
    worker = undefined;
    void ended?.terminate();
    waiting.shift()?.reply(reply);
    dismissWhenTried();
    if (waiting.length > 0) start();
    else clearTimeout(timer);
  };

  return {
    send: (program, limits) =>
      new Promise((resolve) => {
        if (closed) return resolve({ kind: "closed" });
        if (impatient >= trials) return resolve({ kind: "unasked" });
        lastId += 1;
        const { patienceMs, deadline, signal } = limits;
        const stop = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
        const question = { id: lastId, program, stop, patienceMs, deadline };
        const askToStop = (): void => {
          Atomics.store(stop, 0, 1);
          if (waiting[0]?.question === question) watch();
        };
        if (signal?.aborted === true) Atomics.store(stop, 0, 1);
        signal?.addEventListener("abort", askToStop);
        const reply = (what: Reply): void => {
          signal?.removeEventListener("abort", askToStop);
          resolve(what);
        };
        waiting.push({ question, limits, reply });
        if (worker === undefined) start();
        else {
          worker.postMessage(question);
          if (waiting.length === 1) watch();
        }
      }),
    warm: () => {
      if (worker === undefined && !closed) start();
    },
    close: async () => {
      closed = true;
      clearTimeout(timer);
      const ended = worker;
      worker = undefined;
      for (const { reply } of waiting.splice(0)) reply({ kind: "closed" });
      await ended?.terminate();
    },
  };
}

/** Whether nobody but the engine is to blame where a question is not answered in time. */
const isOwnFault = ({ limits: { deadline, signal } }: Waiting): boolean =>
  signal?.aborted !== true && (deadline === undefined || Date.now() < deadline);
