const LONGEST_SHOWN = 60;

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters that must not reach a terminal.
const UNPRINTABLE = /[\u0000-\u001f\u007f-\u009f\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]/g;

/**
 * Text from a file, made fit to print: cut to one short line, and without characters that could steer a terminal
 * or turn the direction of writing.
 */
export function shown(text: string): string {
  const characters = [...text.slice(0, LONGEST_SHOWN * 2)];
  const short =
    text.length > characters.join("").length || characters.length > LONGEST_SHOWN
      ? `${characters.slice(0, LONGEST_SHOWN - 3).join("")}...`
      : text;
  return printable(short);
}

/** Text without characters that could steer a terminal or turn the direction of writing, of any length. */
export function printable(text: string): string {
  return text.replace(UNPRINTABLE, (character) =>
    character === "\n" || character === "\t"
      ? " "
      : `\\u${(character.codePointAt(0) ?? 0).toString(16).padStart(4, "0")}`,
  );
}

const LONGEST_SENTENCE = 300;

/** A sentence that holds words from a file, made fit to print. */
export function sentence(text: string): string {
  const characters = [...text.slice(0, LONGEST_SENTENCE * 2)];
  if (text.length <= LONGEST_SENTENCE || characters.length <= LONGEST_SENTENCE) return printable(text);
  return printable(`${characters.slice(0, LONGEST_SENTENCE - 3).join("")}...`);
}

export const quoted = (text: string): string => `"${shown(text)}"`;
