import { setImmediate as turn } from "node:timers/promises";
import { type Instance, render } from "ink";
import { stateFolder as usualStateFolder } from "../src/state/folder.ts";
import { createPerformer, type Departure } from "./run/effects.ts";
import { initialState } from "./state.ts";
import { createStore } from "./store.ts";
import { capabilitiesOf } from "./terminal/capabilities.ts";
import { createFrameWriter, createLineWriter } from "./terminal/frame-writer.ts";
import { keysOnly } from "./terminal/keys-only.ts";
import { createTerminalModes } from "./terminal/terminal-modes.ts";
import { update } from "./update.ts";
import { App } from "./view/app.tsx";
import { Guard } from "./view/guard.tsx";

export interface ExploreOptions {
  /** The garment to open; without one the samples and recent files are offered. */
  readonly file?: string;
  readonly colour: boolean;
  /** Which of the file's sizes is explored; the first one where none is named. */
  readonly garmentSize?: string;
}

/** How the exploring ended. */
export type ExploreEnd =
  | { readonly kind: "quit" }
  /** The knitter asked for a garment of their own to be made. */
  | { readonly kind: "new" }
  | { readonly kind: "broken"; readonly reason: string };

const usualSize = { columns: 80, rows: 24 };

/** Rows and columns may change several times while a window is dragged. */
const restAfterResizeMs = 40;

/** Opens the terminal UI and gives the terminal back as it was, however the exploring ends. */
export async function explore({ file, garmentSize, colour }: ExploreOptions): Promise<ExploreEnd> {
  const { stdin, stdout } = process;
  const capabilities = capabilitiesOf(process.env, colour);
  const modes = createTerminalModes(stdout, capabilities.form === "screen");
  const size = () => ({ columns: stdout.columns ?? usualSize.columns, rows: stdout.rows ?? usualSize.rows });
  const writer = (capabilities.form === "screen" ? createFrameWriter : createLineWriter)(
    (text) => stdout.write(text),
    size,
  );
  let end: (how: ExploreEnd) => void = () => {};
  const ended = new Promise<ExploreEnd>((resolve) => {
    end = resolve;
  });
  const stopped = (): void => end({ kind: "quit" });
  const broken = (error: unknown): void => end({ kind: "broken", reason: reasonOf(error) });
  let instance: Instance | undefined;

  const performer = createPerformer(usualStateFolder(), (message) => store.send(message), depart);
  const store = createStore(initialState(size()), update, performer.perform);

  function mount(): void {
    writer.forget();
    const mounted = render(
      <Guard broken={broken}>
        <App store={store} capabilities={capabilities} />
      </Guard>,
      {
        stdin: keysOnly(stdin),
        stdout: writer.stdout,
        debug: true,
        exitOnCtrlC: false,
        patchConsole: false,
        isScreenReaderEnabled: capabilities.form !== "screen",
      },
    );
    mounted.waitUntilExit().catch(broken);
    instance = mounted;
  }

  function unmount(): void {
    instance?.unmount();
    instance = undefined;
  }

  function depart(departure: Departure): void {
    // A program that is stopped may never go on: what was to be kept is kept before that.
    if (departure.kind === "suspend") void performer.settled().then(suspend);
    else end({ kind: departure.kind });
  }

  /** Stops the program as the shell expects it; everything is drawn anew once it goes on. */
  function suspend(): void {
    unmount();
    modes.giveBack();
    process.once("SIGCONT", () => {
      modes.take();
      mount();
      store.send({ kind: "resized", ...size() });
    });
    process.kill(process.pid, "SIGSTOP");
  }

  let resizing: NodeJS.Timeout | undefined;
  const resized = (): void => {
    clearTimeout(resizing);
    resizing = setTimeout(() => {
      modes.clear();
      writer.forget();
      store.send({ kind: "resized", ...size() });
      writer.stdout.emit("resize");
    }, restAfterResizeMs);
  };

  const listeners = [
    ["SIGTERM", stopped],
    ["SIGHUP", stopped],
    ["SIGINT", stopped],
    ["uncaughtException", broken],
    ["unhandledRejection", broken],
    ["exit", modes.giveBack],
  ] as const;
  for (const [event, listener] of listeners) process.on(event, listener);
  stdout.on("resize", resized);

  if (file !== undefined) store.send({ kind: "opening", file });
  // Whoever read the keys before this, a line at a time, has let go of them only after a turn of the event loop.
  await turn();
  modes.take();
  mount();
  performer.perform(
    file === undefined
      ? { kind: "list shelf" }
      : { kind: "open", file, ...(garmentSize !== undefined && { size: garmentSize }) },
  );
  const how = await ended;

  clearTimeout(resizing);
  stdout.off("resize", resized);
  unmount();
  modes.giveBack();
  await performer.close();
  for (const [event, listener] of listeners) process.off(event, listener);
  stdin.unref();
  return how;
}

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
