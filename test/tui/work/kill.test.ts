import { execFile } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { spawn } from "@lydell/node-pty";
import { afterEach, beforeEach, expect, test } from "vitest";
import { keptWork, type WorkPlace, workPlace } from "../../../src/state/work-place.ts";
import { currentPiece, stepOf } from "../../../src/work/record.ts";

/**
 * A real session on a pseudo-terminal, fed keys faster than hands can press them, is killed at a random moment; then
 * the place that is kept must be the one that was shown last. Only between the moment in which a step is settled and
 * the one, some microseconds later, in which the terminal has it can a kill leave what is kept one step ahead, because
 * nothing makes two devices change in one instant; so it may never be behind, and may be ahead only hardly ever.
 * Every tenth place is read by the program itself, the others by the function that it reads it with.
 */
const kills = 300;
/** Enough for a session to start on a machine that has other work, and to count some rows. */
const longestLifeMs = 260;

/** Seen in 300 kills: 0 or 1. */
const mostAhead = 3;

const program = "dist/evenrow.js";
let folder: string;
let file: string;
let place: WorkPlace;

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), "evenrow-kill-"));
  file = join(folder, "sleeve.yaml");
  writeFileSync(file, readFileSync("samples/sleeve.yaml"));
  place = await workPlace(join(folder, "state", "evenrow"), file);
});
afterEach(() => rmSync(folder, { recursive: true }));

const environment = (): Record<string, string> => ({
  PATH: process.env.PATH ?? "",
  TERM: "xterm-256color",
  LANG: "C.UTF-8",
  XDG_STATE_HOME: join(folder, "state"),
});

const evenrow = (...words: readonly string[]) =>
  promisify(execFile)(process.execPath, [program, "work", file, ...words], { env: environment() });

interface Life {
  /** Rows in the order in which the screen said them. */
  readonly shown: readonly number[];
  readonly sent: number;
  readonly output: string;
}

/** One session, killed so many ms after it showed its first row. */
function killedAfter(lifeMs: number, keyEveryMs: number, keys: string): Promise<Life> {
  return new Promise((resolve) => {
    let output = "";
    let sent = 0;
    let typing: NodeJS.Timeout | undefined;
    const child = spawn(process.execPath, [program, "work", file], {
      name: "xterm-256color",
      cols: 80,
      rows: 24,
      env: environment(),
    });
    child.onData((data) => {
      output += data;
      if (typing !== undefined || !/row \d+ of 112/.test(output)) return;
      typing = setInterval(() => {
        child.write(keys[sent % keys.length]!);
        sent++;
      }, keyEveryMs);
      setTimeout(() => child.kill("SIGKILL"), lifeMs);
    });
    child.onExit(() => {
      clearInterval(typing);
      // What the terminal was given before the kill is still to be read.
      setTimeout(
        () =>
          resolve({
            shown: [...output.matchAll(/row (\d+) of 112/g)].map(([, row]) => Number(row)),
            sent,
            output,
          }),
        5,
      );
    });
  });
}

const keptRow = (): number => {
  const kept = keptWork(place);
  if (kept.status !== "kept") throw new Error(`nothing is kept: ${kept.status}`);
  return stepOf(currentPiece(kept.record)).row;
};

test("a session that is killed at a random moment has kept the place that it showed last", async () => {
  let seed = 20261125;
  const random = (): number => {
    seed = (Math.imul(seed, 1_103_515_245) + 12_345) >>> 0;
    return seed / 2 ** 32;
  };
  let before = 0;
  let exactly = 0;
  for (let kill = 0; kill < kills; kill++) {
    if (before > 90) await evenrow("--row", "0");
    const start = before > 90 ? 0 : before;
    const { shown, sent, output } = await killedAfter(random() * longestLifeMs, 4 + random() * 40, " ");
    const kept = keptRow();
    const last = shown.at(-1)!;
    expect(shown[0], output).toBe(start);
    expect(kept, `kill ${kill}`).toBeGreaterThanOrEqual(last);
    expect(kept, `kill ${kill}`).toBeLessThanOrEqual(start + sent);
    if (kept === last) exactly++;
    if (kill % 10 === 0)
      expect(JSON.parse((await evenrow("--where", "--json")).stdout)).toMatchObject({ row: kept, rows: 112 });
    before = kept;
  }
  expect(kills - exactly).toBeLessThanOrEqual(mostAhead);
}, 280_000);
