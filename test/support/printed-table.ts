/** A table of sizes as it is printed, read back. */
export interface PrintedTable {
  /** The numbers of a line, one for each size; `motif` for a line of a motif on a piece. */
  readonly numbers: (heading: string, label: string, motif?: string) => readonly number[];
  readonly has: (heading: string, label: string) => boolean;
}

/** Reads every line `label  first (others ...)` under its heading; a line that goes on begins with its values' place. */
export function readPrintedTable(text: string): PrintedTable {
  const lines = new Map<string, string>();
  let [piece, motif, last] = ["", "", ""];
  for (const line of text.split("\n")) {
    const indent = line.length - line.trimStart().length;
    const numbers = /^ +(\S.*?) {2,}([-+]?\d.*)$/.exec(line);
    if (indent > 20 && /^[-+\d]/.test(line.trim())) lines.set(last, `${lines.get(last)} ${line.trim()}`);
    else if (numbers) {
      last = keyOf(piece, indent === 4 ? motif : "", numbers[1]!);
      lines.set(last, numbers[2]!);
    } else if (indent === 0) [piece, motif] = [line.replace(/ \(make \d+\)$/, ""), ""];
    else if (indent === 2) motif = line.trim().split(" ")[0]!;
  }
  const sizes = /^Sizes: (.*)$/m.exec(text)![1]!.split(" ").length;
  return {
    has: (heading, label) => lines.has(keyOf(heading, "", label)),
    numbers: (heading, label, ofMotif = "") => {
      const printed = lines.get(keyOf(heading, ofMotif, label));
      if (printed === undefined) throw new Error(`nothing printed of "${label}" under "${heading}"`);
      const values = printed
        .split(/[\s(),]+/)
        .filter((one) => one !== "")
        .map(Number);
      // One number stands for all sizes.
      return values.length === 1 ? new Array<number>(sizes).fill(values[0]!) : values;
    },
  };
}

const keyOf = (...parts: readonly string[]): string => parts.join(" | ");
