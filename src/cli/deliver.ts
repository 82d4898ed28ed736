import type { CommandInput } from "./command.ts";
import { writeOutput } from "./files.ts";

/** Writes a command's result to the file that was asked for, or to standard output. */
export async function deliver({ options, terminal }: CommandInput, text: string): Promise<void> {
  const { output, force } = options;
  if (typeof output !== "string") return terminal.out(text);
  await writeOutput(output, text.endsWith("\n") ? text : `${text}\n`, force === true);
  terminal.say(`Wrote ${output}.`);
}

export const jsonText = (value: object): string => JSON.stringify(value, undefined, 2);

/** Widest text that reads well on paper and on a wide terminal. */
export const textWidth = (columns: number): number => Math.max(40, Math.min(columns, 100));
