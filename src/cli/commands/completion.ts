import type { CommandEntry, CommandRun } from "../command.ts";
import { bashCompletion } from "../completion/bash.ts";
import { fishCompletion } from "../completion/fish.ts";
import { zshCompletion } from "../completion/zsh.ts";
import { deliver } from "../deliver.ts";
import { CommandError, exitCodes } from "../exit-codes.ts";

const shells = { bash: bashCompletion, zsh: zshCompletion, fish: fishCompletion } as const;

/** The command for a table of commands; the table itself loads it, so it is handed over and not imported. */
export const completing =
  (table: readonly CommandEntry[]): CommandRun =>
  async (input) => {
    const [shell, ...more] = input.operands;
    const known = Object.entries(shells).find(([name]) => name === shell);
    if (!known || more.length > 0)
      throw new CommandError(
        `completion takes the name of one shell: ${Object.keys(shells).join(", ")}.\nSee: evenrow completion --help`,
      );
    await deliver(input, known[1](table));
    return exitCodes.done;
  };
