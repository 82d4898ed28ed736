import { writeSync } from "node:fs";
import { errorCode } from "../../src/edit/file-reason.ts";

/** Alternate screen with the cursor's place kept, xterm's private mode 1049. */
const enter = "\u001b[?1049h\u001b[2J\u001b[H\u001b[?25l";
/** Styles off, cursor shown, back to the screen that was there before. */
const leave = "\u001b[0m\u001b[?25h\u001b[?1049l";

/** The terminal's modes, put back exactly once however the program ends. */
export interface TerminalModes {
  readonly take: () => void;
  readonly giveBack: () => void;
  readonly clear: () => void;
}

/** A terminal that has not shown what it was sent after a second is not going to. */
const [mostTries, pauseMs] = [100, 10];
const pause = new Int32Array(new SharedArrayBuffer(4));

/** @param alternate whether there is an alternate screen to go to */
export function createTerminalModes(
  output: NodeJS.WriteStream & { readonly fd: number },
  alternate: boolean,
): TerminalModes {
  let taken = false;
  const write = (text: string): void => {
    let rest: Uint8Array = Buffer.from(text);
    for (let tries = 0; rest.length > 0 && tries < mostTries; tries++) {
      try {
        // Not through the stream: on the way out nothing waits for it any more.
        rest = rest.subarray(writeSync(output.fd, rest));
      } catch (error) {
        // Otherwise the terminal is gone, and there is nothing to put back.
        if (errorCode(error) !== "EAGAIN") return;
        // It takes nothing more until it has shown what it was sent.
        Atomics.wait(pause, 0, 0, pauseMs);
      }
    }
  };
  return {
    take() {
      if (alternate && !taken) write(enter);
      taken = true;
    },
    giveBack() {
      if (alternate && taken) write(leave);
      taken = false;
    },
    clear() {
      if (alternate && taken) write("\u001b[2J\u001b[H");
    },
  };
}
