import type { Target, Trial } from "./target.ts";

/** Which inputs of a target, by their numbers; the same number is the same input for the same seed. */
export interface Stretch {
  readonly seed: number;
  readonly from: number;
  readonly to: number;
  readonly show: boolean;
}

/** What a process tells of its work; the last one for all of it. */
export type Report =
  | { readonly kind: "begun"; readonly at: number }
  | { readonly kind: "failed"; readonly at: number; readonly reason: string; readonly shown: string }
  | ({ readonly kind: "so far" } & Tally);

export interface Tally {
  readonly inputs: number;
  readonly accepted: number;
  readonly slowestMs: number;
  readonly slowestAt: number;
  readonly memoryMb: number;
}

/** Inputs that are made at a time. */
const batch = 100;

/** So that little is lost of what is told where a process ends before its time. */
const tellEveryMs = 1000;

/** Tells the process above of every input before it is tried, so that one that never ends is known. */
export async function workThrough(target: Target, { seed, from, to, show }: Stretch): Promise<void> {
  const tally = { inputs: 0, accepted: 0, slowestMs: 0, slowestAt: from };
  let toldAt = performance.now();
  const soFar = async (): Promise<void> => {
    toldAt = performance.now();
    await tell({ kind: "so far", ...tally, memoryMb: process.resourceUsage().maxRSS / 1024 });
  };
  for (let first = from - (from % batch); first < to; first += batch) {
    const trials = await target.trials(seed + first, Math.min(batch, to - first));
    for (const [index, trial] of trials.entries()) {
      const at = first + index;
      if (at < from) continue;
      if (show) console.log(`${at}: ${trial.shown()}`);
      await tell({ kind: "begun", at });
      if (performance.now() - toldAt > tellEveryMs) await soFar();
      const { outcome, tookMs } = await tried(trial);
      tally.inputs += 1;
      if (tookMs > tally.slowestMs) [tally.slowestMs, tally.slowestAt] = [tookMs, at];
      if (typeof outcome === "string") tally.accepted += outcome === "accepted" ? 1 : 0;
      else await tell({ kind: "failed", at, reason: outcome.reason, shown: trial.shown() });
    }
  }
  await soFar();
}

async function tried(trial: Trial) {
  const before = process.cpuUsage();
  let outcome: "accepted" | "refused" | { readonly reason: string };
  try {
    outcome = await trial.run();
  } catch (error) {
    outcome = { reason: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
  const { user, system } = process.cpuUsage(before);
  return { outcome, tookMs: (user + system) / 1000 };
}

const tell = (report: Report): Promise<void> =>
  new Promise((done) => {
    if (process.send === undefined) done();
    else process.send(report, undefined, {}, () => done());
  });
