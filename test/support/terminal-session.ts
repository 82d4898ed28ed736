import { spawn } from "@lydell/node-pty";
import xterm from "@xterm/headless";

export interface SessionOptions {
  readonly columns?: number;
  readonly rows?: number;
  readonly environment?: Readonly<Record<string, string>>;
}

/** A program in a pseudo-terminal, and the screen that a person would see. */
export interface TerminalSession {
  readonly pid: number;
  /** The rows of the screen that is shown, without spaces at their ends. */
  readonly screen: () => readonly string[];
  readonly isAlternate: () => boolean;
  readonly cursorIsHidden: () => boolean;
  readonly send: (keys: string) => void;
  readonly resize: (columns: number, rows: number) => void;
  /** Waits until the screen shows something; fails with the screen where it never does. */
  readonly shows: (text: string | RegExp) => Promise<void>;
  readonly until: (holds: () => boolean, what: string) => Promise<void>;
  readonly exited: Promise<number>;
  /** Everything that the program wrote. */
  readonly output: () => string;
  readonly kill: (signal: string) => void;
  /** The terminal's emulator, for reading colours and signs cell by cell. */
  readonly emulator: InstanceType<typeof xterm.Terminal>;
}

const patienceMs = 20_000;
const lookEveryMs = 15;

export function openSession(command: readonly string[], options: SessionOptions = {}): TerminalSession {
  const { columns = 80, rows = 24, environment = {} } = options;
  const emulator = new xterm.Terminal({ cols: columns, rows, allowProposedApi: true, scrollback: 200 });
  const { CI: _, NO_COLOR: __, ...inherited } = process.env;
  const [file, ...args] = command;
  const child = spawn(file!, args, {
    name: environment.TERM ?? "xterm-256color",
    cols: columns,
    rows,
    env: { ...inherited, TERM: "xterm-256color", LANG: "C.UTF-8", ...environment } as Record<string, string>,
  });
  let output = "";
  child.onData((data) => {
    output += data;
    emulator.write(data);
  });
  emulator.onData((data) => child.write(data));
  const exited = new Promise<number>((resolve) => child.onExit(({ exitCode }) => resolve(exitCode)));

  const screen = (): readonly string[] => {
    const buffer = emulator.buffer.active;
    return Array.from(
      { length: emulator.rows },
      (_row, index) => buffer.getLine(buffer.viewportY + index)?.translateToString(true) ?? "",
    );
  };
  const until = async (holds: () => boolean, what: string): Promise<void> => {
    const deadline = Date.now() + patienceMs;
    while (!holds()) {
      if (Date.now() > deadline) throw new Error(`never came: ${what}\n${screen().join("\n")}`);
      await new Promise((resolve) => setTimeout(resolve, lookEveryMs));
    }
  };
  return {
    pid: child.pid,
    screen,
    isAlternate: () => emulator.buffer.active.type === "alternate",
    cursorIsHidden: () => output.lastIndexOf("\u001b[?25l") > output.lastIndexOf("\u001b[?25h"),
    send: (keys) => child.write(keys),
    resize(newColumns, newRows) {
      emulator.resize(newColumns, newRows);
      child.resize(newColumns, newRows);
    },
    shows: (text) =>
      until(
        () => screen().some((line) => (typeof text === "string" ? line.includes(text) : text.test(line))),
        String(text),
      ),
    until,
    exited,
    output: () => output,
    kill: (signal) => child.kill(signal),
    emulator,
  };
}

/** Keys as a terminal sends them. */
export const keys = {
  up: "\u001b[A",
  down: "\u001b[B",
  right: "\u001b[C",
  left: "\u001b[D",
  enter: "\r",
  escape: "\u001b",
  tab: "\t",
  backspace: "\u007f",
  ctrl: (letter: string): string => String.fromCharCode(letter.toUpperCase().charCodeAt(0) - 64),
} as const;
