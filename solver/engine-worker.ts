import { parentPort, workerData } from "node:worker_threads";
import { further } from "./further.ts";
import type { Engine, EngineOptions, Progress } from "./program.ts";
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

void load().then((engine) => {
  let previous: Promise<void> = Promise.resolve();
  port.on("message", (question: Question) => {
    previous = previous.then(async () =>
      say({ id: question.id, outcome: await engine(question.program, optionsFor(question)) }),
    );
  });
  say("ready");
});

/** Seldom enough that telling costs nothing, often enough for a person who watches. */
const WORD_EVERY_MS = 100;

function optionsFor({ id, patienceMs, deadline, stop }: Question): EngineOptions {
  const left = deadline === undefined ? Infinity : Math.max(0, deadline - Date.now());
  const timeLimitMs = Math.min(left, patienceMs ?? Infinity);
  const stopping = new AbortController();
  const listen = (): void => {
    if (Atomics.load(stop, 0) !== 0) stopping.abort();
  };
  listen();
  const startedAt = Date.now();
  let toldAt = startedAt;
  let known: Progress = { nodes: 0 };
  let untold: Progress["point"];
  const onProgress = (word: Progress): void => {
    listen();
    known = further(known, word);
    untold = known.point ?? untold;
    const now = Date.now();
    // What ends soon tells nothing; after that a better point is told at once, because it is lost with this thread.
    const isUrgent = known.point !== undefined && toldAt > startedAt;
    if (now - toldAt < WORD_EVERY_MS && !isUrgent) return;
    toldAt = now;
    say({ id, progress: { ...known, ...(untold === undefined ? {} : { point: untold }) } });
    untold = undefined;
  };
  return { ...(timeLimitMs === Infinity ? {} : { timeLimitMs }), onProgress, signal: stopping.signal };
}
