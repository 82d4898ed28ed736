import { parentPort } from "node:worker_threads";
import { createGuardedEngine } from "../../solver/guarded-engine.ts";
import { solveRequests } from "./solve-requests.ts";

const port = parentPort;
if (port) {
  const engine = createGuardedEngine();
  engine.warm();
  const take = solveRequests(engine.solve, (report) => port.postMessage(report));
  port.on("message", take);
}
