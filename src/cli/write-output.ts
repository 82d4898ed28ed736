import type { Stats } from "node:fs";
import { open, readlink, realpath, stat } from "node:fs/promises";
import { dirname, join, resolve } from "node:path";
import { errorCode, namedFileReason } from "../edit/file-reason.ts";
import { createFile, replaceFile } from "../edit/replace-file.ts";
import { isWritable } from "../edit/save.ts";
import { CommandError } from "./exit-codes.ts";

/**
 * Writes a result to a file as a whole or not at all. A file that is there is overwritten only where that is asked for,
 * whoever wrote it, and keeps its permissions and its owner; one that comes to be there meanwhile is left too. A symbolic
 * link stays one: what it leads to is written. A pipe or a device such as a terminal is written to as it is.
 *
 * @param force overwrite a file that exists
 * @throws CommandError where the file exists already or cannot be written
 */
export async function writeOutput(name: string, text: string | Uint8Array, force: boolean): Promise<void> {
  try {
    const there = await statOf(name);
    if (there && isEndless(there)) return await writeInto(name, text);
    if (there) mustBeReplaceable(name, there, force);
    if (there) await overwrite(name, text);
    else await createFile(await endOfLinks(name), text);
  } catch (error) {
    if (error instanceof CommandError) throw error;
    if (errorCode(error) === "EEXIST") throw existsAlready(name);
    throw new CommandError(`${name}: ${namedFileReason(error)}`);
  }
}

/**
 * Says before the work what {@link writeOutput} would say after it.
 *
 * @throws CommandError where the file exists already and is not to be overwritten
 */
export async function refuseToOverwrite(name: string): Promise<void> {
  const there = await statOf(name).catch(() => undefined);
  if (there && !isEndless(there)) mustBeReplaceable(name, there, false);
}

/** What takes whatever is written to it, and holds nothing that could be lost. */
const isEndless = (there: Stats): boolean => there.isFIFO() || there.isCharacterDevice();

function mustBeReplaceable(name: string, there: Stats, force: boolean): void {
  if (there.isDirectory()) throw new CommandError(`${name}: this is a folder, not a file`);
  if (!there.isFile()) throw new CommandError(`${name}: this is no file`);
  if (!force) throw existsAlready(name);
}

const existsAlready = (name: string): CommandError =>
  new CommandError(`${name} exists already and was left as it is. To overwrite it, add --force.`);

/** What is there, links followed; undefined where nothing is, or only a link that leads to nothing. */
async function statOf(name: string): Promise<Stats | undefined> {
  try {
    return await stat(name);
  } catch (error) {
    if (errorCode(error) === "ENOENT") return undefined;
    throw error;
  }
}

async function overwrite(name: string, text: string | Uint8Array): Promise<void> {
  // A whole new file could take the place even of one that is write-protected.
  if (!(await isWritable(name)))
    throw new CommandError(`${name}: the file is marked as one that must not be written`);
  await replaceFile(await realpath(name), text);
}

async function writeInto(name: string, text: string | Uint8Array): Promise<void> {
  const handle = await open(name, "w");
  try {
    await handle.writeFile(text);
  } finally {
    await handle.close();
  }
}

/** More links one after the other than any system follows. */
const MOST_LINKS = 40;

/** Where a file is made under a name that leads to none yet. */
async function endOfLinks(name: string): Promise<string> {
  let at = resolve(name);
  for (let count = 0; count < MOST_LINKS; count++) {
    const target = await readlink(at).catch(() => undefined);
    if (target === undefined) return at;
    at = resolve(join(await realpath(dirname(at))), target);
  }
  return at;
}
