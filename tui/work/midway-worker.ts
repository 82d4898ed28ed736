import { parentPort } from "node:worker_threads";
import { createGuardedEngine } from "../../solver/guarded-engine.ts";
import { type MidwayRequest, midway } from "../../src/work/midway/midway.ts";

const timeLimitMs = 60_000;

const port = parentPort;
if (port) {
  const engine = createGuardedEngine();
  engine.warm();
  port.on("message", (request: MidwayRequest) => {
    midway(request, engine.solve, timeLimitMs).then(
      (answer) => port.postMessage(answer),
      (error: unknown) => {
        // An error of this thread reaches the other one with what it says.
        throw error;
      },
    );
  });
}
