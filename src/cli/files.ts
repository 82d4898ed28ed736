import { stat } from "node:fs/promises";
import { namedFileReason } from "../edit/file-reason.ts";
import { readUpTo } from "../edit/open.ts";
import type { Terminal } from "./command.ts";
import { CommandError } from "./exit-codes.ts";
import { whereSampleIs } from "./samples.ts";

/** Far more than any file that is read whole; some devices and pipes never end. */
export const MOST_INPUT_BYTES = 32_000_000;

/**
 * Reads a file, or standard input for "-".
 *
 * @throws CommandError where it cannot be read, or does not end
 */
export async function readInput(name: string, terminal: Terminal): Promise<Uint8Array> {
  const bytes = name === "-" ? await terminal.readStdin() : await readFileUpTo(name);
  if (bytes === undefined || bytes.length > MOST_INPUT_BYTES)
    throw new CommandError(
      `${name === "-" ? "standard input" : name}: it is longer than ${MOST_INPUT_BYTES / 1_000_000} MB, more than is ever read`,
    );
  return bytes;
}

async function readFileUpTo(name: string): Promise<Uint8Array | undefined> {
  try {
    return await readUpTo(name, MOST_INPUT_BYTES);
  } catch (error) {
    throw new CommandError(`${name}: ${namedFileReason(error)}${whereSampleIs(name)}`);
  }
}

/** Bytes of a file before it is read, so that a huge one is never taken into memory; undefined where unknown. */
export async function sizeOf(name: string): Promise<number | undefined> {
  if (name === "-") return undefined;
  try {
    return (await stat(name)).size;
  } catch {
    return undefined;
  }
}
