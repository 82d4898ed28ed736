import { nearest } from "../diagnostics/nearest.ts";
import { quoted } from "../diagnostics/shown.ts";
import type { Fit } from "../fit/fit.ts";
import { listed } from "../report/words.ts";
import { CommandError } from "./exit-codes.ts";

/**
 * The name that an option asks for, or those of all pieces in the order of the file.
 *
 * @throws CommandError where no piece is called so
 */
export function askedPieces(option: string | boolean | undefined, { pieces }: Fit): readonly string[] {
  const names = pieces.map(({ name }) => name);
  if (typeof option !== "string") return names;
  if (names.includes(option)) return [option];
  const near = nearest(option, names);
  const hint = near === undefined ? "" : ` Did you mean ${quoted(near)}?`;
  throw new CommandError(
    `The garment has no piece called ${quoted(option)}; it has ${listed(names.map(quoted))}.${hint}`,
  );
}
