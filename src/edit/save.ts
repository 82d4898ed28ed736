import { constants } from "node:fs";
import { access, readFile, realpath, stat } from "node:fs/promises";
import { errorCode, fileReason } from "./file-reason.ts";
import { replaceFile } from "./replace-file.ts";

export interface SaveRequest {
  readonly file: string;
  readonly text: string;
  /** What is on disk as far as is known; null where there is to be no file yet. */
  readonly expected: string | null;
}

export type SaveOutcome =
  | { readonly status: "saved" }
  /** Someone else wrote the file meanwhile; nothing was written. */
  | { readonly status: "changed on disk"; readonly diskText: string }
  /** Nothing was written; `reason` is a sentence without its full stop. */
  | { readonly status: "failed"; readonly reason: string };

/** Puts a text in a file's place as a whole or not at all. */
export type AtomicWrite = (file: string, text: string) => Promise<void>;

/**
 * Saves a garment's text, as a whole or not at all, unless the file is no longer what was read.
 *
 * A symbolic link is followed and stays a link; permissions stay as they are. Between the last look at the file and
 * the writing lies a moment in which another program's change would go unseen. Nothing is thrown.
 */
export async function saveFile(
  { file, text, expected }: SaveRequest,
  write: AtomicWrite = replaceFile,
): Promise<SaveOutcome> {
  try {
    const target = await realFile(file);
    const onDisk = await bytesOf(target);
    if (onDisk === undefined && expected !== null)
      return { status: "failed", reason: "the file is no longer there" };
    if (onDisk && (expected === null || !onDisk.equals(Buffer.from(expected))))
      return { status: "changed on disk", diskText: onDisk.toString("utf8") };
    if (onDisk && !(await isWritable(target)))
      return { status: "failed", reason: "the file is marked as one that must not be written" };
    await write(target, text);
    return { status: "saved" };
  } catch (error) {
    return { status: "failed", reason: fileReason(error) };
  }
}

async function realFile(file: string): Promise<string> {
  try {
    return await realpath(file);
  } catch (error) {
    if (errorCode(error) === "ENOENT") return file;
    throw error;
  }
}

async function bytesOf(file: string): Promise<Buffer | undefined> {
  try {
    return await readFile(file);
  } catch (error) {
    if (errorCode(error) === "ENOENT") return undefined;
    throw error;
  }
}

/** A whole new file could take the place even of one that is write-protected, so the protection is looked at. */
export async function isWritable(file: string): Promise<boolean> {
  const { mode } = await stat(file);
  if ((mode & 0o222) === 0) return false;
  return access(file, constants.W_OK).then(
    () => true,
    () => false,
  );
}
