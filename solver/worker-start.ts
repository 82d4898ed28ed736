import { Worker } from "node:worker_threads";
import type { WorkerRole } from "./worker-messages.ts";

interface Started {
  readonly worker: Worker;
  /** Whether it has said already that it is ready. */
  readonly isReady: boolean;
}

interface Early extends Started {
  readonly url: string;
  readonly engine: WorkerRole["engine"];
  readonly isBroken: boolean;
}

let early: Early | undefined;

const newWorker = (url: URL, role: WorkerRole): Worker => new Worker(url, { workerData: role, execArgv: [] });

/**
 * Starts the thread of an engine that will surely be asked, before the code is there that asks it: a thread takes about
 * as long to start as a small garment to be read and worked out.
 */
export function startEarly(url: URL, role: WorkerRole): void {
  const worker = newWorker(url, role);
  const started = { worker, url: url.href, engine: role.engine, isReady: false, isBroken: false };
  early = started;
  worker.once("message", () => {
    started.isReady = true;
  });
  const breakDown = (): void => {
    started.isBroken = true;
  };
  worker.once("error", breakDown);
  worker.once("exit", breakDown);
  // If nobody asks it after all, it does not keep the program from ending.
  worker.unref();
}

/** A thread for an engine: the one that was started early, once, or a new one. */
export function startWorker(url: URL, role: WorkerRole): Started {
  const waiting = early;
  if (waiting?.url !== url.href || waiting.engine !== role.engine)
    return { worker: newWorker(url, role), isReady: false };
  early = undefined;
  return waiting.isBroken ? { worker: newWorker(url, role), isReady: false } : waiting;
}
