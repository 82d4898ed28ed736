import type { Fit } from "../fit/fit.ts";
import type { CommandInput } from "./command.ts";
import { textWidth } from "./deliver.ts";
import { type ExitCode, exitCodes } from "./exit-codes.ts";
import { fileOperand, type LoadedGarment } from "./load-garment.ts";
import { refusalText } from "./refusal-text.ts";
import { solveFile } from "./solving.ts";

/** A fit to go on with, or how the command ends without one. */
export type Fitted =
  | { readonly fit: Fit; readonly proven: boolean; readonly locate: LoadedGarment["locate"] }
  | { readonly fit?: undefined; readonly code: ExitCode };

/** Fits the file of a command that works from the best fit alone; where there is none, why is said. */
export async function fittedFile(input: CommandInput, command: string): Promise<Fitted> {
  const { terminal } = input;
  const solved = await solveFile(fileOperand(input, command), input, 0);
  const { loaded, result, code } = solved;
  for (const note of result.notes) terminal.say(note);
  switch (result.status) {
    case "fits":
      return { fit: result.fit, proven: result.proven, locate: loaded.locate };
    case "does not fit":
      terminal.say(refusalText(solved, textWidth(terminal.columns)));
      return { code };
    case "stopped":
      terminal.say(result.reason);
      return { code };
  }
}

/** How a command ends that has shown a fit; one that is not proven is said to be so. */
export function endWith(
  { proven }: { readonly proven: boolean },
  what: string,
  input: CommandInput,
): ExitCode {
  if (proven) return exitCodes.done;
  input.terminal.say(`This ${what} is of the best fit found so far; a better one may exist.`);
  return exitCodes.stopped;
}
