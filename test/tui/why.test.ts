import { describe, expect, test } from "vitest";
import { simplexEngine } from "../../solver/simplex-engine.ts";
import { frame } from "../../tui/content/frame.ts";
import { unicodeGlyphs } from "../../tui/content/glyphs.ts";
import { plainText } from "../../tui/content/line.ts";
import { spokenLines } from "../../tui/content/spoken.ts";
import type { SolveReport } from "../../tui/solver/messages.ts";
import { solveRequests } from "../../tui/solver/solve-requests.ts";
import { type Driver, opened, sample } from "./support/driver.ts";

/** All that the solving thread tells when it is asked why. */
async function told(source: string, sequence: number): Promise<readonly SolveReport[]> {
  const reports: SolveReport[] = [];
  await new Promise<void>((resolve) => {
    solveRequests(simplexEngine, (report) => {
      reports.push(report);
      if (report.kind === "why" && report.isDone) resolve();
    })({ why: true, sequence, source, name: "test.yaml" });
  });
  return reports.filter(({ kind }) => kind !== "started");
}

async function asked(name: string): Promise<{ program: Driver; reports: readonly SolveReport[] }> {
  const program = await opened(name);
  program.press("w");
  const reports = await told(sample(name), program.state().sequence);
  return { program, reports };
}

const send = (program: Driver, reports: readonly SolveReport[]): void =>
  program.send(...reports.flatMap((report) => (report.kind === "started" ? [] : [report])));

const shown = (program: Driver): string => frame(program.state(), unicodeGlyphs).map(plainText).join("\n");

describe("asking why nothing fits", () => {
  test("asks the solving thread, shows that it is at work and then what it tells, on the screen and in words", async () => {
    const { program, reports } = await asked("too-narrow");
    expect(program.effects.at(-1)).toMatchObject({ kind: "solve", why: true, source: sample("too-narrow") });
    expect(shown(program)).toContain("Working ... Esc gives it up.");
    send(program, reports.slice(0, 3));
    expect(shown(program)).toContain("Leaving out one rule after the other ...");
    send(program, reports);
    expect(shown(program)).toContain("- wide plait: spread 6 to 9 needles (line 17)");
    expect(shown(program)).toContain(
      "leave at least 3 needles at each side of wide plait on cuff instead of 5",
    );
    const spoken = spokenLines(program.state()).join("\n");
    expect(spoken).toContain("Rule: wide plait: spread 6 to 9 needles (line 17)");
    expect(spoken).toContain("Chosen: leave at least 3 needles");
    expect(spoken).toContain("Everything was tried.");
  });

  test("Enter makes the chosen change as one step that undo takes back", async () => {
    const { program, reports } = await asked("too-narrow");
    send(program, reports);
    expect(shown(program)).toContain("Enter make it");
    program.press("down", "enter");
    expect(program.state().screen.kind).toBe("main");
    expect(program.text()).toBe(sample("too-narrow").replace("allow: 6..9", "allow: 4..9"));
    expect(program.effects.findLast(({ kind }) => kind === "solve")).not.toHaveProperty("why");
    await program.solve();
    expect(program.garment().solving.outcome.kind).toBe("fits");
    program.press("u");
    expect(program.text()).toBe(sample("too-narrow"));
  });

  test("the choice stops at the ends of the list, and Enter without a change says so", async () => {
    const { program, reports } = await asked("too-narrow");
    program.press("enter");
    expect(program.state().message).toEqual({ kind: "refused", words: "There is no change here to make." });
    send(program, reports);
    program.press("up", "down", "down", "down");
    expect(program.state().screen).toMatchObject({ kind: "why", at: 1 });
  });

  test("Esc gives it up: what comes late is dropped, and the rules are asked about again", async () => {
    const { program, reports } = await asked("too-narrow");
    program.press("escape");
    expect(program.state().screen.kind).toBe("main");
    expect(program.effects.at(-1)).toMatchObject({ kind: "solve", sequence: program.state().sequence });
    expect(program.effects.at(-1)).not.toHaveProperty("why");
    const before = program.state();
    send(program, reports);
    expect(program.state()).toEqual(before);
  });

  test("what comes while the help lies over it is there afterwards", async () => {
    const { program, reports } = await asked("too-narrow");
    program.press("?");
    send(program, reports);
    program.press("escape");
    expect(shown(program)).toContain("Everything was tried.");
  });

  test("a thread that breaks down is told", async () => {
    const { program } = await asked("too-narrow");
    const { sequence } = program.state();
    program.send({
      kind: "answer",
      sequence,
      answer: { kind: "failed", reason: "the solving thread ended" },
    });
    expect(shown(program)).toContain("No answer was found: the solving thread ended.");
  });
});

test("of a garment that fits, the rules that bind are told, and there is no change to make", async () => {
  const { program, reports } = await asked("scarf");
  send(program, reports);
  expect(shown(program)).toContain("It fits. These rules bind");
  expect(shown(program).replaceAll(/\s+/g, " ")).toContain(
    "interval of twin plait: at its end, but one step further (2, 4, 6) changes nothing; 6: 2.29 more",
  );
  expect(shown(program)).not.toContain("make it");
  program.press("enter");
  expect(program.state().message?.words).toContain("Something fits already");
});

test("while the fit is being sought it cannot be asked", async () => {
  const program = await opened("sleeve");
  program.press("+", "w");
  expect(program.state().message).toEqual({
    kind: "refused",
    words: "The fit is still being sought; wait for it.",
  });
});
