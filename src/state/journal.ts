import { createHash } from "node:crypto";
import { type Files, replaceDurably, usualFiles, writeAll } from "./durable.ts";

/**
 * A file that is only ever added to, a line an entry, each on disk before `append` returns.
 *
 * A line is a checksum, a space, and the entry as JSON. The checksum (the first 16 hexadecimal digits of SHA-256)
 * goes over the checksum of the line before and the JSON, so that the first line that is torn, missing or of another
 * file ends what is read, and nothing after it is taken for what it is not.
 */
export interface Journal {
  /**
   * Adds entries, on disk once this has returned. Where it throws what the system says, they are taken out again;
   * where the program ends meanwhile, the first few of them may stay.
   */
  readonly append: (entries: readonly object[]) => void;
  /** Whether this is the file that a reader finds, and not one that was replaced or removed. */
  readonly isInPlace: () => boolean;
  readonly close: () => void;
}

const checksumDigits = 16;

const checksumOf = (before: string, json: string): string =>
  createHash("sha256").update(before).update(json).digest("hex").slice(0, checksumDigits);

/** The lines of entries as they follow a checksum, and the last one's checksum. */
function linesOf(
  entries: readonly object[],
  before: string,
): { readonly text: string; readonly last: string } {
  let last = before;
  let text = "";
  for (const entry of entries) {
    const json = JSON.stringify(entry);
    last = checksumOf(last, json);
    text += `${last} ${json}\n`;
  }
  return { text, last };
}

/** The entries of a journal up to the first line that is not whole. */
export function entriesIn(text: string): readonly unknown[] {
  const entries: unknown[] = [];
  let before = "";
  for (let from = 0; ; ) {
    const end = text.indexOf("\n", from);
    if (end < 0) return entries;
    const [checksum, json] = [
      text.slice(from, from + checksumDigits),
      text.slice(from + checksumDigits + 1, end),
    ];
    if (text[from + checksumDigits] !== " " || checksum !== checksumOf(before, json)) return entries;
    entries.push(JSON.parse(json));
    before = checksum;
    from = end + 1;
  }
}

/** Entries of a journal on disk, undefined where there is no file; throws what the system says. */
export function readJournal(file: string, files: Files = usualFiles): readonly unknown[] | undefined {
  try {
    return entriesIn(files.readFileSync(file, "utf8"));
  } catch (error) {
    if (error instanceof Error && "code" in error && error.code === "ENOENT") return undefined;
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
  const begun = linesOf([first], "");
  const descriptor = replaceDurably(files, file, Buffer.from(begun.text), mayReplace);
  if (descriptor === undefined) return undefined;
  let last = begun.last;
  let length = Buffer.byteLength(begun.text);
  return {
    append(entries) {
      const added = linesOf(entries, last);
      const bytes = Buffer.from(added.text);
      try {
        writeAll(files, descriptor, bytes, length);
        files.fdatasyncSync(descriptor);
      } catch (error) {
        takeBack(files, descriptor, length);
        throw error;
      }
      length += bytes.length;
      last = added.last;
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
