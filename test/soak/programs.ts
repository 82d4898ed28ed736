import { spawn } from "node:child_process";
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import fc from "fast-check";
import { folderForCommands } from "./command-lines.ts";
import { changedBytes } from "./inputs/bytes.ts";
import { explodingGarments } from "./inputs/exploding.ts";
import { sampleTexts } from "./inputs/samples.ts";
import { changedTrees, nudgedTrees, written } from "./inputs/trees.ts";
import { must, type Target, targetOf } from "./target.ts";

interface Run {
  readonly command: readonly string[];
  readonly file: Uint8Array;
}

const encoder = new TextEncoder();
const limitSeconds = 2;

/**
 * Processor time of all its threads, over what the limit allows: starting, reading, checking and printing. The clock on the
 * wall says nothing where others use the machine.
 */
const slackMs = 8000;

/** On the wall; what takes longer hangs. */
const longestMs = 150_000;

const mostMemoryMb = 1024;

const files = (): fc.Arbitrary<Uint8Array> =>
  fc.oneof(
    { weight: 4, arbitrary: explodingGarments().map((text) => encoder.encode(text)) },
    { weight: 4, arbitrary: written(nudgedTrees()).map((text) => encoder.encode(text)) },
    { weight: 1, arbitrary: written(changedTrees(1, 3)).map((text) => encoder.encode(text)) },
    { weight: 1, arbitrary: changedBytes(sampleTexts(".yaml")) },
  );

const commands: readonly (readonly string[])[] = [
  ["fit"],
  ["fit", "--json", "--rivals", "20"],
  ["why"],
  ["sheet"],
  ["chart", "--format", "svg"],
  ["refit", "--row", "20", "--length", "7 cm"],
  ["check"],
  ["model"],
  ["work", "--next"],
];

/**
 * The program as it is built, run as a shell runs it, on garments that ask for more than a machine has: it ends at its time
 * limit, in less than a gigabyte, with one of its exit codes and without a stack trace.
 */
export const programRuns: Target = targetOf<Run>({
  name: "whole runs",
  usual: 400,
  longestMs: 2 * longestMs,
  inputs: () => fc.record({ command: fc.constantFrom(...commands), file: files() }),
  attempt: async () => {
    const folder = folderForCommands();
    process.on("exit", () => rmSync(folder, { recursive: true, force: true }));
    return async ({ command, file }) => {
      const path = join(folder, "garment.yaml");
      writeFileSync(path, file);
      const [name, ...options] = command;
      const limited = name === "check" || name === "model" ? [] : ["--time-limit", String(limitSeconds)];
      const { code, told, memoryMb, cpuMs } = await run([name!, path, ...options, ...limited], folder);
      must(code !== null, `had not ended after ${longestMs / 1000} s`);
      must([0, 1, 2, 3].includes(code), `ended with ${code}: ${told.slice(-1000)}`);
      must(!/\n\s+at .*:\d+:\d+/.test(told), `a stack trace: ${told.slice(-1000)}`);
      must(memoryMb < mostMemoryMb, `took ${memoryMb.toFixed(0)} MB`);
      // The engine's thread works beside the main one.
      const allowedMs = 2 * 1000 * limitSeconds + slackMs;
      must(name === "model" || cpuMs < allowedMs, `took ${(cpuMs / 1000).toFixed(1)} s of processor time`);
      return code === 2 ? "refused" : "accepted";
    };
  },
});

interface Ended {
  /** Null where it had to be killed. */
  readonly code: number | null;
  readonly told: string;
  readonly memoryMb: number;
  readonly cpuMs: number;
}

function run(words: readonly string[], folder: string): Promise<Ended> {
  return new Promise((done) => {
    const child = spawn(process.execPath, [resolve("dist/evenrow.js"), ...words], {
      env: { ...process.env, XDG_STATE_HOME: join(folder, "state") },
      stdio: ["ignore", "pipe", "pipe"],
    });
    let told = "";
    for (const stream of [child.stdout, child.stderr])
      stream.on("data", (data) => {
        if (told.length < 1_000_000) told += String(data);
      });
    let used = { memoryMb: 0, cpuMs: 0 };
    const looking = setInterval(() => {
      used = usedBy(child.pid) ?? used;
    }, 20);
    const killing = setTimeout(() => child.kill("SIGKILL"), longestMs);
    child.on("close", (code) => {
      clearInterval(looking);
      clearTimeout(killing);
      done({ code, told, ...used });
    });
  });
}

/** What a process has used so far (proc(5), Linux man-pages); undefined where that is not told, or it has ended. */
function usedBy(pid: number | undefined): { readonly memoryMb: number; readonly cpuMs: number } | undefined {
  try {
    const status = readFileSync(`/proc/${pid}/status`, "utf8");
    const peakKb = /VmHWM:\s+(\d+) kB/.exec(status)?.[1];
    if (peakKb === undefined) return undefined;
    const stat = readFileSync(`/proc/${pid}/stat`, "utf8");
    const [user, system] = stat
      .slice(stat.lastIndexOf(")") + 2)
      .split(" ")
      .slice(11, 13)
      .map(Number);
    return { memoryMb: Number(peakKb) / 1024, cpuMs: (user! + system!) * msPerTick };
  } catch {
    return undefined;
  }
}

/** Clock ticks are hundredths of a second on every Linux in use. */
const msPerTick = 10;
