import { EventEmitter } from "node:events";
import { type Instance, type RenderOptions, render } from "ink";
import type { ReactNode } from "react";
import type { Effect, Message } from "../../../tui/message.ts";
import { initialState } from "../../../tui/state.ts";
import { createStore, type Store } from "../../../tui/store.ts";
import type { Capabilities } from "../../../tui/terminal/capabilities.ts";
import { createFrameWriter } from "../../../tui/terminal/frame-writer.ts";
import { update } from "../../../tui/update.ts";
import { App } from "../../../tui/view/app.tsx";
import { answerTo } from "./driver.ts";

/** The whole program with a screen of any size, without a terminal. */
export interface Screen {
  readonly store: Store;
  readonly effects: Effect[];
  /** The newest frame as lines, without styles. */
  readonly lines: () => readonly string[];
  /** The newest frame as it was handed over, with styles. */
  readonly styled: () => string;
  /** Sends what a terminal sends for keys, and lets ink hear it. */
  readonly send: (keys: string) => Promise<void>;
  /** Sends a message and lets the frame be drawn. */
  readonly tell: (message: Message) => Promise<void>;
  readonly solve: () => Promise<void>;
  readonly close: () => void;
  readonly stdin: FakeStdin;
}

/** Esc alone is told from the start of a longer sequence by what does not follow it. */
const escapeRestMs = 120;

/** @param drawn told whenever a frame was drawn */
export function openScreen(
  columns: number,
  rows: number,
  capabilities: Capabilities,
  drawn: () => void = () => {},
): Screen {
  const effects: Effect[] = [];
  const store = createStore(initialState({ columns, rows }), update, (effect) => effects.push(effect));
  const stdin = fakeStdin();
  let newest = "";
  const size = () => ({ columns, rows });
  const { stdout } = createFrameWriter(drawn, size);
  const write = stdout.write.bind(stdout);
  stdout.write = ((chunk: string, ...rest: []) => {
    if (!chunk.startsWith("\u001b[?") && chunk !== "") newest = chunk;
    return write(chunk, ...rest);
  }) as typeof stdout.write;
  const instance = renderTo(stdout, stdin, <App store={store} capabilities={capabilities} />, {
    isScreenReaderEnabled: capabilities.form !== "screen",
  });
  const rest = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));
  const tell = async (message: Message): Promise<void> => {
    store.send(message);
    await rest(1);
  };
  return {
    store,
    effects,
    // biome-ignore lint/suspicious/noControlCharactersInRegex: styles begin with an escape.
    lines: () => newest.replace(/\u001b\[[\d;]*m/g, "").split("\n"),
    styled: () => newest,
    async send(keys) {
      stdin.push(keys);
      await rest(keys === "\u001b" ? escapeRestMs : 1);
    },
    tell,
    async solve() {
      const request = effects.findLast((effect) => effect.kind === "solve");
      if (request?.kind !== "solve") throw new Error("no fit was asked for");
      await tell({ kind: "answer", sequence: request.sequence, answer: await answerTo(request.source) });
    },
    close: () => instance.unmount(),
    stdin,
  };
}

/** Draws with ink as the program does, every frame handed over as a whole. */
export const renderTo = (
  stdout: NodeJS.WriteStream,
  stdin: FakeStdin,
  tree: ReactNode,
  options: RenderOptions = {},
): Instance =>
  render(tree, {
    stdout,
    stdin: stdin as unknown as NodeJS.ReadStream,
    debug: true,
    exitOnCtrlC: false,
    patchConsole: false,
    ...options,
  });

export type FakeStdin = ReturnType<typeof fakeStdin>;

/** A terminal's input as ink reads it. */
export function fakeStdin() {
  const waiting: string[] = [];
  const stdin = Object.assign(new EventEmitter(), {
    isTTY: true,
    setEncoding: () => {},
    setRawMode: () => {},
    ref: () => {},
    unref: () => {},
    resume: () => {},
    pause: () => {},
    read: (): string | null => waiting.shift() ?? null,
    push(keys: string): void {
      waiting.push(keys);
      stdin.emit("readable");
      stdin.emit("data", keys);
    },
  });
  return stdin;
}
