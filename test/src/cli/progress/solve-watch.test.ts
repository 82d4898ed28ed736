import { describe, expect, it } from "vitest";
import type { Engine, EngineOptions, Outcome, Program } from "../../../../solver/program.ts";
import type { Terminal } from "../../../../src/cli/command.ts";
import { type Clock, watchSolves } from "../../../../src/cli/progress/solve-watch.ts";

const program: Program = { columns: [], rows: [] };
const solved: Outcome = { status: "optimal", point: [], cost: 7, bound: 7, nodes: 1, engine: "fake" };
const stoppedWith: Outcome = { status: "stopped", point: [], cost: 9, bound: 4, nodes: 3, engine: "fake" };

/** An engine under whose solves a test can look, and which ends when the test says so. */
function scripted() {
  const asked: { options: EngineOptions; end: (outcome: Outcome) => void }[] = [];
  const engine: Engine = (_, options = {}) =>
    new Promise((end) => {
      asked.push({ options, end });
      options.signal?.addEventListener("abort", () => end(stoppedWith));
    });
  return { engine, asked };
}

/** A clock that a test moves; every tick that is due on the way is made. */
function movedByHand() {
  let at = 0;
  let ticking: { every: number; next: number; tick: () => void } | undefined;
  const pauses: number[] = [];
  const clock: Clock = {
    now: () => at,
    pause: async () => {
      pauses.push(at);
    },
    every: (ms, tick) => {
      ticking = { every: ms, next: at + ms, tick };
      return () => {
        ticking = undefined;
      };
    },
  };
  const pass = (ms: number): void => {
    const until = at + ms;
    while (ticking && ticking.next <= until) {
      at = ticking.next;
      ticking.next += ticking.every;
      ticking.tick();
    }
    at = until;
  };
  return { clock, pass, pauses, isTicking: () => ticking !== undefined };
}

function setUp({ hasStatus = true, timeLimitMs = 60_000 } = {}) {
  const lines: (string | undefined)[] = [];
  const said: string[] = [];
  const interrupts: (() => void)[] = [];
  const terminal: Terminal = {
    out: () => expect.fail("a watch writes no results"),
    say: (text) => said.push(text),
    columns: 80,
    interactive: hasStatus,
    readStdin: async () => new Uint8Array(),
    ...(hasStatus && { status: (line: string | undefined) => lines.push(line) }),
    onInterrupt: (stop) => {
      interrupts.push(stop);
      return () => interrupts.splice(interrupts.indexOf(stop), 1);
    },
  };
  const fake = scripted();
  const time = movedByHand();
  const watch = watchSolves(fake.engine, terminal, { timeLimitMs, phase: "Best fit", clock: time.clock });
  return { ...fake, ...time, watch, lines, said, interrupts };
}

const settle = () => new Promise((resolve) => setImmediate(resolve));

describe("watchSolves", () => {
  it("shows nothing of work that takes no longer than a second", async () => {
    const { watch, asked, pass, lines, said } = setUp();
    const answer = watch.engine(program);
    pass(999);
    asked[0]!.end(solved);
    expect(await answer).toBe(solved);
    watch.close();
    expect(lines.filter((line) => line !== undefined)).toEqual([]);
    expect(said).toEqual([]);
  });

  it("shows after a second how far a solve has come, and takes the line away at the end", async () => {
    const { watch, asked, pass, lines, isTicking } = setUp();
    const answer = watch.engine(program);
    pass(1000);
    expect(lines.at(-1)).toBe("Best fit: 1 s (Ctrl-C stops)");
    asked[0]!.options.onProgress!({ nodes: 1204, bound: 11.02, best: 12.3456 });
    pass(1000);
    expect(lines.at(-1)).toBe(
      "Best fit: 2 s, 1204 nodes, best so far 12.346, none below 11.020 (Ctrl-C stops)",
    );
    asked[0]!.end(solved);
    await answer;
    watch.close();
    expect(lines.at(-1)).toBeUndefined();
    expect(isTicking()).toBe(false);
    expect(watch.ending()).toBeUndefined();
  });

  it("says so where a solve has found nothing yet", () => {
    const { watch, asked, pass, lines } = setUp();
    void watch.engine(program);
    asked[0]!.options.onProgress!({ nodes: 0, bound: 2 });
    pass(1500);
    expect(lines.at(-1)).toBe("Best fit: 2 s, none found yet, none below 2.000 (Ctrl-C stops)");
  });

  it("counts the programs of a phase that takes many", async () => {
    const { watch, asked, pass, lines } = setUp();
    watch.phase("Next best fit 1 of 5", "many");
    const answers = [1, 2, 3].map(() => watch.engine(program));
    asked[0]!.end(solved);
    asked[1]!.end(solved);
    await settle();
    asked[2]!.options.onProgress!({ nodes: 31, best: 5 });
    pass(3000);
    expect(lines.at(-1)).toBe("Next best fit 1 of 5: 3 s, 2 programs solved, 31 nodes (Ctrl-C stops)");
    watch.phase("Next best fit 2 of 5", "many");
    pass(250);
    expect(lines.at(-1)).toContain("Next best fit 2 of 5: 3 s, 0 programs solved");
    asked[2]!.end(solved);
    await Promise.all(answers);
  });

  it("says a line every five seconds where none can be written over", () => {
    const { watch, pass, said } = setUp({ hasStatus: false });
    void watch.engine(program);
    pass(4900);
    expect(said).toEqual([]);
    pass(11_000);
    expect(said).toEqual(["Best fit: 5 s ...", "Best fit: 10 s ...", "Best fit: 15 s ..."]);
  });

  it("ends a solve at Ctrl-C with what it has, and those after it too", async () => {
    const { watch, asked, pass, lines, interrupts } = setUp();
    const answer = watch.engine(program);
    pass(1000);
    interrupts[0]!();
    expect(lines.at(-1)).toBe("Stopping ...");
    expect(await answer).toBe(stoppedWith);
    expect(watch.ending()).toBe("knitter");
    expect(asked[0]!.options.signal?.aborted).toBe(true);
  });

  it("takes Ctrl-C from the system only while a solve is under way", async () => {
    const { watch, asked, interrupts } = setUp();
    expect(interrupts).toEqual([]);
    const first = watch.engine(program);
    const second = watch.engine(program);
    expect(interrupts).toHaveLength(1);
    asked[0]!.end(solved);
    await first;
    expect(interrupts).toHaveLength(1);
    asked[1]!.end(solved);
    await second;
    expect(interrupts).toEqual([]);
  });

  it("counts questions that take no engine, and lets a Ctrl-C through between them", async () => {
    const { watch, pass, pauses, lines, interrupts } = setUp();
    for (let question = 0; question < 200; question += 1) {
      expect(await watch.turn("Looking for the least changes")).toBe(true);
      pass(10);
    }
    expect(lines.at(-1)).toMatch(/^Looking for the least changes: 2 s, 1\d\d tried \(Ctrl-C stops\)$/);
    expect(pauses).toHaveLength(40);
    expect(interrupts).toHaveLength(1);
    interrupts[0]!();
    expect(await watch.turn("Looking for the least changes")).toBe(false);
    expect(watch.ending()).toBe("knitter");
    watch.close();
    expect(interrupts).toEqual([]);
  });

  it("ends questions at the time limit", async () => {
    const { watch, pass } = setUp({ timeLimitMs: 3000 });
    expect(await watch.turn("Looking for the least changes")).toBe(true);
    pass(3000);
    expect(await watch.turn("Looking for the least changes")).toBe(false);
    expect(watch.ending()).toBe("time limit");
  });

  it("keeps Ctrl-C between questions of which one takes the engine", async () => {
    const { watch, asked, interrupts } = setUp();
    await watch.turn("Looking for the least changes");
    const answer = watch.engine(program);
    asked[0]!.end(solved);
    await answer;
    expect(interrupts).toHaveLength(1);
  });

  it("gives each solve no more than is left of the time, and tells where it ran out", async () => {
    const { watch, asked, pass } = setUp({ timeLimitMs: 10_000 });
    const first = watch.engine(program);
    expect(asked[0]!.options.timeLimitMs).toBe(10_000);
    asked[0]!.end(solved);
    await first;
    pass(7000);
    const second = watch.engine(program, { timeLimitMs: 60_000 });
    expect(asked[1]!.options.timeLimitMs).toBe(3000);
    asked[1]!.end(stoppedWith);
    await second;
    expect(watch.ending()).toBe("time limit");
    void watch.engine(program, { timeLimitMs: 5 });
    expect(asked[2]!.options.timeLimitMs).toBe(5);
    pass(9000);
    void watch.engine(program);
    expect(asked[3]!.options.timeLimitMs).toBe(0);
  });

  it("gives back what it took where an engine throws", async () => {
    const { interrupts, clock } = { ...movedByHand(), interrupts: [] as (() => void)[] };
    const terminal: Terminal = {
      out: () => undefined,
      say: () => undefined,
      columns: 80,
      interactive: true,
      readStdin: async () => new Uint8Array(),
      onInterrupt: (stop) => {
        interrupts.push(stop);
        return () => interrupts.pop();
      },
    };
    const broken: Engine = async () => {
      throw new Error("broken");
    };
    const watch = watchSolves(broken, terminal, { timeLimitMs: 1000, phase: "Best fit", clock });
    await expect(watch.engine(program)).rejects.toThrow("broken");
    expect(interrupts).toEqual([]);
  });
});
