import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import {
  keys,
  openSession,
  type SessionOptions,
  type TerminalSession,
} from "../../support/terminal-session.ts";

const program = `${process.execPath} dist/evenrow.js`;
let folder: string;
let file: string;
let sessions: TerminalSession[];

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "evenrow-at-machine-"));
  file = join(folder, "sleeve.yaml");
  writeFileSync(file, readFileSync("samples/sleeve.yaml"));
  sessions = [];
});
afterEach(async () => {
  for (const session of sessions) {
    session.kill("SIGKILL");
    await session.exited;
  }
  rmSync(folder, { recursive: true });
});

const state = (): string => join(folder, "state");

/** @param before what the shell does first */
function work(words = "", options: SessionOptions = {}, before = "true"): TerminalSession {
  const environment = { XDG_STATE_HOME: state(), ...options.environment };
  const command = `${before}; ${program} work ${file} ${words}; echo "left with $?"`;
  const session = openSession(["/bin/bash", "-c", command], { ...options, environment });
  sessions.push(session);
  return session;
}

const keptRow = (): number =>
  JSON.parse(
    execFileSync(process.execPath, ["dist/evenrow.js", "work", file, "--where", "--json"], {
      env: { ...process.env, XDG_STATE_HOME: state() },
      encoding: "utf8",
    }),
  ).row;

function ownerPid(): number {
  const locks = join(state(), "evenrow", "work");
  const lock = readdirSync(locks).find((name) => name.endsWith(".lock"))!;
  return JSON.parse(readFileSync(join(locks, lock), "utf8")).pid;
}

async function press(on: TerminalSession, ...pressed: readonly string[]): Promise<void> {
  for (const key of pressed) {
    on.send(key);
    await new Promise((resolve) => setTimeout(resolve, key === keys.escape ? 120 : 30));
  }
}

describe("the screen at the machine, in a terminal", () => {
  test("counts on and back, jumps, notes, leaves, and goes on where it was", async () => {
    const on = work();
    await on.shows("row 0 of 112");
    expect(on.isAlternate()).toBe(true);
    await press(on, " ", keys.enter, keys.right, keys.backspace);
    await on.shows("row 2 of 112");
    await press(on, "2", "7", keys.enter);
    await on.shows("Go from row 2 of 112 to row 27?");
    await press(on, keys.enter);
    await on.shows("row 27 of 112");
    await press(on, "n", ..."mind L5", keys.enter);
    await on.shows("Note: mind L5");
    await press(on, "q");
    await on.shows("left with 0");
    expect(on.isAlternate()).toBe(false);
    expect(on.cursorIsHidden()).toBe(false);
    expect(keptRow()).toBe(27);
    const again = work();
    await again.shows("row 27 of 112");
    await again.shows("Note: mind L5");
  });

  test("measures, fits the rest anew, is killed, and comes back following the new sheet", async () => {
    const on = work();
    await on.shows("row 0 of 112");
    await press(on, "5", "0", keys.enter, keys.enter);
    await on.shows("row 50 of 112");
    await press(on, "m", ..."17 cm", keys.enter);
    await on.shows("The width over all needles in work");
    await press(on, keys.enter);
    await on.shows("it would end at 38.1 cm");
    await press(on, "r");
    await on.shows("106 rows instead of 112");
    await press(on, keys.enter);
    await on.shows("row 50 of 106");
    process.kill(ownerPid(), "SIGKILL");
    await on.shows("left with 137");
    const again = work();
    await again.shows("row 50 of 106");
  });

  test("keys that come all at once are all counted", async () => {
    const on = work();
    await on.shows("row 0 of 112");
    on.send(" ".repeat(40));
    await on.shows("row 40 of 112");
    expect(keptRow()).toBe(40);
  });

  test("a foot switch that repeats counts once", async () => {
    const on = work("--step-key F5 --rest 300");
    await on.shows("row 0 of 112");
    const footSwitch = "\u001b[15~";
    for (let time = 0; time < 8; time++) await press(on, footSwitch);
    await on.shows("row 1 of 112");
    await new Promise((resolve) => setTimeout(resolve, 350));
    await press(on, footSwitch);
    await on.shows("row 2 of 112");
    await press(on, " ", " ");
    await on.shows("row 4 of 112");
  });

  test("two copies notice each other: one looks on, takes over, and the first stops counting", async () => {
    const first = work();
    await first.shows("row 0 of 112");
    await press(first, " ");
    await first.shows("row 1 of 112");
    const second = work();
    await second.shows("Another copy has this garment open");
    await press(second, "l");
    await second.shows("LOOKING ON");
    await press(first, " ");
    await second.shows("row 2 of 112");
    await press(second, " ");
    await second.shows("Here you only look on");
    await press(second, "t");
    await second.shows("The work is yours");
    await press(second, " ");
    await second.shows("row 3 of 112");
    await press(first, " ");
    await first.shows("Another copy has taken the work over; nothing was counted here.");
    await first.shows("row 3 of 112");
    expect(keptRow()).toBe(3);
  });

  test("a changed file is told with what differs, and asked about", async () => {
    const before = work();
    await before.shows("row 0 of 112");
    await press(before, ..."50", keys.enter, keys.enter);
    await before.shows("row 50 of 112");
    await press(before, "q");
    await before.shows("left with 0");
    writeFileSync(file, readFileSync(file, "utf8").replaceAll("36 cm", "38 cm"));
    const on = work();
    await on.shows("Rows in all: 118 instead of 112.");
    await on.shows("What you have done so far is the same in both.");
    await press(on, "n");
    await on.shows("row 50 of 118");
  });

  test("a disk that is full is told, the row is not counted, and the place stays whole", async () => {
    execFileSync(process.execPath, ["dist/evenrow.js", "work", file, "--row", "18"], {
      env: { ...process.env, XDG_STATE_HOME: state() },
    });
    const [journal] = readdirSync(join(state(), "evenrow", "work"));
    const bytes = readFileSync(join(state(), "evenrow", "work", journal!)).length;
    // The limit counts blocks of 1024 bytes: what is kept already would not fit any more.
    const on = work("", {}, `ulimit -f ${Math.floor(bytes / 1024)}`);
    await on.shows("NOT COUNTED: the place cannot be kept, a file may not become so large here.");
    await press(on, ...Array<string>(5).fill(" "));
    await on.shows("row 18 of 112");
    await press(on, "q");
    await on.shows("left with 0");
    expect(keptRow()).toBe(18);
    const again = work();
    await again.shows("row 18 of 112");
    await press(again, " ");
    await again.shows("row 19 of 112");
  });

  test("a folder that cannot be written to is told, and nothing is counted", async () => {
    for (const place of ["/proc", file]) {
      const on = work("", { environment: { XDG_STATE_HOME: place } });
      await on.shows("NOT COUNTED: the place cannot be kept");
      await press(on, " ");
      await on.shows("row 0 of 112");
      await press(on, "q");
      await on.shows("left with 0");
    }
  });

  test("a terminal that cannot move its cursor, and a screen reader, get the same as lines", async () => {
    for (const environment of [{ TERM: "dumb" }, { INK_SCREEN_READER: "true" }]) {
      const on = work("", { environment });
      await on.until(() => /sleeve: row \d+ of 112/.test(on.output()), "the place");
      await press(on, " ");
      await on.until(() => on.output().includes("Now: knit"), "what to do now");
      await press(on, "q");
      await on.shows("left with 0");
      // biome-ignore lint/suspicious/noControlCharactersInRegex: an escape is what must not be there.
      if (environment.TERM === "dumb") expect(on.output()).not.toMatch(/\u001b/);
    }
  });
});
