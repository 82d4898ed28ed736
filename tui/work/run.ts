import { emitKeypressEvents, type Interface } from "node:readline";
import { setImmediate as turn } from "node:timers/promises";
import type { WorkPlace } from "../../src/state/work-place.ts";
import type { SheetChange } from "../../src/work/differences.ts";
import { pieceWords, placeWords } from "../../src/work/place-text.ts";
import { currentPiece, textBehind, type WorkRecord } from "../../src/work/record.ts";
import { paint } from "../content/paint.ts";
import { capabilitiesOf } from "../terminal/capabilities.ts";
import { createFrameWriter, createLineWriter } from "../terminal/frame-writer.ts";
import { createTerminalModes } from "../terminal/terminal-modes.ts";
import { workFrame } from "./content/frame.ts";
import { workSpokenLines } from "./content/spoken.ts";
import { createCounter } from "./counter.ts";
import { createFootSwitch, usualRestMs } from "./foot-switch.ts";
import { type Keypress, keyOf } from "./keypress.ts";
import { createReckoner } from "./reckoner.ts";
import type { WorkState } from "./state.ts";

export { stepKeyNamed } from "./keypress.ts";

export interface WorkOptions {
  readonly file: string;
  readonly place: WorkPlace;
  readonly record: WorkRecord;
  readonly change?: SheetChange;
  /** Why the garment file as it is now gives no sheet, to be said first. */
  readonly trouble?: string;
  readonly colour: boolean;
  readonly bell: boolean;
  readonly takeOver: boolean;
  /** Follows the changed file's sheet without asking. */
  readonly takeNewSheet: boolean;
  readonly piece?: string;
  /** The key of a foot switch. */
  readonly stepKey?: string;
  readonly restMs?: number;
}

/** How the work ended; `words` tell the knitter what is kept. */
export type WorkEnd =
  | { readonly kind: "quit"; readonly words: string }
  | { readonly kind: "broken"; readonly reason: string };

const usualSize = { columns: 80, rows: 24 };
const followEveryMs = 300;
/** How long Esc alone is waited for, because keys that send several characters begin with it too. */
const escapeMs = 60;

/**
 * The screen at the machine, until it is left. It is drawn without ink: the frame is made before the step is written
 * down and shown straight after, and nothing may come between.
 */
export async function workAtMachine(options: WorkOptions): Promise<WorkEnd> {
  const { stdin, stdout } = process;
  const capabilities = capabilitiesOf(process.env, options.colour);
  const modes = createTerminalModes(stdout, capabilities.form === "screen");
  const size = () => ({ columns: stdout.columns ?? usualSize.columns, rows: stdout.rows ?? usualSize.rows });
  const writer = (capabilities.form === "screen" ? createFrameWriter : createLineWriter)(
    (text) => stdout.write(text),
    size,
  );
  let end: (how: "quit" | { readonly broken: unknown }) => void = () => {};
  const ended = new Promise<"quit" | { readonly broken: unknown }>((resolve) => {
    end = resolve;
  });
  const quit = (): void => end("quit");
  const broken = (error: unknown): void => end({ broken: error });

  const prepare = (state: WorkState): (() => void) => {
    const rows =
      capabilities.form === "screen"
        ? workFrame(state, capabilities.glyphs).map((row) => paint(row, capabilities.colour))
        : workSpokenLines(state);
    const frame = rows.join("\n");
    return () => writer.stdout.write(frame);
  };
  const redraw = (): void => {
    modes.clear();
    writer.forget();
    counter.receive([{ kind: "resized", ...size() }]);
  };

  /** Stops the program as the shell expects it; everything is drawn anew once it goes on. */
  function suspend(): void {
    stdin.setRawMode(false);
    modes.giveBack();
    process.once("SIGCONT", () => {
      modes.take();
      stdin.setRawMode(true);
      redraw();
    });
    process.kill(process.pid, "SIGSTOP");
  }

  const reckoner = createReckoner((answer) => counter.receive([{ kind: "reckoned", answer }]));
  function reckon(): void {
    const { screen, record } = counter.state();
    if (screen.kind !== "reckoning") return;
    const piece = currentPiece(record);
    const { measured, refits } = screen;
    const garmentText = textBehind(record, piece);
    const { file, size } = options.place;
    reckoner.ask({ file, ...(size !== undefined && { size }), garmentText, piece, measured, refits });
  }

  const footSwitch = createFootSwitch(options.restMs ?? usualRestMs);
  let pressed: string[] = [];
  /** Keys that come together, because the disk was slower than they were, are counted together. */
  function heard(character: string | undefined, press: Keypress): void {
    const key = keyOf(character, press);
    if (key === undefined) return;
    const isStep = key === options.stepKey && counter.state().screen.kind === "main";
    if (isStep && !footSwitch(performance.now())) return;
    if (pressed.length === 0) queueMicrotask(count);
    pressed.push(isStep ? "step" : key);
  }
  function count(): void {
    const keys = pressed;
    pressed = [];
    try {
      counter.receive(keys.map((key) => ({ kind: "key", key })));
    } catch (error) {
      broken(error);
    }
  }

  const listeners = [
    ["SIGTERM", quit],
    ["SIGHUP", quit],
    ["SIGINT", quit],
    // A file that may not grow any more is told like a full disk, and is no reason to be ended.
    ["SIGXFSZ", () => {}],
    ["uncaughtException", broken],
    ["unhandledRejection", broken],
    ["exit", modes.giveBack],
  ] as const;
  for (const [event, listener] of listeners) process.on(event, listener);
  // Whoever read the terminal before this has let go of it only after a turn of the event loop.
  await turn();
  modes.take();
  const counter = createCounter({
    place: options.place,
    initial: initialState(options, size()),
    takeOver: options.takeOver,
    first: [
      ...(options.takeNewSheet && options.change ? [options.change.take] : []),
      ...(options.piece === undefined ? [] : [{ kind: "choose", piece: options.piece } as const]),
    ],
    prepare,
    perform(effect) {
      if (effect === "quit") quit();
      else if (effect === "suspend") suspend();
      else if (effect === "reckon") reckon();
      else if (effect === "give up") reckoner.giveUp();
      else stdout.write("\u0007");
    },
  });
  emitKeypressEvents(stdin, { escapeCodeTimeout: escapeMs } as unknown as Interface);
  stdin.on("keypress", heard);
  stdin.setRawMode(true);
  stdin.resume();
  stdout.on("resize", redraw);
  const following = setInterval(counter.follow, followEveryMs);

  const how = await ended;

  clearInterval(following);
  stdout.off("resize", redraw);
  stdin.off("keypress", heard);
  stdin.setRawMode(false);
  stdin.pause();
  modes.giveBack();
  reckoner.giveUp();
  counter.close();
  for (const [event, listener] of listeners) process.off(event, listener);
  stdin.unref();
  const piece = currentPiece(counter.state().record);
  if (how === "quit") return { kind: "quit", words: `${pieceWords(piece)}: ${placeWords(piece)} is kept.` };
  return { kind: "broken", reason: how.broken instanceof Error ? how.broken.message : String(how.broken) };
}

const initialState = (
  { file, record, change, trouble, bell, takeNewSheet }: WorkOptions,
  terminal: WorkState["terminal"],
): WorkState => {
  const asked = takeNewSheet ? undefined : change;
  return {
    terminal,
    file,
    record,
    standing: "mine",
    owner: undefined,
    screen: { kind: asked ? "ask change" : "main" },
    change: asked,
    message: trouble === undefined ? undefined : { kind: "refused", words: trouble },
    bell,
  };
};
