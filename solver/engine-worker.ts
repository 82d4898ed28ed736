import { parentPort, workerData } from "node:worker_threads";
import type { Engine, EngineOptions } from "./program.ts";
import type { Question, WorkerMessage, WorkerRole } from "./worker-messages.ts";

/** Entry of the thread in which an engine runs, so that it can be ended when it does not return. */
const { engine: name } = workerData as WorkerRole;
const port = parentPort;
if (port === null) throw new Error("the engine worker runs in a worker thread only");
const say = (message: WorkerMessage): void => port.postMessage(message);

async function load(): Promise<Engine> {
  if (name === "simplex") return (await import("./simplex-engine.ts")).simplexEngine;
  const { highsEngine, loadHighs } = await import("./highs-engine.ts");
  await loadHighs();
  return highsEngine;
}

const engine = await load();

let previous: Promise<void> = Promise.resolve();
port.on("message", (question: Question) => {
  previous = previous.then(async () =>
    say({ id: question.id, outcome: await engine(question.program, limits(question)) }),
  );
});
say("ready");

function limits({ patienceMs, deadline }: Question): EngineOptions {
  const left = deadline === undefined ? Infinity : Math.max(0, deadline - Date.now());
  const timeLimitMs = Math.min(left, patienceMs ?? Infinity);
  return timeLimitMs === Infinity ? {} : { timeLimitMs };
}
