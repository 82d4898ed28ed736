import { Worker } from "node:worker_threads";
import type { MidwayAnswer, MidwayRequest } from "../../src/work/midway/midway.ts";
import { builtWorkerUrl } from "../solver/built-worker-url.ts";

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
      const made = new Worker(builtWorkerUrl("midway-worker"), { stdout: true, stderr: true });
      worker = made;
      const finish = (answer: MidwayAnswer): void => {
        if (made !== worker) return;
        giveUp();
        answered(answer);
      };
      made.on("message", finish);
      made.on("error", (error: unknown) =>
        finish({ status: "refused", lines: [error instanceof Error ? error.message : String(error)] }),
      );
      made.on("exit", () => finish({ status: "refused", lines: ["The reckoning ended without an answer."] }));
      made.postMessage(request);
    },
    giveUp,
  };
}
