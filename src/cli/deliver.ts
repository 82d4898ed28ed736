import type { CommandInput } from "./command.ts";
import { CommandError } from "./exit-codes.ts";
import { writeOutput } from "./write-output.ts";

/** Writes a command's result to the file that was asked for, or to standard output. */
export async function deliver(
  { options, terminal }: CommandInput,
  result: string | Uint8Array,
): Promise<void> {
  const { output, force } = options;
  if (typeof output !== "string") {
    if (typeof result === "string") return terminal.out(result);
    if (!terminal.outBytes) throw new CommandError("This result is no text: write it to a file by --output.");
    return terminal.outBytes(result);
  }
  const whole = typeof result !== "string" || result.endsWith("\n") ? result : `${result}\n`;
  await writeOutput(output, whole, force === true);
  terminal.say(`Wrote ${output}.`);
}

export const jsonText = (value: object): string => JSON.stringify(value, undefined, 2);

/** Widest text that reads well on paper and on a wide terminal. */
export const textWidth = (columns: number): number => Math.max(40, Math.min(columns, 100));
