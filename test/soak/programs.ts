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

/** From start to end, over what the limit allows: starting, reading, checking and printing on a busy machine. */
const slackMs = 20_000;

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
  longestMs: 90_000,
  inputs: () => fc.record({ command: fc.constantFrom(...commands), file: files() }),
  attempt: async () => {
    const folder = folderForCommands();
    process.on("exit", () => rmSync(folder, { recursive: true, force: true }));
    return async ({ command, file }) => {
      const path = join(folder, "garment.yaml");
      writeFileSync(path, file);
      const [name, ...options] = command;
      const limited = name === "check" || name === "model" ? [] : ["--time-limit", String(limitSeconds)];
      const { code, told, memoryMb, tookMs } = await run([name!, path, ...options, ...limited], folder);
      must(!/\n\s+at .*:\d+:\d+/.test(told), `a stack trace: ${told.slice(-1000)}`);
      must(code !== null && [0, 1, 2, 3].includes(code), `ended with ${code}: ${told.slice(-1000)}`);
      must(memoryMb < mostMemoryMb, `took ${memoryMb.toFixed(0)} MB`);
      must(tookMs < limitSeconds * 1000 + slackMs, `took ${(tookMs / 1000).toFixed(1)} s`);
      return code === 2 ? "refused" : "accepted";
    };
  },
});

interface Ended {
  readonly code: number | null;
  readonly told: string;
  readonly memoryMb: number;
  readonly tookMs: number;
}

function run(words: readonly string[], folder: string): Promise<Ended> {
  return new Promise((done) => {
    const started = performance.now();
    const child = spawn(process.execPath, [resolve("dist/evenrow.js"), ...words], {
      env: { ...process.env, XDG_STATE_HOME: join(folder, "state") },
      stdio: ["ignore", "pipe", "pipe"],
    });
    let told = "";
    let memoryMb = 0;
    for (const stream of [child.stdout, child.stderr])
      stream.on("data", (data) => {
        if (told.length < 1_000_000) told += String(data);
      });
    const looking = setInterval(() => {
      memoryMb = Math.max(memoryMb, peakMemoryMb(child.pid));
    }, 20);
    child.on("close", (code) => {
      clearInterval(looking);
      done({ code, told, memoryMb, tookMs: performance.now() - started });
    });
  });
}

/** The most that a process held at any time so far (proc(5), Linux man-pages); 0 where that is not told. */
function peakMemoryMb(pid: number | undefined): number {
  try {
    return Number(/VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, "utf8"))?.[1] ?? 0) / 1024;
  } catch {
    return 0;
  }
}
