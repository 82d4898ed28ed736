import { execFile } from "node:child_process";
import { cpSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { endlessProgram } from "../../support/endless-program.ts";
import { keys, openSession } from "../../support/terminal-session.ts";

const long = "test/fixtures/cords-side-by-side.yaml";
const { program: endless, folder, remove } = endlessProgram();
afterAll(remove);

interface Ended {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the built program without a terminal. */
const evenrow = (words: readonly string[], program = "dist/evenrow.js"): Promise<Ended> =>
  new Promise((resolve) => {
    execFile(process.execPath, [program, ...words], (error, out, err) => {
      resolve({ code: error ? Number(error.code) : 0, out, err });
    });
  });

const inTerminal = (program: string, words: readonly string[], environment = {}) =>
  openSession([process.execPath, program, ...words], { columns: 120, rows: 200, environment });

const shown = (screen: readonly string[]): string => screen.join(" ").replace(/\s+/g, " ");

describe("a solve without end, on a terminal", () => {
  it("shows how far it has come, and ends at Ctrl-C with the best so far", async () => {
    const session = inTerminal(endless, ["fit", "samples/scarf.yaml", "--rivals", "0"]);
    await session.shows(/Best fit: \d+ s.*best so far \d+\.\d{3}.*\(Ctrl-C stops\)/);
    session.send(keys.ctrl("c"));
    expect(await session.exited).toBe(3);
    await session.shows("Stopped by you; this is the best so far.");
    const text = shown(session.screen());
    expect(text).toMatch(/What it gives up: \d+\.\d{3} in all \(not proven/);
    expect(text).toContain("this is the best so far. It may be improved by at most 1.000.");
    // The line that was written over is gone.
    expect(text).not.toContain("Ctrl-C stops");
    expect(session.cursorIsHidden()).toBe(false);
  });

  it("ends with 130 where nothing was found yet, and at once where Ctrl-C comes twice", async () => {
    const session = inTerminal(endless, ["fit", "samples/scarf.yaml"], {
      EVENROW_TEST_ENGINE: "finds nothing",
    });
    await session.shows(/Best fit: \d+ s/);
    session.send(keys.ctrl("c"));
    session.send(keys.ctrl("c"));
    expect(await session.exited).toBe(130);
    expect(shown(session.screen())).not.toContain("Ctrl-C stops");
  });

  it("shows nothing of how far it has come where it is quick", async () => {
    const session = inTerminal("dist/evenrow.js", ["fit", "samples/sleeve.yaml"]);
    expect(await session.exited).toBe(0);
    expect(session.output()).not.toContain("Best fit:");
  });
});

describe("a search without end in the explore screen", () => {
  it("is shown, and is ended by a key with the best so far", async () => {
    const session = openSession([process.execPath, endless, "explore", "samples/scarf.yaml"], {
      columns: 150,
      rows: 40,
      environment: { XDG_STATE_HOME: folder },
    });
    await session.shows(/Best fit: \d+ s/);
    await session.until(() => /best so far \d+\.\d{3}/.test(shown(session.screen())), "the best so far");
    session.send("e");
    await session.shows("not proven");
    session.send("q");
    expect(await session.exited).toBe(0);
  });
});

describe("the time limit", () => {
  it("ends a command with 3 and in words, where nothing was found", async () => {
    const { code, out, err } = await evenrow(["fit", long, "--time-limit", "0.3"]);
    expect([code, out]).toEqual([3, ""]);
    expect(err).toMatch(/before a fit was found/);
    const json = await evenrow(["fit", long, "--time-limit", "0.3", "--json"]);
    expect(json.code).toBe(3);
    expect(JSON.parse(json.out)).toMatchObject({ status: "stopped", proven: false });
  });
});

describe("--engine", () => {
  it("lets HiGHS answer, with the same fit and without a word about it", async () => {
    const [usual, highs] = await Promise.all(
      ["usual", "highs"].map((engine) =>
        evenrow(["fit", "samples/front.yaml", "--json", "--engine", engine]),
      ),
    );
    const costs = ({ out }: Ended): readonly number[] => {
      const { cost, rivals } = JSON.parse(out) as { cost: number; rivals: { cost: number }[] };
      return [cost, ...rivals.map((rival) => rival.cost)];
    };
    expect([usual!.code, highs!.code]).toEqual([0, 0]);
    expect(costs(highs!)).toEqual(costs(usual!));
    expect(JSON.parse(highs!.out)).not.toHaveProperty("notes");
  });

  it("says which solvers there are", async () => {
    const { code, err } = await evenrow(["fit", "samples/sleeve.yaml", "--engine", "abacus"]);
    expect(code).toBe(2);
    expect(err).toContain('--engine takes one of usual and highs, and this is "abacus".');
  });

  it("says how to get HiGHS where its package is missing, and fits without it otherwise", async () => {
    const program = join(folder, "plain/evenrow.js");
    cpSync("dist", join(folder, "plain"), { recursive: true });
    const missing = await evenrow(["fit", "samples/sleeve.yaml", "--engine", "highs"], program);
    expect([missing.code, missing.out]).toEqual([2, ""]);
    expect(missing.err).toContain("npm install highs");
    const usual = await evenrow(["fit", "samples/sleeve.yaml", "--json"], program);
    expect(usual.code).toBe(0);
    expect(JSON.parse(usual.out)).toMatchObject({ status: "fits", proven: true });
  });
});
