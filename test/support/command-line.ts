import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { runCommandLine } from "../../src/cli/run.ts";
import { openSession } from "./terminal-session.ts";

/** A command line as documents show it, for a shell that knows quotes, `<`, `>` and remarks. */
export interface ShownLine {
  /** The program first. */
  readonly words: readonly string[];
  readonly input?: string;
  readonly output?: string;
}

/** Reads one line; what stands after ` #`, or in brackets after four blanks, is a remark. */
export function readShownLine(line: string): ShownLine {
  const bare = line.replace(/\s+#.*$/, "").replace(/ {4}\(.*\)$/, "");
  const words = [...bare.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain!);
  const after = (sign: string): string | undefined => {
    const at = words.indexOf(sign);
    return at < 0 ? undefined : words.splice(at, 2)[1];
  };
  const [input, output] = [after("<"), after(">")];
  return { words, ...(input !== undefined && { input }), ...(output !== undefined && { output }) };
}

export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** A folder of its own with the samples, in which command lines are run as a knitter would run them. */
export interface Workshop {
  readonly folder: string;
  /** Runs a line in this process, without a terminal. */
  readonly run: (line: ShownLine) => Promise<Ran>;
  /** Runs the built program in a terminal until its screen is there, and leaves it by its own key. */
  readonly openScreen: (words: readonly string[]) => Promise<number>;
  readonly write: (name: string, text: string) => void;
  /** Goes back to where the tests run, and clears the folder away. */
  readonly leave: () => void;
}

export function enterWorkshop(): Workshop {
  const home = process.cwd();
  const { XDG_STATE_HOME: stateBefore } = process.env;
  const folder = mkdtempSync(join(tmpdir(), "evenrow-workshop-"));
  copySamples(join(folder, "samples"));
  const state = join(folder, ".state");
  const built = resolve("dist/evenrow.js");
  process.env.XDG_STATE_HOME = state;
  process.chdir(folder);
  return {
    folder,
    write: (name, text) => writeFileSync(join(folder, name), text),
    async run({ words, input, output }) {
      let [out, err] = ["", ""];
      const code = await runCommandLine(words.slice(1), {
        out: (text) => {
          out += `${text}\n`;
        },
        outBytes: (bytes) => {
          out += Buffer.from(bytes).toString("latin1");
        },
        say: (text) => {
          err += `${text}\n`;
        },
        columns: 80,
        interactive: false,
        readStdin: async () => (input === undefined ? new Uint8Array() : readFileSync(input)),
      });
      if (output !== undefined) writeFileSync(output, out);
      return { code, out, err };
    },
    async openScreen(words) {
      const session = openSession([process.execPath, built, ...words.slice(1)], {
        columns: 120,
        rows: 40,
        environment: { XDG_STATE_HOME: state },
      });
      await session.until(
        () => session.isAlternate() && session.screen().some((line) => line !== ""),
        "a screen",
      );
      session.send("q");
      return session.exited;
    },
    leave() {
      process.chdir(home);
      if (stateBefore === undefined) delete process.env.XDG_STATE_HOME;
      else process.env.XDG_STATE_HOME = stateBefore;
      rmSync(folder, { recursive: true });
    },
  };
}

/** Without the pictures, which no command reads. */
function copySamples(into: string): void {
  mkdirSync(into);
  for (const name of readdirSync("samples"))
    if (name !== "pictures") cpSync(join("samples", name), join(into, name), { recursive: true });
}
