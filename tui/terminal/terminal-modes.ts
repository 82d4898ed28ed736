import { writeSync } from "node:fs";

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

/** @param alternate whether there is an alternate screen to go to */
export function createTerminalModes(
  output: NodeJS.WriteStream & { readonly fd: number },
  alternate: boolean,
): TerminalModes {
  let taken = false;
  const write = (text: string): void => {
    try {
      // Not through the stream: on the way out nothing waits for it any more.
      writeSync(output.fd, text);
    } catch {
      // The terminal is gone; there is nothing to put back.
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
