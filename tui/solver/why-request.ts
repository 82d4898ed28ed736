import { setImmediate as turn } from "node:timers/promises";
import type { Engine } from "../../solver/program.ts";
import { readSource } from "../../src/explore/read-source.ts";
import { fitGarment } from "../../src/fit/solve.ts";
import { Ended, type Pace, whyNot, whySo } from "../../src/why/why.ts";
import { whyTold } from "../../src/why/why-told.ts";
import type { SolveReport, SolveRequest } from "./messages.ts";

const timeLimitMs = 60_000;

/** Finds out why nothing fits, or which rules bind, and tells of every finding as it comes. */
export async function findWhy(
  { sequence, source, name, first: _, why: __, ...beside }: SolveRequest,
  engine: Engine,
  report: (report: SolveReport) => void,
  superseded: () => boolean,
): Promise<void> {
  const { garment, locate } = readSource(source, name, beside);
  if (!garment) return;
  const deadline = performance.now() + timeLimitMs;
  let doing = "";
  const tell = (why: Parameters<typeof whyTold>[0], isDone: boolean): void => {
    if (!superseded()) report({ kind: "why", sequence, why: whyTold(why, locate), doing, isDone });
  };
  const pace: Pace = {
    leftMs: () => deadline - performance.now(),
    goOn: async (words) => {
      doing = words;
      // Requests that came meanwhile are taken in before the next question is asked.
      await turn();
      if (superseded() || performance.now() > deadline) throw new Ended();
    },
    found: (why) => tell(why, false),
  };
  const file = { source, name, garment, beside };
  const result = await fitGarment(garment, engine, { rivals: 0, timeLimitMs });
  if (superseded() || result.status === "stopped") {
    if (!superseded()) report({ kind: "why", sequence, doing: result.status, isDone: true });
    return;
  }
  tell(
    result.status === "fits" ? await whySo(file, result.fit, engine, pace) : await whyNot(file, engine, pace),
    true,
  );
}
