import type { Worker } from "node:worker_threads";
import type { MidwayAnswer, MidwayRequest } from "../../src/work/midway/midway.ts";
import { builtWorkerUrl } from "../solver/built-worker-url.ts";
import { startThread } from "../solver/start-thread.ts";

/** Reckons with measurements in a thread of its own, so that the screen goes on. */
export interface Reckoner {
  /** Asks for one answer; whatever was asked before is given up. */
  readonly ask: (request: MidwayRequest) => void;
  /** Ends the thread; nothing is answered any more. */
  readonly giveUp: () => void;
}

/** @param answered told each answer; a thread that breaks down answers with why */
export function createReckoner(answered: (answer: MidwayAnswer) => void): Reckoner {
  let worker: Worker | undefined;

  function giveUp(): void {
    void worker?.terminate();
    worker = undefined;
  }

  return {
    ask(request) {
      giveUp();
      const finish = (answer: MidwayAnswer): void => {
        if (made !== worker) return;
        giveUp();
        answered(answer);
      };
      const made = startThread<MidwayAnswer>(
        builtWorkerUrl("midway-worker"),
        finish,
        (reason) => finish({ status: "refused", lines: [reason] }),
        "The reckoning ended without an answer.",
      );
      worker = made;
      made.postMessage(request);
    },
    giveUp,
  };
}
