import { expect, test } from "vitest";
import type { TradeReport, TradeRequest } from "../../tui/solver/trade-messages.ts";
import { createTrader, type Trader } from "../../tui/solver/trader.ts";

/** A thread that answers by the name of what it is asked: at once, never, or by breaking down. */
const thread = new URL(
  `data:text/javascript,${encodeURIComponent(`
    import { parentPort } from "node:worker_threads";
    parentPort.on("message", ({ sequence, name }) => {
      if (name === "breaks") throw new Error("it broke");
      if (name === "answers") parentPort.postMessage({ kind: "traded", sequence, answer: { kind: "none", reason: "none" } });
      if (name === "late") setTimeout(() => parentPort.postMessage({ kind: "traded", sequence, answer: { kind: "none", reason: "late" } }), 50);
    });
  `)}`,
);

const request = (sequence: number, name: string): TradeRequest => ({
  sequence,
  name,
  source: "",
  traded: [],
  held: [],
});

/** Hands a trader over and gives what it reports, until a report about the request with this sequence. */
function reportsUntil(last: number, ask: (trader: Trader) => void): Promise<readonly TradeReport[]> {
  const reports: TradeReport[] = [];
  return new Promise((resolve) => {
    const trader = createTrader(
      (report) => {
        reports.push(report);
        if (report.sequence === last) void trader.close().then(() => resolve(reports));
      },
      () => thread,
    );
    ask(trader);
  });
}

test("tells the answer to the newest request, and nothing of older ones", async () => {
  const reports = await reportsUntil(2, (trader) => {
    trader.ask(request(1, "late"));
    trader.ask(request(2, "late"));
  });
  expect(reports.map(({ sequence }) => sequence)).toEqual([2]);
});

test("tells nothing of what was given up, and takes the next request all the same", async () => {
  const reports = await reportsUntil(2, (trader) => {
    trader.ask(request(1, "never"));
    trader.giveUp();
    trader.ask(request(2, "answers"));
  });
  expect(reports.map(({ sequence }) => sequence)).toEqual([2]);
});

test("says so where its thread breaks down", async () => {
  const reports = await reportsUntil(1, (trader) => trader.ask(request(1, "breaks")));
  expect(reports).toEqual([{ kind: "traded", sequence: 1, answer: { kind: "none", reason: "it broke" } }]);
});
