/** How a command ended. */
export const exitCodes = {
  done: 0,
  /** The file is right, and no fit exists. */
  noFit: 1,
  /** The file or the command line is wrong. */
  wrongInput: 2,
  /** A limit was reached, or the knitter stopped it, before all that was asked for was found and proven. */
  stopped: 3,
  /** A fault of the program's own (EX_SOFTWARE of sysexits.h). */
  fault: 70,
  /** The knitter stopped it before there was anything to show (as shells have it: 128 and the signal's number). */
  interrupted: 130,
} as const;

export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];

/** Ends a command with words for the knitter; never shown with a stack trace. */
export class CommandError extends Error {
  override readonly name = "CommandError";
  constructor(
    message: string,
    readonly code: ExitCode = exitCodes.wrongInput,
  ) {
    super(message);
  }
}
