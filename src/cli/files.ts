import { constants } from "node:fs";
import { access, readFile, stat } from "node:fs/promises";
import { namedFileReason } from "../edit/file-reason.ts";
import type { Terminal } from "./command.ts";
import { CommandError } from "./exit-codes.ts";
import { whereSampleIs } from "./samples.ts";

/**
 * Reads a file, or standard input for "-".
 *
 * @throws CommandError where it cannot be read
 */
export async function readInput(name: string, terminal: Terminal): Promise<Uint8Array> {
  if (name === "-") return terminal.readStdin();
  try {
    return await readFile(name);
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

/**
 * Writes a result to a file as a whole or not at all.
 *
 * @param force overwrite a file that exists
 * @throws CommandError where the file exists already or cannot be written
 */
export async function writeOutput(name: string, text: string | Uint8Array, force: boolean): Promise<void> {
  if (!force && (await exists(name)))
    throw new CommandError(`${name} exists already and was left as it is. To overwrite it, add --force.`);
  const { default: writeFileAtomic } = await import("write-file-atomic");
  try {
    await writeFileAtomic(name, typeof text === "string" ? text : Buffer.from(text));
  } catch (error) {
    throw new CommandError(`${name}: ${namedFileReason(error)}`);
  }
}

async function exists(name: string): Promise<boolean> {
  try {
    await access(name, constants.F_OK);
    return true;
  } catch {
    return false;
  }
}
