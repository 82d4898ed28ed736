import { constants } from "node:fs";
import { access, readFile, stat } from "node:fs/promises";
import type { Terminal } from "./command.ts";
import { CommandError } from "./exit-codes.ts";

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
    throw new CommandError(`${name}: ${reasonFor(error)}`);
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
    throw new CommandError(`${name}: ${reasonFor(error)}`);
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

const reasons: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file or folder",
  EACCES: "you are not allowed to read or write it",
  EPERM: "you are not allowed to read or write it",
  EISDIR: "this is a folder, not a file",
  ENOTDIR: "part of the path is a file, not a folder",
  EROFS: "this disk can only be read",
  ENOSPC: "the disk is full",
  ENAMETOOLONG: "the name is too long",
  ELOOP: "the links lead in a circle",
};

/** Why the system refused, in plain words. */
function reasonFor(error: unknown): string {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  return reasons[code] ?? `it cannot be read or written (${code || "unknown reason"})`;
}
