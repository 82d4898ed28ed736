import { nearest } from "../diagnostics/nearest.ts";
import { WorkEnded } from "../fit/allowance.ts";
import { parseArguments } from "./arguments.ts";
import type { Terminal } from "./command.ts";
import { commandTable } from "./command-table.ts";
import { CommandError, type ExitCode, exitCodes } from "./exit-codes.ts";
import { commandHelp, generalHelp } from "./help.ts";

declare const EVENROW_VERSION: string;

/**
 * Runs one command line and says how it ended. Nothing is thrown: what goes wrong is told in words.
 *
 * @param words the command line after the program's own name
 */
export async function runCommandLine(words: readonly string[], terminal: Terminal): Promise<ExitCode> {
  try {
    return await dispatch(words, terminal);
  } catch (error) {
    if (error instanceof CommandError) {
      terminal.say(error.message);
      return error.code;
    }
    if (error instanceof WorkEnded) {
      terminal.say(inSentence(error.message));
      return exitCodes.stopped;
    }
    const reason = error instanceof Error ? error.message : String(error);
    terminal.say(`Evenrow met a fault of its own and stopped: ${reason}\nNothing was written.`);
    return exitCodes.fault;
  }
}

const inSentence = (reason: string): string => `${reason.charAt(0).toUpperCase()}${reason.slice(1)}.`;

async function dispatch(words: readonly string[], terminal: Terminal): Promise<ExitCode> {
  const [first, ...rest] = words;
  if (first === undefined || first === "--help" || first === "-h" || first === "help") {
    const about = rest[0] === undefined ? undefined : commandTable.find(({ name }) => name === rest[0]);
    terminal.out(about ? commandHelp(about) : generalHelp());
    return exitCodes.done;
  }
  if (first === "--version" || first === "-V") {
    terminal.out(EVENROW_VERSION);
    return exitCodes.done;
  }
  const command = commandTable.find(({ name }) => name === first);
  if (!command) throw unknownCommand(first);
  if (rest.includes("--help") || rest.includes("-h")) {
    terminal.out(commandHelp(command));
    return exitCodes.done;
  }
  const { operands, options } = parseArguments(command, rest);
  const { run } = await command.load();
  return run({ operands, options, terminal });
}

function unknownCommand(word: string): CommandError {
  const near = nearest(
    word,
    commandTable.map(({ name }) => name),
  );
  const hint = near === undefined ? "" : ` Did you mean: evenrow ${near}`;
  return new CommandError(`There is no command "${word}".${hint}\nSee: evenrow --help`);
}
