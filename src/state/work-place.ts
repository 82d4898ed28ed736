import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileReason } from "../edit/file-reason.ts";
import { applyEvents, type WorkEvent } from "../work/events.ts";
import type { WorkRecord } from "../work/record.ts";
import { fullPath, nameFor } from "./garment-key.ts";
import { readJournal } from "./journal.ts";

const format = "evenrow-work/1";

/** Where the work on one garment file is kept. */
export interface WorkPlace {
  /** The garment file's full path. */
  readonly file: string;
  /** Which of the file's sizes is worked; each size is work of its own. */
  readonly size?: string;
  readonly folder: string;
  readonly journal: string;
  readonly lock: string;
}

export async function workPlace(stateFolder: string, file: string, size?: string): Promise<WorkPlace> {
  const path = await fullPath(file);
  const folder = join(stateFolder, "work");
  // A path holds no NUL, so no file's name can be taken for another's size.
  const name = nameFor(size === undefined ? path : `${path}\0${size}`);
  return {
    file: path,
    ...(size !== undefined && { size }),
    folder,
    journal: join(folder, `${name}.journal`),
    lock: join(folder, `${name}.lock`),
  };
}

/** What is kept of the work on a garment. */
export type KeptWork =
  | { readonly status: "none" }
  | { readonly status: "kept"; readonly record: WorkRecord }
  /** `reason` is a sentence without its full stop. */
  | { readonly status: "unreadable"; readonly reason: string };

/** The first entry of a journal; all others are events. */
interface Head {
  readonly format: typeof format;
  readonly file: string;
  /** Of the machine's run in which the journal was begun; empty where that is not told. */
  readonly boot: string;
  readonly record: WorkRecord;
}

export const headOf = ({ file }: WorkPlace, record: WorkRecord): Head => ({
  format,
  file,
  boot: bootNow(),
  record,
});

/** Told apart from all other runs of the machine by this (random(4), Linux man-pages). */
function bootNow(): string {
  try {
    return readFileSync("/proc/sys/kernel/random/boot_id", "utf8").trim();
  } catch {
    return "";
  }
}

/** In the same run of the machine what was not settled was not shown; after another it may have been. */
const countsUnsettled = (head: unknown): boolean =>
  !isHead(head) || head.boot === "" || head.boot !== bootNow();

/** Reads what is kept, without a lock: a journal can be read at any time. */
export function keptWork({ journal, file }: WorkPlace): KeptWork {
  try {
    const entries = readJournal(journal, countsUnsettled);
    if (!entries) return { status: "none" };
    const [head, ...events] = entries;
    if (!isHead(head) || head.file !== file)
      return { status: "unreadable", reason: "its beginning is damaged or of another version" };
    // What has the right checksum was written by this program, event by event.
    return { status: "kept", record: applyEvents(head.record, events as readonly WorkEvent[]) };
  } catch (error) {
    return { status: "unreadable", reason: fileReason(error) };
  }
}

const isHead = (entry: unknown): entry is Head =>
  typeof entry === "object" && entry !== null && "format" in entry && entry.format === format;
