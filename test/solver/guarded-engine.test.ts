import { readFileSync } from "node:fs";
import solver from "javascript-lp-solver";
import { afterEach, describe, expect, it } from "vitest";
import { violations } from "../../solver/feasibility.ts";
import { createGuardedEngine, type GuardedEngine, type GuardOptions } from "../../solver/guarded-engine.ts";
import type { Program, Progress, Relation } from "../../solver/program.ts";
import { builtWorkerUrl } from "../../solver/worker-url.ts";
import { conformingEngine } from "./support/engine-conformance.ts";

const opened: GuardedEngine[] = [];
function open(options?: GuardOptions): GuardedEngine {
  const engine = createGuardedEngine(options);
  opened.push(engine);
  return engine;
}
afterEach(async () => {
  await Promise.all(opened.splice(0).map((engine) => engine.close()));
});

/** The least whole number from `least` on. */
const atLeast = (least: number): Program => ({
  columns: [{ name: "n", cost: 1, whole: true }],
  rows: [{ name: "least", terms: [[0, 1]], relation: ">=", bound: least }],
});

/** A worker whose usual engine runs `code` for each program; the other engine is the real one. */
const workerThat = (code: string): URL =>
  new URL(
    `data:text/javascript,${encodeURIComponent(`
      import { parentPort, workerData } from "node:worker_threads";
      if (workerData.engine === "simplex") {
        parentPort.on("message", ({ id, program }) => { ${code} });
        parentPort.postMessage("ready");
      } else await import(${JSON.stringify(builtWorkerUrl().href)});`)}`,
  );

/** The engine-hang case: a model in javascript-lp-solver's own form, of which every row is an upper, lower or equal bound. */
function hangingProgram(): Program {
  interface Model {
    opType: "max";
    constraints: Record<string, { max?: number; min?: number; equal?: number }>;
    variables: Record<string, Record<string, number>>;
    ints: Record<string, 1>;
    binaries: Record<string, 1>;
  }
  const text = readFileSync(new URL("../fixtures/engine-hang.json", import.meta.url), "utf8");
  const { constraints, variables, ints, binaries, opType }: Model = JSON.parse(text);
  expect(opType).toBe("max");
  const entries = Object.entries(variables);
  return {
    columns: entries.map(([name, { obj = 0 }]) => ({
      name,
      cost: -obj,
      whole: name in ints || name in binaries,
      ...(name in binaries ? { upper: 1 } : {}),
    })),
    rows: Object.entries(constraints).map(([name, { max, min, equal }]) => ({
      name,
      terms: entries.flatMap(([, entered], column) =>
        entered[name] === undefined ? [] : [[column, entered[name]] as const],
      ),
      relation: ((max !== undefined && "<=") || (min !== undefined && ">=") || "=") as Relation,
      bound: max ?? min ?? equal ?? Number.NaN,
    })),
  };
}

describe("createGuardedEngine", () => {
  const lasting = createGuardedEngine();
  conformingEngine("the guarded engine", () => lasting.solve);

  it("lets HiGHS answer, and says so, where the usual engine never returns", async () => {
    const program = hangingProgram();
    const { solve } = open();
    const outcome = await solve(program);
    if (outcome.status !== "optimal") expect.fail(`ended as ${JSON.stringify(outcome)}`);
    expect(outcome.engine).toBe("HiGHS");
    expect(outcome.note).toBe(
      "The usual solver did not finish in time; this answer comes from the second solver, HiGHS.",
    );
    // GLPK finds the same for this program.
    expect(outcome.cost).toBeCloseTo(-304.06656, 5);
    expect(violations(program, outcome.point)).toEqual([]);
    const after = await solve(atLeast(3));
    expect(after).toMatchObject({ status: "optimal", cost: 3, engine: "javascript-lp-solver" });
    expect(after).not.toHaveProperty("note");
  });

  it("does not take the usual engine's word where a large number hides a fraction", async () => {
    // At 1e8 javascript-lp-solver calls 1e-8 of `used` whole, and so pays for none of it.
    const hidden = solver.Solve({
      optimize: "cost",
      opType: "min",
      constraints: { least: { min: 1 }, most: { max: 0 }, one: { max: 1 } },
      variables: { n: { cost: 1, least: 1, most: 1 }, used: { cost: 1, most: -1e8, one: 1 } },
      ints: { used: 1 },
    });
    expect(hidden).toMatchObject({ feasible: true, isIntegral: true, result: 1 + 1e-8, used: 1e-8 });
    const outcome = await open().solve({
      columns: [
        { name: "n", cost: 1, whole: false },
        { name: "used", cost: 1, whole: true, upper: 1 },
      ],
      rows: [
        { name: "least", terms: [[0, 1]], relation: ">=", bound: 1 },
        {
          name: "most",
          terms: [
            [0, 1],
            [1, -1e8],
          ],
          relation: "<=",
          bound: 0,
        },
      ],
    });
    expect(outcome).toMatchObject({ status: "optimal", cost: 2, engine: "HiGHS" });
    expect(outcome.note).toContain("too large for this engine to tell whole values by");
  });

  it("answers many programs, each with its own answer", async () => {
    const { solve, warm } = open();
    warm();
    const outcomes = await Promise.all(Array.from({ length: 100 }, (_, least) => solve(atLeast(least))));
    expect(outcomes.map((outcome) => "cost" in outcome && outcome.cost)).toEqual(
      Array.from({ length: 100 }, (_, least) => least),
    );
  });

  it("answers the programs that waited behind one that never returned", async () => {
    const workerUrl = workerThat(
      `if (program.rows[0].bound === 1) for (;;);
       const point = [program.rows[0].bound];
       parentPort.postMessage({ id, outcome: { status: "optimal", point, cost: point[0], bound: point[0], nodes: 1, engine: "fake" } });`,
    );
    const { solve } = open({ workerUrl, patienceMs: 100 });
    const outcomes = await Promise.all([0, 1, 2, 3].map((least) => solve(atLeast(least))));
    expect(outcomes.map(({ status, engine }) => [status, engine])).toEqual([
      ["optimal", "fake"],
      ["optimal", "HiGHS"],
      ["optimal", "fake"],
      ["optimal", "fake"],
    ]);
    expect(outcomes.map((outcome) => "cost" in outcome && outcome.cost)).toEqual([0, 1, 2, 3]);
  });

  it("does not ask an engine again that was silent twice in a row", async () => {
    const { solve } = open({ workerUrl: workerThat("for (;;);"), patienceMs: 50 });
    const outcomes = await Promise.all([1, 2, 3, 4].map((least) => solve(atLeast(least))));
    const notes = outcomes.map(({ note }) => note ?? "");
    expect(notes.map((note) => note.includes("was not asked"))).toEqual([false, false, true, true]);
    expect((await solve(atLeast(5))).note).toContain("was not asked");
    expect(outcomes.map((outcome) => "cost" in outcome && outcome.cost)).toEqual([1, 2, 3, 4]);
  });

  it.each([
    ["breaks down", "throw new Error('out of thread')", "broke down (out of thread)"],
    ["ends", "process.exit(3)", "broke down (its worker ended with code 3)"],
    [
      "gives up",
      "parentPort.postMessage({ id, outcome: { status: 'failed', reason: 'Lost.', engine: 'fake' } })",
      "failed (Lost)",
    ],
    [
      "stops early",
      "parentPort.postMessage({ id, outcome: { status: 'stopped', nodes: 1, engine: 'fake' } })",
      "did not finish in time",
    ],
    [
      "tells a wrong cost",
      "parentPort.postMessage({ id, outcome: { status: 'optimal', point: [4], cost: 3, bound: 3, nodes: 1, engine: 'fake' } })",
      "told a cost that its answer does not have",
    ],
    [
      "had something better",
      `parentPort.postMessage({ id, progress: { nodes: 1, best: 4, point: [4] } });
       parentPort.postMessage({ id, outcome: { status: 'optimal', point: [5], cost: 5, bound: 5, nodes: 1, engine: 'fake' } })`,
      "called an answer the best, though a better one was found",
    ],
    [
      "had something at all",
      `parentPort.postMessage({ id, progress: { nodes: 1, best: 9, point: [9] } });
       parentPort.postMessage({ id, outcome: { status: 'infeasible', nodes: 1, engine: 'fake' } })`,
      "said that nothing is possible, though something was found",
    ],
    [
      "lies",
      "parentPort.postMessage({ id, outcome: { status: 'optimal', point: [1], cost: 1, bound: 1, nodes: 1, engine: 'fake' } })",
      "gave an answer that breaks the program's own rows",
    ],
  ])("lets HiGHS answer where the usual engine %s", async (_, code, said) => {
    const { solve } = open({ workerUrl: workerThat(code) });
    const outcome = await solve(atLeast(4));
    expect(outcome).toMatchObject({ status: "optimal", cost: 4, engine: "HiGHS" });
    expect(outcome.note).toContain(said);
  });

  it("fails where both engines break down", async () => {
    const workerUrl = new URL("data:text/javascript,throw new Error('no memory')");
    const outcome = await open({ workerUrl }).solve(atLeast(1));
    expect(outcome).toMatchObject({ status: "failed", reason: expect.stringContaining("no memory") });
  });

  it("stops at the time limit, whatever the engine does", async () => {
    const { solve } = open({ workerUrl: workerThat("for (;;);"), patienceMs: 60_000 });
    expect(await solve(atLeast(1), { timeLimitMs: 20 })).toMatchObject({ status: "stopped" });
  });

  it("gives what the usual engine had where the other one is stopped without anything", async () => {
    const workerUrl = new URL(
      `data:text/javascript,${encodeURIComponent(`
        import { parentPort, workerData } from "node:worker_threads";
        const had = workerData.engine === "simplex" ? { point: [7], cost: 7 } : {};
        const outcome = { status: "stopped", nodes: 5, engine: workerData.engine, ...had };
        parentPort.on("message", ({ id }) => parentPort.postMessage({ id, outcome }));
        parentPort.postMessage("ready");`)}`,
    );
    const outcome = await open({ workerUrl }).solve(atLeast(1));
    expect(outcome).toMatchObject({ status: "stopped", point: [7], engine: "simplex" });
    expect(outcome).not.toHaveProperty("note");
  });

  /** A worker in which each engine, by its name, runs `code` for each program. */
  const workersThat = (code: Readonly<Record<"simplex" | "highs", string>>): URL =>
    new URL(
      `data:text/javascript,${encodeURIComponent(`
        import { parentPort, workerData } from "node:worker_threads";
        const tell = (id, progress) => parentPort.postMessage({ id, progress });
        const end = (id, outcome) => parentPort.postMessage({ id, outcome: { engine: workerData.engine, ...outcome } });
        const answer = {
          simplex: ({ id, stop }) => { ${code.simplex} },
          highs: ({ id, stop }) => { ${code.highs} },
        };
        parentPort.on("message", answer[workerData.engine]);
        parentPort.postMessage("ready");`)}`,
    );
  const gaveUp = "end(id, { status: 'stopped', nodes: 3, bound: 2 });";

  it("keeps the best that was told by an engine that does not stop when it is asked to", async () => {
    const workerUrl = workersThat({
      simplex: gaveUp,
      highs: `tell(id, { nodes: 1, bound: 1, best: 9, point: [9] });
              tell(id, { nodes: 2, bound: 3, best: 7, point: [7] });
              tell(id, { nodes: 4 });
              for (;;);`,
    });
    const stop = new AbortController();
    const told: Progress[] = [];
    const outcome = await open({ workerUrl }).solve(atLeast(1), {
      signal: stop.signal,
      onProgress: (progress) => {
        told.push(progress);
        if (progress.nodes === 4) stop.abort();
      },
    });
    expect(outcome).toMatchObject({ status: "stopped", point: [7], cost: 7, bound: 3, nodes: 4 });
    expect(outcome.note).toContain("this answer comes from the second solver, HiGHS.");
    expect(told).toEqual([
      { nodes: 3, bound: 2, best: 9, point: [9] },
      { nodes: 3, bound: 3, best: 7, point: [7] },
      { nodes: 4, bound: 3, best: 7 },
    ]);
  });

  it("does not speak of an answer where there is none", async () => {
    const workerUrl = workersThat({ simplex: gaveUp, highs: gaveUp });
    const outcome = await open({ workerUrl }).solve(atLeast(1));
    expect(outcome).toMatchObject({ status: "stopped", bound: 2 });
    expect(outcome).not.toHaveProperty("note");
    expect(outcome).not.toHaveProperty("point");
  });

  it("keeps the best that was told until the time limit, and no point that the program does not allow", async () => {
    const workerUrl = workersThat({
      simplex: `tell(id, { nodes: 1, best: 8, point: [8] }); tell(id, { nodes: 2, best: 0, point: [0] }); ${gaveUp}`,
      highs: "for (;;);",
    });
    const outcome = await open({ workerUrl }).solve(atLeast(1), { timeLimitMs: 200 });
    expect(outcome).toMatchObject({
      status: "stopped",
      point: [8],
      cost: 8,
      bound: 2,
      engine: "javascript-lp-solver",
    });
  });

  it("asks an engine to stop, and the ones that wait behind it", async () => {
    const workerUrl = workersThat({
      simplex: `if (stop[0] === 0) tell(id, { nodes: 1 });
                while (Atomics.load(stop, 0) === 0);
                end(id, { status: "stopped", nodes: 5, point: [6], cost: 6 });`,
      highs: "for (;;);",
    });
    const stop = new AbortController();
    const { solve } = open({ workerUrl, patienceMs: 60_000 });
    const outcomes = await Promise.all(
      [1, 2].map((least) => solve(atLeast(least), { signal: stop.signal, onProgress: () => stop.abort() })),
    );
    for (const outcome of outcomes) expect(outcome).toMatchObject({ status: "stopped", point: [6] });
  });

  it("asks HiGHS alone where it is asked for, and holds its answer to the program", async () => {
    const { solve } = open({ only: "highs" });
    const outcome = await solve(atLeast(4));
    expect(outcome).toMatchObject({ status: "optimal", cost: 4, engine: "HiGHS" });
    expect(outcome).not.toHaveProperty("note");
    const workerUrl = workersThat({
      simplex: "for (;;);",
      highs: "end(id, { status: 'optimal', point: [1], cost: 1, bound: 1, nodes: 1 });",
    });
    expect(await open({ only: "highs", workerUrl }).solve(atLeast(4))).toMatchObject({
      status: "failed",
      reason: "The solver HiGHS gave an answer that breaks the program's own rows.",
    });
  });

  it("fails where what the engines say cannot all be true", async () => {
    const workerUrl = workersThat({
      simplex: "end(id, { status: 'stopped', nodes: 1, bound: 6 });",
      highs: "end(id, { status: 'optimal', point: [4], cost: 4, bound: 4, nodes: 1 });",
    });
    expect(await open({ workerUrl }).solve(atLeast(4))).toMatchObject({
      status: "failed",
      reason: expect.stringContaining("gave an answer that is better than it was said that any can be"),
    });
  });

  it("says that the second solver is missing where it would have to take over", async () => {
    const workerUrl = workerThat("throw new Error('out of thread')");
    expect(await open({ workerUrl, isHighsThere: false }).solve(atLeast(4))).toMatchObject({
      status: "failed",
      reason:
        "The usual solver broke down (out of thread), and the second one, the package highs, is not installed.",
    });
  });

  it("fails what is open when it is closed, and whatever is asked later", async () => {
    const engine = createGuardedEngine({ workerUrl: workerThat("for (;;);") });
    const open = engine.solve(atLeast(1));
    await engine.close();
    expect(await open).toMatchObject({ status: "failed" });
    expect(await engine.solve(atLeast(1))).toMatchObject({ status: "failed" });
  });
});
