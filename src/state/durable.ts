import * as nodeFiles from "node:fs";
import { dirname } from "node:path";
import { errorCode } from "../edit/file-reason.ts";

/** What of the file system is used to keep things; tests give one that fails. */
export type Files = Pick<
  typeof nodeFiles,
  | "openSync"
  | "writeSync"
  | "fsyncSync"
  | "fdatasyncSync"
  | "ftruncateSync"
  | "closeSync"
  | "renameSync"
  | "unlinkSync"
  | "linkSync"
  | "mkdirSync"
  | "readFileSync"
  | "fstatSync"
  | "statSync"
>;

export const usualFiles: Files = nodeFiles;

/**
 * Makes a folder where it is missing, for its owner alone, and has it and its parents on disk. Node's own way to make
 * parents is not used: where the system says of a folder that is there that nothing can be made in it because it is
 * not there, as below /proc, it never returns (Node.js 20.20).
 */
export function makeFolder(files: Files, folder: string): void {
  if (tryMake(files, folder)) return;
  makeFolder(files, dirname(folder));
  if (!tryMake(files, folder)) throw missing(folder);
}

/** Whether the folder is there now; false where its parent is not there. */
function tryMake(files: Files, folder: string): boolean {
  try {
    files.mkdirSync(folder, { mode: 0o700 });
    syncFolder(files, dirname(folder));
    return true;
  } catch (error) {
    if (errorCode(error) === "ENOENT" && dirname(folder) !== folder) return false;
    // Where a file stands in its place, whatever is to be put into it says so.
    if (errorCode(error) === "EEXIST" || isFolder(files, folder)) return true;
    throw error;
  }
}

/** A disk that can only be read says so before it says that the folder is there. */
function isFolder(files: Files, folder: string): boolean {
  try {
    return files.statSync(folder).isDirectory();
  } catch {
    return false;
  }
}

const missing = (folder: string): Error =>
  Object.assign(new Error(`cannot be made: ${folder}`), { code: "ENOENT" });

/**
 * Has on disk which files a folder holds: that a file is synced does not yet say that its name is
 * (fsync(2), Linux man-pages). A system that cannot sync folders does so by itself or not at all.
 */
function syncFolder(files: Files, folder: string): void {
  const descriptor = files.openSync(folder, "r");
  try {
    files.fsyncSync(descriptor);
  } catch (error) {
    if (!["EINVAL", "EISDIR", "EPERM", "ENOTSUP"].includes(errorCode(error))) throw error;
  } finally {
    files.closeSync(descriptor);
  }
}

/** Writes all bytes at a place in an open file: the system may take fewer at a time. */
export function writeAll(files: Files, descriptor: number, bytes: Uint8Array, position: number): void {
  for (let done = 0; done < bytes.length; )
    done += files.writeSync(descriptor, bytes, done, bytes.length - done, position + done);
}

/**
 * Puts bytes in a file's place as a whole or not at all, and returns once they are there whatever becomes of the
 * power. `replaceFile` does the same without the question, and hands out no open file.
 *
 * @param mayReplace asked when all but the replacing is done
 * @returns the new file, open for reading and writing; undefined where it was not to be replaced any more
 */
export function replaceDurably(
  files: Files,
  file: string,
  bytes: Uint8Array,
  mayReplace: () => boolean,
): number | undefined {
  const temporary = `${file}.${process.pid}.new`;
  const descriptor = files.openSync(temporary, "w+", 0o600);
  try {
    writeAll(files, descriptor, bytes, 0);
    files.fsyncSync(descriptor);
    if (!mayReplace()) {
      files.closeSync(descriptor);
      removeIfThere(files, temporary);
      return undefined;
    }
    files.renameSync(temporary, file);
    syncFolder(files, dirname(file));
    return descriptor;
  } catch (error) {
    files.closeSync(descriptor);
    removeIfThere(files, temporary);
    throw error;
  }
}

/** Removes a file; that there is none, or that it cannot be removed, is no failure of what was done before. */
export function removeIfThere(files: Files, file: string): void {
  try {
    files.unlinkSync(file);
  } catch {
    // What is left behind is only clutter.
  }
}
