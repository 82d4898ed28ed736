import { loadDrawings } from "../../drawing-file/load-drawings.ts";
import { openForEditing } from "../../edit/open.ts";
import { readSource } from "../../explore/read-source.ts";
import type { CommandInput, CommandRun } from "../command.ts";
import { CommandError, type ExitCode, exitCodes } from "../exit-codes.ts";
import { whereSampleIs } from "../samples.ts";
import { sizeAsked } from "../size-option.ts";

export const run: CommandRun = async (input) => {
  const { operands, terminal } = input;
  const [file, second] = operands;
  if (second !== undefined)
    throw new CommandError(`explore takes one file, and these are two: ${file} and ${second}`);
  if (file === "-") throw new CommandError("explore needs a file that it can save into, not standard input.");
  if (!terminal.interactive)
    throw new CommandError(
      `explore needs a terminal for its screen.\nWithout one: evenrow fit ${file ?? "samples/sleeve.yaml"}`,
    );
  if (file !== undefined) {
    const opening = await openForEditing(file);
    if (opening.status === "failed")
      throw new CommandError(`${file}: ${opening.reason}${whereSampleIs(file)}`);
    if (input.options.size !== undefined) await refuseUnknownSize(opening.text, file, input);
  }
  return onScreen(input, file);
};

/** Opens the screen, as often as a new garment is made from it; the terminal UI is loaded by nothing else. */
export async function onScreen(input: CommandInput, file: string | undefined): Promise<ExitCode> {
  const { explore } = await import("../../../tui/run.tsx");
  const colour = input.options["no-color"] !== true;
  const { size } = input.options;
  let open = file;
  for (;;) {
    const how = await explore({
      ...(open !== undefined && { file: open }),
      ...(open === file && typeof size === "string" && { garmentSize: size }),
      colour,
    });
    if (how.kind === "quit") return exitCodes.done;
    if (how.kind === "broken") {
      input.terminal.say(
        `Evenrow met a fault of its own and stopped: ${how.reason}\nYour file is as it was; changes that were not saved are offered the next time.`,
      );
      return exitCodes.fault;
    }
    open = await newGarment(input);
  }
}

/** A file with mistakes is opened all the same: the screen shows them, and its sizes are not known yet. */
async function refuseUnknownSize(text: string, file: string, { options }: CommandInput): Promise<void> {
  const { garment, range } = readSource(text, file, { drawings: await loadDrawings(text, file) });
  if (garment) sizeAsked(range, options);
}

/** The file of the garment that was made; undefined where the knitter stopped, which leads back to the others. */
async function newGarment({ terminal }: CommandInput): Promise<string | undefined> {
  const { askForGarment } = await import("./new.ts");
  try {
    return await askForGarment({ options: {}, terminal });
  } catch (error) {
    if (error instanceof CommandError) return undefined;
    throw error;
  }
}
