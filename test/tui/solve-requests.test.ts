import { expect, test } from "vitest";
import type { Engine } from "../../solver/program.ts";
import { simplexEngine } from "../../solver/simplex-engine.ts";
import type { SolveReport } from "../../tui/solver/messages.ts";
import { solveRequests } from "../../tui/solver/solve-requests.ts";
import { sample } from "./support/driver.ts";

/** Tells what was reported once the request with this sequence is done with. */
async function reportsOf(
  ask: (take: ReturnType<typeof solveRequests>) => void,
  engine: Engine,
  last: number,
) {
  const reports: SolveReport[] = [];
  await new Promise<void>((resolve) => {
    const take = solveRequests(engine, (report) => {
      reports.push(report);
      const isLast = report.kind === "all tried" || report.kind === "conflict";
      if (isLast && report.sequence === last) resolve();
    });
    ask(take);
  });
  return reports;
}

test("the fit comes first, then what one step of each rule would change, the chosen rule's before the others'", async () => {
  const first = "pieces.sleeve.grow";
  const reports = await reportsOf(
    (take) => take({ sequence: 1, source: sample("cable-sleeve"), name: "a.yaml", first }),
    simplexEngine,
    1,
  );
  expect(reports.map(({ kind }) => kind).slice(0, 3)).toEqual(["started", "answer", "step"]);
  const steps = reports.filter((report) => report.kind === "step");
  expect(steps[0]?.outcome.rule).toBe(first);
  expect(reports.at(-1)).toEqual({ kind: "all tried", sequence: 1 });
});

test("a request that a later one supersedes is dropped, and nothing is told of it any more", async () => {
  const reports = await reportsOf(
    (take) => {
      for (let sequence = 1; sequence <= 5; sequence++)
        take({ sequence, source: sample("sleeve"), name: "a.yaml" });
    },
    simplexEngine,
    5,
  );
  const answers = reports.filter(({ kind }) => kind === "answer");
  expect(answers.map(({ sequence }) => sequence)).toEqual([5]);
});

test("an engine that breaks down gives an answer that says so", async () => {
  const broken: Engine = () => Promise.reject(new Error("it broke"));
  const reports: SolveReport[] = [];
  await new Promise<void>((resolve) => {
    const take = solveRequests(broken, (report) => {
      reports.push(report);
      if (report.kind === "answer") resolve();
    });
    take({ sequence: 1, source: sample("sleeve"), name: "a.yaml" });
  });
  expect(reports.at(-1)).toMatchObject({ answer: { kind: "failed", reason: "it broke" } });
});

/** An engine that tells of each solve every now and then, and ends it only when it is stopped. */
const endless: Engine = (_, { onProgress, signal } = {}) =>
  new Promise((resolve) => {
    const telling = setInterval(() => onProgress?.({ nodes: 12, bound: 1.5, best: 4.25 }), 100);
    const stop = () => {
      clearInterval(telling);
      resolve({ status: "stopped", nodes: 12, engine: "endless" });
    };
    if (signal?.aborted) stop();
    signal?.addEventListener("abort", stop);
  });

test("a search that takes long tells how far it has come, and ends when it is told to", async () => {
  const reports: SolveReport[] = [];
  await new Promise<void>((resolve) => {
    const take = solveRequests(endless, (report) => {
      reports.push(report);
      if (report.kind === "progress") take({ end: 1 });
      if (report.kind === "answer") resolve();
    });
    take({ sequence: 1, source: sample("sleeve"), name: "a.yaml" });
    take({ end: 7 });
  });
  expect(reports.map(({ kind }) => kind)).toEqual(["started", "progress", "answer"]);
  expect(reports[1]).toMatchObject({
    reached: { phase: "Best fit", progress: { nodes: 12, bound: 1.5, best: 4.25 } },
  });
  expect(reports[2]).toMatchObject({
    answer: { result: { status: "stopped", reason: "ended by you before a fit was found" } },
  });
});

test("a request that a later one supersedes ends its search", async () => {
  const reports: SolveReport[] = [];
  let calls = 0;
  const firstEndless: Engine = (program, options) =>
    calls++ === 0 ? endless(program, options) : simplexEngine(program, options);
  await new Promise<void>((resolve) => {
    const take = solveRequests(firstEndless, (report) => {
      reports.push(report);
      if (report.kind === "answer") resolve();
    });
    take({ sequence: 1, source: sample("sleeve"), name: "a.yaml" });
    setTimeout(() => take({ sequence: 2, source: sample("sleeve"), name: "a.yaml" }), 50);
  });
  expect(reports.at(-1)).toMatchObject({
    kind: "answer",
    sequence: 2,
    answer: { result: { status: "fits" } },
  });
});
