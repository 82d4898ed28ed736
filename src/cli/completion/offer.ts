import type { CommandEntry, OptionEntry } from "../command.ts";

/** What a shell may offer at one place of a command line; "nothing" where only the knitter knows. */
export type Offer =
  | { readonly kind: "words"; readonly words: readonly string[] }
  /** Files with one of these endings, or all where none is named. */
  | { readonly kind: "files"; readonly endings: readonly string[] }
  | { readonly kind: "nothing" };

const garmentEndings = ["yaml", "yml", "json"];

/** What is offered as an option's value; undefined for a switch, which takes none. */
export function valueOffer({ value, words, endings }: OptionEntry): Offer | undefined {
  if (value === undefined) return undefined;
  if (words) return { kind: "words", words };
  return value === "FILE" ? { kind: "files", endings: endings ?? [] } : { kind: "nothing" };
}

/** What is offered in the places that are no options. */
export function operandOffer({ operands, words }: CommandEntry): Offer {
  if (words) return { kind: "words", words };
  return operands.includes("FILE") ? { kind: "files", endings: garmentEndings } : { kind: "nothing" };
}

/** An option as it is typed, the long form first. */
export const flagsOf = ({ name, short }: OptionEntry): readonly string[] =>
  short === undefined ? [`--${name}`] : [`--${name}`, `-${short}`];

export const generalOptions: readonly OptionEntry[] = [
  { name: "help", short: "h", summary: "says what there is, with examples" },
  { name: "version", short: "V", summary: "tells the version" },
];

/** Every command has it. */
export const helpOption: OptionEntry = { name: "help", short: "h", summary: "says more of the command" };
