/** A line at the end of a terminal's text that is written over and taken away again. */
export interface StatusLine {
  /** Undefined takes it away, so that other text can be written. */
  readonly show: (line: string | undefined) => void;
}

/** The parts of a stream that matter here. */
export interface LineStream {
  readonly isTTY?: boolean;
  readonly columns?: number;
  readonly write: (text: string) => unknown;
}

const usualColumns = 80;

/** Undefined where a line cannot be written over: in a file, a pipe, or a terminal that only adds lines. */
export function createStatusLine(
  stream: LineStream,
  environment: Readonly<Record<string, string | undefined>>,
): StatusLine | undefined {
  if (stream.isTTY !== true || environment.TERM === "dumb") return undefined;
  const back = "\r\u001b[2K";
  let isShown = false;
  return {
    show(line) {
      if (line === undefined) {
        if (isShown) stream.write(back);
        isShown = false;
        return;
      }
      // A full last column would wrap, and then there would be two lines to take away.
      stream.write(back + line.slice(0, (stream.columns ?? usualColumns) - 1));
      isShown = true;
    },
  };
}
