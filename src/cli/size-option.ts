import { nearest } from "../diagnostics/nearest.ts";
import { quoted } from "../diagnostics/shown.ts";
import type { SizedGarment, SizeRange } from "../garment/garment.ts";
import { listed } from "../report/words.ts";
import type { CommandInput } from "./command.ts";
import { CommandError } from "./exit-codes.ts";

/**
 * The size that a command line asks for; undefined where it asks for none.
 *
 * @throws CommandError where there is no such size
 */
export function sizeAsked(
  range: SizeRange | undefined,
  { size }: CommandInput["options"],
): SizedGarment | undefined {
  if (typeof size !== "string") return undefined;
  if (!range)
    throw new CommandError(
      `The file gives no sizes, so there is no size ${quoted(size)} in it: leave --size out.`,
    );
  const names = range.sizes.map(({ name }) => name);
  const found = range.sizes.find(({ name }) => name === size);
  if (found) return found;
  const near = nearest(size, names);
  const hint =
    near === undefined ? `The sizes are ${listed(names)}.` : `Did you mean --size ${quoted(near)}?`;
  throw new CommandError(`There is no size ${quoted(size)}. ${hint}`);
}

/** @throws CommandError where a file has sizes and none was chosen for a command that is about one */
export function needOneSize(range: SizeRange | undefined, chosen: SizedGarment | undefined): void {
  if (!range || chosen) return;
  const names = range.sizes.map(({ name }) => name);
  throw new CommandError(
    `The file gives several sizes: say which one, such as --size ${quoted(names[0]!)}. There are ${listed(names)}.`,
  );
}
