import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { errorCode } from "../edit/file-reason.ts";
import { type Files, replaceDurably, usualFiles, writeAll } from "./durable.ts";

/**
 * A file that is only ever added to, a line for what is added together, on disk before `append` returns.
 *
 * A line is a checksum, a sign, and the entries as a JSON list. The checksum (the first 16 hexadecimal digits of
 * SHA-256) goes over the checksum of the line before and the JSON, so that the first line that is torn, missing or of
 * another file ends what is read, and nothing after it is taken for what it is not.
 *
 * The sign is a question mark until the line is settled, and then a space. Settling is not waited for on disk: after
 * the power was lost every whole line counts, for it may have been shown. While the machine has run on, the signs are as
 * they were left, and a program that was killed before it could show what it had written has not shown it.
 */
export interface Journal {
  /**
   * Adds entries as a whole or not at all, on disk once this has returned. Where it throws what the system says, they
   * are taken out again.
   */
  readonly append: (entries: readonly object[]) => void;
  /** Says that what was added last is about to be shown. */
  readonly settle: () => void;
  /** Whether this is the file that a reader finds, and not one that was replaced or removed. */
  readonly isInPlace: () => boolean;
  readonly close: () => void;
}

const checksumDigits = 16;
const settled = " ";
const unsettled = "?";

const checksumOf = (before: string, json: string): string =>
  createHash("sha256").update(before).update(json).digest("hex").slice(0, checksumDigits);

interface JournalLine {
  readonly checksum: string;
  readonly bytes: Uint8Array;
}

function lineOf(entries: readonly object[], before: string, sign: string): JournalLine {
  const json = JSON.stringify(entries);
  const checksum = checksumOf(before, json);
  return { checksum, bytes: Buffer.from(`${checksum}${sign}${json}\n`) };
}

/**
 * The entries of a journal up to the first line that is not whole.
 *
 * @param countsUnsettled whether lines that were never settled count, by the journal's first entry
 */
export function entriesIn(
  text: string,
  countsUnsettled: (first: unknown) => boolean = () => true,
): readonly unknown[] {
  const entries: unknown[] = [];
  let before = "";
  for (let from = 0; ; ) {
    const end = text.indexOf("\n", from);
    if (end < 0) return entries;
    const checksum = text.slice(from, from + checksumDigits);
    const sign = text[from + checksumDigits];
    const json = text.slice(from + checksumDigits + 1, end);
    if ((sign !== settled && sign !== unsettled) || checksum !== checksumOf(before, json)) return entries;
    if (sign === unsettled && !countsUnsettled(entries[0])) return entries;
    entries.push(...(JSON.parse(json) as unknown[]));
    before = checksum;
    from = end + 1;
  }
}

/** Entries of a journal on disk, undefined where there is no file; throws what the system says. */
export function readJournal(
  file: string,
  countsUnsettled?: (first: unknown) => boolean,
): readonly unknown[] | undefined {
  try {
    return entriesIn(readFileSync(file, "utf8"), countsUnsettled);
  } catch (error) {
    if (["ENOENT", "ENOTDIR"].includes(errorCode(error))) return undefined;
    throw error;
  }
}

/**
 * Begins a journal in a file's place, which is replaced as a whole or not at all; throws what the system says.
 *
 * Whoever has the old file open goes on writing into that one, never into the new.
 *
 * @param mayReplace asked just before the file is replaced
 * @returns undefined where the file was not to be replaced any more
 */
export function beginJournal(
  file: string,
  first: object,
  mayReplace: () => boolean = () => true,
  files: Files = usualFiles,
): Journal | undefined {
  const begun = lineOf([first], "", settled);
  const descriptor = replaceDurably(files, file, begun.bytes, mayReplace);
  if (descriptor === undefined) return undefined;
  let last = begun.checksum;
  let length = begun.bytes.length;
  let signAt: number | undefined;
  return {
    append(entries) {
      const added = lineOf(entries, last, unsettled);
      try {
        writeAll(files, descriptor, added.bytes, length);
        files.fdatasyncSync(descriptor);
      } catch (error) {
        takeBack(files, descriptor, length);
        throw error;
      }
      signAt = length + checksumDigits;
      length += added.bytes.length;
      last = added.checksum;
    },
    settle() {
      if (signAt !== undefined) writeAll(files, descriptor, Buffer.from(settled), signAt);
      signAt = undefined;
    },
    isInPlace: () => isSameFile(files, descriptor, file),
    close: () => files.closeSync(descriptor),
  };
}

function isSameFile(files: Files, descriptor: number, file: string): boolean {
  try {
    const [open, found] = [files.fstatSync(descriptor), files.statSync(file)];
    return open.ino === found.ino && open.dev === found.dev;
  } catch {
    return false;
  }
}

/** What could not be written as a whole must not be read, should it have reached the disk all the same. */
function takeBack(files: Files, descriptor: number, length: number): void {
  try {
    files.ftruncateSync(descriptor, length);
    files.fdatasyncSync(descriptor);
  } catch {
    // The disk does not even do that. The next entries replace the file as a whole.
  }
}
