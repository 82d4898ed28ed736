import { parseArgs } from "node:util";
import { nearest } from "../diagnostics/nearest.ts";
import { quoted } from "../diagnostics/shown.ts";
import { listed } from "../report/words.ts";
import type { CommandEntry } from "./command.ts";
import { CommandError } from "./exit-codes.ts";

export interface ParsedArguments {
  readonly operands: readonly string[];
  readonly options: Readonly<Record<string, string | boolean | undefined>>;
}

/**
 * Reads a command's own words; options may stand in any order.
 *
 * @throws CommandError for an option the command does not have, or one without its value
 */
export function parseArguments(command: CommandEntry, words: readonly string[]): ParsedArguments {
  const options = Object.fromEntries(
    [...command.options, { name: "help", short: "h", summary: "" }].map(({ name, short, ...rest }) => [
      name,
      {
        type: "value" in rest && rest.value !== undefined ? ("string" as const) : ("boolean" as const),
        ...(short !== undefined && { short }),
      },
    ]),
  );
  refuseUnknown(command, words);
  try {
    const { values, positionals } = parseArgs({
      args: [...words],
      options,
      allowPositionals: true,
      strict: true,
    });
    return { operands: positionals, options: values as ParsedArguments["options"] };
  } catch (error) {
    throw new CommandError(`${command.name}: ${plainly(error)}\nSee: evenrow ${command.name} --help`);
  }
}

function refuseUnknown(command: CommandEntry, words: readonly string[]): void {
  const names = [...command.options.map(({ name }) => name), "help"];
  for (const word of words) {
    if (word === "--") return;
    const [, name] = /^--([^=]+)/.exec(word) ?? [];
    if (name === undefined || names.includes(name)) continue;
    const near = nearest(name, names);
    const hint = near === undefined ? "" : ` Did you mean --${near}?`;
    throw new CommandError(
      `${command.name} has no option --${name}.${hint}\nSee: evenrow ${command.name} --help`,
    );
  }
}

/** The parser's own message, down to the part that speaks of the command line. */
function plainly(error: unknown): string {
  const message = error instanceof Error ? error.message : String(error);
  return message.split(". To specify")[0]!.split("\n")[0]!;
}

/**
 * A number from an option.
 *
 * @param what it is, such as "a number of seconds such as 2"
 *
 * @throws CommandError where it is none, or outside its limits
 */
export function numberOption(
  name: string,
  value: string | boolean | undefined,
  { least, most }: { least: number; most: number },
  what = "a number",
): number | undefined {
  if (typeof value !== "string") return undefined;
  const number = Number(value);
  if (value.trim() !== "" && Number.isFinite(number) && number >= least && number <= most) return number;
  throw new CommandError(`--${name} takes ${what} from ${least} to ${most}, and this is "${value}".`);
}

/**
 * One of an option's words; undefined where the option is not given.
 *
 * @throws CommandError for any other word
 */
export function wordOption<Word extends string>(
  name: string,
  value: string | boolean | undefined,
  words: readonly Word[],
): Word | undefined {
  if (typeof value !== "string") return undefined;
  const known = words.find((word) => word === value);
  if (known !== undefined) return known;
  throw new CommandError(`--${name} takes one of ${listed(words)}, and this is ${quoted(value)}.`);
}
