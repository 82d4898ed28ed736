import { fork } from "node:child_process";
import { fileURLToPath } from "node:url";
import type { Target } from "./target.ts";
import type { Report, Stretch, Tally } from "./work-through.ts";

/** What came of a target, over all the processes that it took. */
export interface Told extends Tally {
  readonly failures: number;
}

/** More than these are one fault many times over. */
const mostFailures = 25;

/** Works through a target in processes of their own: after an input that never ends, or ends its process, the next goes on. */
export async function watchTarget(target: Target, stretch: Stretch): Promise<Told> {
  let told: Told = {
    inputs: 0,
    accepted: 0,
    slowestMs: 0,
    slowestAt: stretch.from,
    memoryMb: 0,
    failures: 0,
  };
  for (let from = stretch.from; from < stretch.to && told.failures < mostFailures; ) {
    const part = await inOneProcess(target, { ...stretch, from });
    told = {
      inputs: told.inputs + part.inputs,
      accepted: told.accepted + part.accepted,
      ...(part.slowestMs > told.slowestMs
        ? { slowestMs: part.slowestMs, slowestAt: part.slowestAt }
        : { slowestMs: told.slowestMs, slowestAt: told.slowestAt }),
      memoryMb: Math.max(told.memoryMb, part.memoryMb),
      failures: told.failures + part.failures,
    };
    from = part.next;
  }
  return told;
}

function inOneProcess(
  target: Target,
  { seed, from, to, show }: Stretch,
): Promise<Told & { readonly next: number }> {
  return new Promise((done) => {
    const words = [
      "--child",
      target.name,
      "--seed",
      `${seed}`,
      "--from",
      `${from}`,
      "--inputs",
      `${to - from}`,
    ];
    const child = fork(fileURLToPath(import.meta.url), [...words, ...(show ? ["--show"] : [])], {
      execArgv: ["--max-old-space-size=900"],
    });
    let tally: Tally = { inputs: 0, accepted: 0, slowestMs: 0, slowestAt: from, memoryMb: 0 };
    let at = from;
    let failures = 0;
    let hanging: NodeJS.Timeout | undefined;
    const fail = (number: number, reason: string, shown = ""): void => {
      failures += 1;
      console.log(`FAILED ${target.name}, input ${number}: ${reason}\n${shown}`);
      if (failures >= mostFailures) child.kill("SIGKILL");
    };
    const watch = (): void => {
      clearTimeout(hanging);
      hanging = setTimeout(() => {
        fail(at, `did not end within ${target.longestMs / 1000} s`);
        child.kill("SIGKILL");
      }, target.longestMs);
    };
    child.on("message", (report: Report) => {
      watch();
      if (report.kind === "begun") at = report.at;
      if (report.kind === "failed") fail(report.at, report.reason, report.shown);
      if (report.kind === "so far") tally = report;
    });
    child.on("exit", (code, signal) => {
      clearTimeout(hanging);
      if (code !== 0 && failures === 0) fail(at, `ended its process with ${code ?? signal}`);
      done({ ...tally, failures, next: code === 0 ? to : at + 1 });
    });
  });
}
