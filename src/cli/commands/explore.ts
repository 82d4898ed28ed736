import { openForEditing } from "../../edit/open.ts";
import type { CommandInput, CommandRun } from "../command.ts";
import { CommandError, exitCodes } from "../exit-codes.ts";

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
    if (opening.status === "failed") throw new CommandError(`${file}: ${opening.reason}`);
  }
  return onScreen(input, file);
};

/** Opens the screen; the terminal UI is loaded by nothing else. */
export async function onScreen({ options, terminal }: CommandInput, file: string | undefined) {
  const { explore } = await import("../../../tui/run.tsx");
  const how = await explore({ ...(file !== undefined && { file }), colour: options["no-color"] !== true });
  if (how.kind !== "broken") return exitCodes.done;
  terminal.say(
    `Evenrow met a fault of its own and stopped: ${how.reason}\nYour file is as it was; changes that were not saved are offered the next time.`,
  );
  return exitCodes.fault;
}
