import { parentPort } from "node:worker_threads";
import { createGuardedEngine } from "../../solver/guarded-engine.ts";
import { tradeAnswer } from "../../src/explore/trade-answer.ts";
import type { TradeReport, TradeRequest } from "./trade-messages.ts";

const timeLimitMs = 60_000;

const port = parentPort;
if (port) {
  const engine = createGuardedEngine();
  engine.warm();
  port.on("message", async ({ sequence, ...question }: TradeRequest) => {
    const answer = await tradeAnswer(question, engine.solve, timeLimitMs);
    port.postMessage({ kind: "traded", sequence, answer } satisfies TradeReport);
  });
}
