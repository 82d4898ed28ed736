/**
 * A terminal's input without the sequences that are no key of ours: reports of the cursor's place, function keys with Ctrl.
 * Of one that says Ctrl and is not in its list, ink 6.8 takes a name that is not there, and its handler throws
 * (`use-input.js`, `input.startsWith`).
 */
export function keysOnly(stdin: NodeJS.ReadStream): NodeJS.ReadStream {
  const keys = createKeyFilter();
  return new Proxy(stdin, {
    get(target, property) {
      if (property === "read")
        return (size?: number): unknown => {
          const chunk: unknown = target.read(size);
          return chunk === null ? null : keys(String(chunk));
        };
      const value: unknown = Reflect.get(target, property, target);
      return typeof value === "function" ? value.bind(target) : value;
    },
  });
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: control sequences begin with one (ECMA-48, 5.4).
const controlSequence = /\u001b\[[0-?]*[ -/]*[@-~]|\u001b[ON]\d+[A-Za-z]/g;

/** Its parameters have begun, and it may go on with what is read next. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: as above.
const begun = /\u001b\[[0-?]+$/;

/** Arrows, Home, End and Shift-Tab with or without modifiers, keys by number, and the two ends of a paste. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: as above.
const key = /^\u001b\[(?:(?:1;\d+)?[ABCDFHZ]|(?:[1-8]|20[01])(?:;\d+)?~|\d+(?:;\d+)?u)$/;

/** Passes on what is keys or text in what is read bit by bit; a sequence that is not whole yet is held back. */
export function createKeyFilter(): (read: string) => string {
  let held = "";
  return (read) => {
    const text = held + read;
    held = begun.exec(text)?.[0] ?? "";
    return text
      .slice(0, text.length - held.length)
      .replace(controlSequence, (sequence) => (key.test(sequence) ? sequence : ""));
  };
}
