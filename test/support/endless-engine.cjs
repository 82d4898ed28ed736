const { parentPort, Worker, workerData } = require("node:worker_threads");
const { join } = require("node:path");

/**
 * An engine that never comes to its end: it tells the real engine's answer as the best so far, and goes on until it is
 * stopped. Where EVENROW_TEST_ENGINE is "finds nothing" it tells nothing at all.
 */
const findsNothing = process.env.EVENROW_TEST_ENGINE === "finds nothing";
const real = new Worker(join(__dirname, "real-engine-worker.cjs"), { workerData });
const questions = new Map();

real.on("message", (message) => {
  if (message === "ready") return parentPort.postMessage(message);
  if (!("outcome" in message) || message.outcome.status !== "optimal") return;
  const { cost, point, nodes } = message.outcome;
  const { id, stop } = questions.get(message.id);
  const known = { nodes, ...(!findsNothing && { best: cost, bound: cost - 1, point }) };
  const tick = setInterval(() => {
    parentPort.postMessage({ id, progress: known });
    if (Atomics.load(stop, 0) === 0) return;
    clearInterval(tick);
    const { best, ...rest } = known;
    const outcome = { status: "stopped", engine: "endless", ...rest, ...(best !== undefined && { cost: best }) };
    parentPort.postMessage({ id, outcome });
  }, 100);
});

parentPort.on("message", (question) => {
  questions.set(question.id, question);
  real.postMessage(question);
});
