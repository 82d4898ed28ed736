import {
  copyFileSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { keys, openSession, type SessionOptions, type TerminalSession } from "../support/terminal-session.ts";
import { sample } from "./support/driver.ts";

const program = fileURLToPath(new URL("../../dist/evenrow.js", import.meta.url));

let folder: string;
let file: string;
let session: TerminalSession | undefined;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "evenrow-screen-"));
  file = join(folder, "sleeve.yaml");
  copyFileSync(fileURLToPath(new URL("../../samples/sleeve.yaml", import.meta.url)), file);
});

afterEach(async () => {
  session?.kill("SIGKILL");
  await session?.exited;
  rmSync(folder, { recursive: true });
});

/** Opens the program on the garment; a shell around it shows what is on the screen once it has ended. */
function explore(options: SessionOptions = {}, words = `explore ${file}`): TerminalSession {
  const environment = { XDG_STATE_HOME: join(folder, "state"), ...options.environment };
  const command = `echo before; ${process.execPath} ${program} ${words}; echo "left with $?"`;
  session = openSession(["/bin/bash", "-c", command], { ...options, environment });
  return session;
}

/** Presses keys one by one, each a moment after the one before, as hands do. */
async function press(on: TerminalSession, ...pressed: readonly string[]): Promise<void> {
  for (const key of pressed) {
    on.send(key);
    await new Promise((resolve) => setTimeout(resolve, key === keys.escape ? 120 : 40));
  }
}

/** The program itself, inside of the shell. */
const childOf = ({ pid }: TerminalSession): number =>
  Number(readFileSync(`/proc/${pid}/task/${pid}/children`, "utf8").trim());

async function expectGivenBack(on: TerminalSession, code: number): Promise<void> {
  await on.shows(`left with ${code}`);
  expect(on.isAlternate()).toBe(false);
  expect(on.cursorIsHidden()).toBe(false);
  expect(on.screen()[0]).toBe("before");
}

describe("the screen in a terminal", () => {
  test("open, change, hold, undo, save and quit; the file keeps its comments, the terminal is given back", async () => {
    const on = explore();
    await on.shows("cost 1.637, proven best");
    expect(on.isAlternate()).toBe(true);
    expect(on.cursorIsHidden()).toBe(true);

    await press(on, keys.down, keys.right, "+");
    await on.shows("2..10 ◂");
    await on.shows(/not saved.*proven best/);
    await press(on, " ");
    await on.shows(/spread .*held/);
    await press(on, "u");
    await on.shows("2..10 ◂");
    await press(on, "/", ..."bottom", keys.enter, keys.left, "+");
    await on.shows("▸ 3..20");
    await on.shows(/not saved.*proven best/);
    await press(on, "s");
    await on.shows("Saved");
    const expected = sample("sleeve")
      .replace("allow: 2..9", "allow: 2..10")
      .replace("bottom: 2..20", "bottom: 3..20");
    expect(readFileSync(file, "utf8")).toBe(expected);
    await press(on, "q");
    await expectGivenBack(on, 0);
  });

  test("changes on disk meanwhile are seen, and nothing is written before it is said which are wanted", async () => {
    const on = explore();
    await on.shows("proven best");
    await press(on, keys.down, "+");
    await on.shows("▸ 3..9");
    const theirs = `${sample("sleeve")}# theirs\n`;
    writeFileSync(file, theirs);
    await press(on, "s");
    await on.shows("was changed on disk");
    expect(readFileSync(file, "utf8")).toBe(theirs);
    await press(on, "t");
    await on.shows("This is what is on disk");
    await press(on, "u");
    await on.shows("▸ 3..9");
    await press(on, "s");
    await on.shows("Saved");
    expect(readFileSync(file, "utf8")).toBe(sample("sleeve").replace("2..9", "3..9"));
  });

  test("Ctrl-C leaves at once, and what was not saved is offered the next time", async () => {
    const on = explore();
    await on.shows("proven best");
    await press(on, keys.down, "+", keys.ctrl("c"));
    await expectGivenBack(on, 0);
    const again = explore();
    await again.shows("from an earlier time");
    await press(again, keys.enter);
    await again.shows("Your changes are back");
    await again.shows("3..9");
    await press(again, "u", "q");
    await expectGivenBack(again, 0);
  });

  test.each([
    ["SIGTERM", 0],
    ["SIGKILL", 137],
  ] as const)("%s loses no change", async (signal, code) => {
    const on = explore();
    await on.shows("proven best");
    await press(on, keys.down, "+");
    const kept = join(folder, "state", "evenrow", "unsaved");
    await on.until(
      () => existsSync(kept) && readdirSync(kept).some((name) => name.endsWith(".json")),
      "the change on disk",
    );
    process.kill(childOf(on), signal);
    await on.shows(`left with ${code}`);
    const again = explore();
    await again.shows("from an earlier time");
  });

  test("a fault of the program gives the terminal back, tells it in words, and loses no change", async () => {
    const fault = join(folder, "fault.cjs");
    writeFileSync(
      fault,
      'if (require("worker_threads").isMainThread) process.once("SIGUSR2", () => { throw new Error("made up"); });',
    );
    const on = explore({ environment: { NODE_OPTIONS: `--require ${fault}` } });
    await on.shows("proven best");
    await press(on, keys.down, "+");
    await on.shows(/not saved.*proven best/);
    process.kill(childOf(on), "SIGUSR2");
    await on.shows("left with 70");
    expect(on.isAlternate()).toBe(false);
    expect(on.cursorIsHidden()).toBe(false);
    const told = on.screen().join("\n");
    expect(told).toContain("Evenrow met a fault of its own and stopped: made up");
    expect(told).not.toMatch(/\bat .*:\d+:\d+/);
    const again = explore();
    await again.shows("from an earlier time");
  });

  test("Ctrl-Z gives the terminal to the shell, and fg draws the screen anew", async () => {
    const environment = { XDG_STATE_HOME: join(folder, "state"), PS1: "shell> ", HISTFILE: "" };
    const on = openSession(["/bin/bash", "--norc", "--noprofile", "-i"], { environment });
    session = on;
    await on.shows("shell>");
    on.send(`${process.execPath} ${program} explore ${file}\r`);
    await on.shows("proven best");
    await press(on, keys.ctrl("z"));
    await on.until(() => !on.isAlternate(), "the shell's own screen");
    await on.shows("Stopped");
    expect(on.cursorIsHidden()).toBe(false);
    on.send("fg\r");
    await on.until(() => on.isAlternate(), "the screen again");
    await on.shows("proven best");
    await press(on, keys.down);
    await on.shows(/▸ spread/);
    await press(on, "q");
    await on.until(() => !on.isAlternate(), "the shell's own screen");
  });

  test("a window that changes its size is laid out anew, and one too small says what it needs", async () => {
    const on = explore();
    await on.shows("proven best");
    on.resize(140, 45);
    await on.until(
      () => on.screen()[43]!.includes("q quit") || on.screen()[42]!.includes("q quit"),
      "the footer",
    );
    expect(on.screen().filter((line) => line.includes("proven best"))).toHaveLength(1);
    on.resize(58, 18);
    await on.shows("It needs 60 columns, 20 rows;");
    expect(on.screen().filter((line) => line.trim() !== "")).toHaveLength(5);
    on.resize(60, 20);
    await on.shows("Rules of plait");
  });

  test("what a terminal reports, and function keys with Ctrl, are passed over", async () => {
    const { send, shows, exited, output } = explore();
    await shows("proven best");
    send("\u001b[24;80R\u001b[1;5P\u001b[?1;2c");
    send("?");
    await shows("All keys");
    send("\u0003");
    expect(await exited).toBe(0);
    expect(output()).not.toContain("fault");
    expect(output()).toContain("left with 0");
  });

  test("without a file, samples are offered and one opens", async () => {
    const on = explore({}, "start");
    await on.shows("Samples to try");
    await on.shows("Sleeve with a cable");
    await press(on, keys.enter);
    await on.shows("proven best");
    await press(on, "q");
    await expectGivenBack(on, 0);
  });

  test("a new garment is asked for, and where the knitter stops the others are offered again", async () => {
    const on = explore({}, "explore");
    await on.shows("Samples to try");
    // The list ends with it, and stays there however often one goes further down.
    const samples = readdirSync("samples").filter((name) => name.endsWith(".yaml"));
    await press(on, ...Array<string>(samples.length + 2).fill(keys.down), keys.enter);
    await on.shows("What is the garment called?");
    expect(on.isAlternate()).toBe(false);
    on.send("quit\r");
    await on.until(() => on.isAlternate(), "the screen again");
    await on.shows("Samples to try");
    await press(on, keys.enter);
    await on.shows("proven best");
    await press(on, "q");
    await on.shows("left with 0");
  });

  test("a terminal that cannot move its cursor, and a screen reader, get the same facts as lines", async () => {
    for (const environment of [{ TERM: "dumb" }, { INK_SCREEN_READER: "true" }]) {
      const on = explore({ environment });
      await on.until(() => on.output().includes("Held back by ease"), "what holds the fit back");
      await press(on, keys.down, keys.down);
      await on.until(() => on.output().includes("Chosen rule: ease of plait"), "the chosen rule");
      await press(on, keys.ctrl("c"));
      await on.shows("left with 0");
      expect(on.isAlternate()).toBe(false);
      // biome-ignore lint/suspicious/noControlCharactersInRegex: an escape is what must not be there.
      if (environment.TERM === "dumb") expect(on.output()).not.toMatch(/\u001b/);
    }
  });

  test("without colours nothing is told by them, and without UTF-8 the signs are ASCII", async () => {
    const on = explore({ environment: { NO_COLOR: "1", LANG: "C", LC_ALL: "C" } });
    await on.shows("proven best");
    // biome-ignore lint/suspicious/noControlCharactersInRegex: the escapes that set a colour.
    expect(on.output()).not.toMatch(/\u001b\[(?:\d+;)*(?:3[0-7]|4[0-7]|9[0-7]|10[0-7])(?:;\d+)*m/);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: all of ASCII.
    for (const line of on.screen()) expect(line).toMatch(/^[\x00-\x7f]*$/);
    await on.shows("> interval");
  });

  test("a missing file is told in words, without a screen", async () => {
    const on = explore({}, `explore ${join(folder, "none.yaml")}`);
    await on.shows("left with 2");
    expect(on.output()).toContain("there is no such file or folder");
    expect(on.output()).not.toContain("\u001b[?1049h");
  });
});
