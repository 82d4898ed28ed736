import { EventEmitter } from "node:events";
import { wrap } from "../../src/report/wrap.ts";

/** Where frames go: what ink takes for its standard output. */
export interface FrameWriter {
  /** To be given to ink in its debug mode, in which it hands over every frame as a whole. */
  readonly stdout: NodeJS.WriteStream;
  /** Draws every row anew with the next frame: after the screen was cleared, or belonged to someone else. */
  readonly forget: () => void;
}

/** The terminal's size now. */
type Size = () => { readonly columns: number; readonly rows: number };

/** Frames that arrive together are shown together (mode 2026, which terminals that do not know it pass over). */
const together = "\u001b[?2026h";
const done = "\u001b[?2026l";
const eraseToEnd = "\u001b[0m\u001b[K";

/**
 * Draws frames row by row, each at its own place (CUP, ECMA-48 8.3.21), and only the rows that changed. ink's own
 * way counts rows from where the cursor was left, and its incremental mode counts one too few below a full screen.
 */
export function createFrameWriter(write: (text: string) => void, size: Size): FrameWriter {
  let before: readonly string[] = [];

  const draw = (frame: string): void => {
    const rows = frame.split("\n").slice(0, size().rows);
    const changes: string[] = [];
    const count = Math.max(rows.length, before.length);
    for (let index = 0; index < count; index++) {
      const row = rows[index] ?? "";
      if (row !== before[index]) changes.push(`\u001b[${index + 1};1H${row}${eraseToEnd}`);
    }
    before = rows;
    if (changes.length > 0) write(together + changes.join("") + done);
  };

  const forget = (): void => {
    before = [];
  };
  return { stdout: standIn(draw, size), forget };
}

/**
 * Only ever adds lines, and only those that the frame before did not have: what a screen reader reads out by itself
 * as it comes, and what a terminal can show that cannot move its cursor.
 */
export function createLineWriter(write: (text: string) => void, size: Size): FrameWriter {
  let before: ReadonlySet<string> = new Set();
  const draw = (frame: string): void => {
    const lines = frame.split("\n").map((line) => line.trimEnd());
    const added = lines.filter((line) => line !== "" && !before.has(line));
    before = new Set(lines);
    const wrapped = added.flatMap((line) => wrap(line, size().columns, 2));
    if (wrapped.length > 0) write(`${wrapped.join("\n")}\n\n`);
  };
  const forget = (): void => {
    before = new Set();
  };
  return { stdout: standIn(draw, size), forget };
}

/** What ink takes for its standard output. */
function standIn(draw: (frame: string) => void, size: Size): NodeJS.WriteStream {
  const stream = Object.assign(new EventEmitter(), {
    isTTY: true,
    write(chunk: string | Uint8Array, ...rest: readonly unknown[]): boolean {
      const text = typeof chunk === "string" ? chunk : Buffer.from(chunk).toString();
      // What ink sends apart from frames, such as showing the cursor again, is the terminal's owner's to do.
      if (text !== "" && !text.startsWith("\u001b[?")) draw(text);
      const finished = rest.at(-1);
      if (typeof finished === "function") finished();
      return true;
    },
  });
  Object.defineProperties(stream, {
    columns: { get: () => size().columns },
    rows: { get: () => size().rows },
  });
  return stream as unknown as NodeJS.WriteStream;
}
