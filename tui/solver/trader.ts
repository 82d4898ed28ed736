import type { Worker } from "node:worker_threads";
import { builtWorkerUrl } from "./built-worker-url.ts";
import { startThread } from "./start-thread.ts";
import type { TradeReport, TradeRequest } from "./trade-messages.ts";

/** Looks for trade-offs in a thread of its own, which ends where one is given up. */
export interface Trader {
  readonly ask: (request: TradeRequest) => void;
  readonly giveUp: () => void;
  readonly close: () => Promise<void>;
}

/** @param report told of the newest request, also where its thread broke down */
export function createTrader(
  report: (report: TradeReport) => void,
  url: () => URL = () => builtWorkerUrl("trade-worker"),
): Trader {
  let worker: Worker | undefined;
  let newest = 0;

  function start(): Worker {
    const made = startThread<TradeReport>(
      url(),
      (told) => {
        if (told.sequence === newest && made === worker) report(told);
      },
      (reason) => {
        if (made !== worker) return;
        worker = undefined;
        report({ kind: "traded", sequence: newest, answer: { kind: "none", reason } });
      },
      "the thread that looks for it ended",
    );
    return made;
  }

  async function end(): Promise<void> {
    const ended = worker;
    worker = undefined;
    await ended?.terminate();
  }

  return {
    ask(request) {
      newest = request.sequence;
      worker ??= start();
      worker.postMessage(request);
    },
    giveUp: () => void end(),
    close: end,
  };
}
