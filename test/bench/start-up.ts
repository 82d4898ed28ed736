import { spawnSync } from "node:child_process";

/** What a whole process takes from nothing, and how many times that of a bare node. */
export interface ColdStart {
  readonly words: string;
  readonly ms: number;
  readonly ratio: number;
}

const commands = [["fit", "samples/sleeve.yaml"], ["--help"]] as const;

/** Cold starts of the built program, by turns with a bare node, because a machine is not equally busy all the time. */
export function coldStarts(times: number): readonly ColdStart[] {
  const asked = [["-e", "0"], ...commands.map((words) => ["dist/evenrow.js", ...words])];
  const taken = asked.map((): number[] => []);
  for (let time = 0; time <= times; time++)
    asked.forEach((words, at) => {
      const started = performance.now();
      spawnSync(process.execPath, words, { stdio: "ignore" });
      // The first round reads the files into memory.
      if (time > 0) taken[at]!.push(performance.now() - started);
    });
  const [bare, ...medians] = taken.map((ms) => ms.sort((a, b) => a - b)[Math.floor(times / 2)]!);
  return [
    { words: "bare node -e 0, ms", ms: bare!, ratio: 1 },
    ...medians.map((ms, at) => ({ words: `cold ${commands[at]![0]}, ms`, ms, ratio: ms / bare! })),
  ];
}
