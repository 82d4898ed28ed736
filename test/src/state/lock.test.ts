import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { hostname, tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { claimLock, type Lock, livingOwnerOf, type Owner, ownerOf } from "../../../src/state/lock.ts";

const source = fileURLToPath(new URL("../../../src/state/lock.ts", import.meta.url));

/** Claims a lock whenever it is told to, says how that came out, and whether it still has it. */
const holder = `
  import { createInterface } from "node:readline";
  import { claimLock } from ${JSON.stringify(source)};
  let lock;
  for await (const line of createInterface({ input: process.stdin })) {
    if (line === "still") console.log(lock?.isMine() ?? false);
    else {
      const claim = claimLock(process.argv[2], line === "take over");
      lock = claim.lock;
      console.log(claim.status);
    }
  }`;

const made = mkdtempSync(join(tmpdir(), "evenrow-lock-program-"));
const program = join(made, "holder.mjs");
let folder: string;
let file: string;
let children: ChildProcess[];

beforeAll(async () => {
  await build({
    stdin: { contents: holder, resolveDir: process.cwd(), loader: "ts" },
    bundle: true,
    platform: "node",
    format: "esm",
    outfile: program,
  });
  return () => rmSync(made, { recursive: true });
});

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "evenrow-lock-"));
  file = join(folder, "one.lock");
  children = [];
});

afterEach(async () => {
  for (const child of children)
    if (child.exitCode === null && child.signalCode === null) {
      child.kill("SIGKILL");
      await once(child, "exit");
    }
  rmSync(folder, { recursive: true });
});

interface Holder {
  readonly child: ChildProcess;
  readonly ask: (words: string) => Promise<string>;
}

function open(): Holder {
  const child = spawn(process.execPath, [program, file], { stdio: ["pipe", "pipe", "inherit"] });
  children.push(child);
  const lines = createInterface({ input: child.stdout! })[Symbol.asyncIterator]();
  return {
    child,
    async ask(words) {
      child.stdin!.write(`${words}\n`);
      return String((await lines.next()).value);
    },
  };
}

function mine(takeOver = false): Lock {
  const claim = claimLock(file, takeOver);
  if (claim.status !== "mine") throw new Error("the lock is held");
  return claim.lock;
}

const livingProcess: Owner = { pid: process.pid, host: hostname(), born: "", since: 0, token: "other" };

describe("a lock", () => {
  it("is one's own until it is let go, and says who has it", () => {
    const lock = mine();
    expect(lock.isMine()).toBe(true);
    expect(ownerOf(file)).toMatchObject({ pid: process.pid, host: hostname() });
    expect(claimLock(file, false)).toMatchObject({ status: "held", owner: { pid: process.pid } });
    lock.release();
    expect(readdirSync(folder)).toEqual([]);
    expect(livingOwnerOf(file)).toBeUndefined();
  });

  it("of another process is held while that one lives, and taken at once when it was killed", async () => {
    const other = open();
    expect(await other.ask("claim")).toBe("mine");
    expect(claimLock(file, false)).toMatchObject({ status: "held", owner: { pid: other.child.pid } });
    other.child.kill("SIGKILL");
    await once(other.child, "exit");
    expect(livingOwnerOf(file)).toBeUndefined();
    expect(mine().isMine()).toBe(true);
  });

  it("that is taken over is seen by the one that had it, which then takes nothing away from the other", async () => {
    const other = open();
    expect(await other.ask("claim")).toBe("mine");
    expect(await other.ask("still")).toBe("true");
    const lock = mine(true);
    expect(await other.ask("still")).toBe("false");
    expect(await other.ask("take over")).toBe("mine");
    expect(lock.isMine()).toBe(false);
    lock.release();
    expect(await other.ask("still")).toBe("true");
  });

  it("asked for by many at once has one owner", async () => {
    const all = Array.from({ length: 6 }, open);
    for (let round = 0; round < 5; round++) {
      rmSync(file, { force: true });
      const claims = await Promise.all(all.map(({ ask }) => ask("claim")));
      expect(claims.filter((claim) => claim === "mine")).toHaveLength(1);
    }
  });

  it("left by a killed process and asked for by many at once ends with one owner that knows it", async () => {
    const all = Array.from({ length: 6 }, open);
    for (let round = 0; round < 5; round++) {
      writeFileSync(file, JSON.stringify({ ...livingProcess, born: "not when this one was" }));
      await Promise.all(all.map(({ ask }) => ask("claim")));
      const still = await Promise.all(all.map(({ ask }) => ask("still")));
      expect(still.filter((answer) => answer === "true")).toHaveLength(1);
    }
  });

  it("of a process whose number was given to another one since is taken", () => {
    writeFileSync(file, JSON.stringify({ ...livingProcess, born: "1" }));
    const isToldApart = readFileSync("/proc/self/stat", "utf8").length > 0;
    expect(isToldApart && mine().isMine()).toBe(true);
  });

  it("of a machine of which nothing is known is held", () => {
    writeFileSync(file, JSON.stringify({ ...livingProcess, host: "elsewhere", pid: 1 }));
    expect(claimLock(file, false).status).toBe("held");
    expect(livingOwnerOf(file)?.host).toBe("elsewhere");
  });

  it("that says nothing sensible is taken", () => {
    writeFileSync(file, "{");
    expect(mine().isMine()).toBe(true);
  });

  it("says why it cannot be had", () => {
    writeFileSync(join(folder, "file"), "");
    expect(() => claimLock(join(folder, "file", "one.lock"), false)).toThrow(/ENOTDIR/);
  });
});
