import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Terminal } from "../../src/cli/command.ts";
import { runCommandLine } from "../../src/cli/run.ts";
import { commandLines } from "./inputs/words.ts";
import { must, type Target, targetOf } from "./target.ts";

/** A folder with the files that command lines name; everything that is written lands in it. */
export function folderForCommands(): string {
  const folder = mkdtempSync(join(tmpdir(), "evenrow-soak-"));
  for (const name of ["sleeve", "too-narrow"])
    writeFileSync(join(folder, `${name}.yaml`), readFileSync(`samples/${name}.yaml`));
  writeFileSync(join(folder, "broken.yaml"), "format: evenrow/1\nbed: {");
  writeFileSync(join(folder, "binary.yaml"), Uint8Array.of(0, 1, 2, 255));
  writeFileSync(join(folder, "empty.yaml"), "");
  writeFileSync(join(folder, "taken.txt"), "mine");
  mkdirSync(join(folder, "folder"));
  return folder;
}

/**
 * Every command line ends with one of the exit codes that there are and with words, never by a fault; the file that is there
 * already keeps what it says unless the line says --force.
 */
export const commandLinesTried: Target = targetOf({
  name: "command lines",
  usual: 5000,
  longestMs: 60_000,
  inputs: commandLines,
  attempt: async () => {
    const folder = folderForCommands();
    process.on("exit", () => rmSync(folder, { recursive: true, force: true }));
    process.chdir(folder);
    process.env.XDG_STATE_HOME = join(folder, "state");
    const garment = readFileSync("sleeve.yaml");
    return async (words) => {
      const told: string[] = [];
      const terminal: Terminal = {
        out: (text) => told.push(text),
        outBytes: () => {},
        say: (text) => told.push(text),
        columns: 80,
        interactive: false,
        readStdin: async () => garment,
      };
      // The usual minute for a fit would be spent on each of thousands of lines.
      const code = await runCommandLine(withTimeLimit(words), terminal);
      const text = told.join("\n");
      must([0, 1, 2, 3].includes(code), `the command ended with ${code}: ${text.slice(0, 500)}`);
      must(text !== "" || code === 0, "nothing was said");
      must(!/\n\s+at .*:\d+:\d+/.test(text), `a stack trace: ${text}`);
      const forced = words.some((word) => /^(?:--force|-[a-z]*f)/.test(word));
      if (!forced)
        must(readFileSync("taken.txt", "utf8") === "mine", "a file was overwritten without --force");
      writeFileSync("taken.txt", "mine");
      if (forced || words.includes("--into")) writeFileSync("sleeve.yaml", garment);
      must(readFileSync("sleeve.yaml").equals(garment), "the garment was overwritten without --force");
      return code === 0 || code === 1 ? "accepted" : "refused";
    };
  },
});

const limited = ["fit", "why", "sheet", "chart", "refit", "work"];

const withTimeLimit = (words: readonly string[]): readonly string[] =>
  limited.includes(words[0] ?? "") && !words.includes("--time-limit") && !words.includes("--")
    ? [...words, "--time-limit", "2"]
    : words;
