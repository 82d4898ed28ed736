import { openForEditing } from "../../edit/open.ts";
import type { CommandInput, CommandRun } from "../command.ts";
import { CommandError, type ExitCode, exitCodes } from "../exit-codes.ts";
import { whereSampleIs } from "../samples.ts";

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
  }
  return onScreen(input, file);
};

/** Opens the screen, as often as a new garment is made from it; the terminal UI is loaded by nothing else. */
export async function onScreen(input: CommandInput, file: string | undefined): Promise<ExitCode> {
  const { explore } = await import("../../../tui/run.tsx");
  const colour = input.options["no-color"] !== true;
  let open = file;
  for (;;) {
    const how = await explore({ ...(open !== undefined && { file: open }), colour });
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
