import { fileReason } from "../edit/file-reason.ts";
import type { WorkEvent } from "../work/events.ts";
import { applyEvents } from "../work/events.ts";
import type { WorkRecord } from "../work/record.ts";
import { type Files, makeFolder, usualFiles } from "./durable.ts";
import { beginJournal, type Journal } from "./journal.ts";
import { claimLock, type Lock, type Owner } from "./lock.ts";
import { headOf, type KeptWork, keptWork, type WorkPlace } from "./work-place.ts";

/** How keeping something came out; only what is `kept` may be shown. */
export type Keeping =
  | { readonly status: "kept" }
  /** Nothing was kept; `reason` is a sentence without its full stop. */
  | { readonly status: "failed"; readonly reason: string }
  /** Another copy has taken the work over; nothing is written any more. */
  | { readonly status: "lost" };

/** The right to write the work on one garment down, and the means. */
export interface WorkSession {
  /**
   * Writes events down that follow on `record`, which is what was kept until now. Once this has returned `kept` they
   * are on disk, whatever becomes of the program or the power.
   */
  readonly keep: (record: WorkRecord, events: readonly WorkEvent[]) => Keeping;
  /** Lets others have it. */
  readonly close: () => void;
}

export type Starting =
  | { readonly status: "open"; readonly session: WorkSession; readonly kept: KeptWork }
  | { readonly status: "held"; readonly owner: Owner }
  | { readonly status: "failed"; readonly reason: string };

/** Takes up the work on a garment, unless another copy has it; with `takeOver` also then. Nothing is thrown. */
export function startWork(place: WorkPlace, takeOver: boolean, files: Files = usualFiles): Starting {
  try {
    makeFolder(files, place.folder);
    const claim = claimLock(place.lock, takeOver, files);
    if (claim.status === "held") return claim;
    // Read only now: until the lock was taken another copy may have gone on.
    return { status: "open", session: sessionOf(place, claim.lock, files), kept: keptWork(place) };
  } catch (error) {
    return { status: "failed", reason: fileReason(error) };
  }
}

function sessionOf(place: WorkPlace, lock: Lock, files: Files): WorkSession {
  let journal: Journal | undefined;

  const drop = (): void => {
    journal?.close();
    journal = undefined;
  };

  /** Writes events down, by themselves or with all that went before; whether the file is there is seen afterwards. */
  function write(record: WorkRecord, events: readonly WorkEvent[]): boolean {
    if (journal) {
      journal.append(events);
      if (journal.isInPlace()) return true;
      drop();
    }
    // A journal of this session's own: whoever had the lock before may still have the old file open. After a failure
    // too, because nobody knows what of the old file is on disk.
    journal = beginJournal(place.journal, headOf(place, applyEvents(record, events)), lock.isMine, files);
    return journal !== undefined;
  }

  return {
    keep(record, events) {
      try {
        if (!lock.isMine() || !write(record, events) || !lock.isMine()) return { status: "lost" };
        journal?.settle();
        return { status: "kept" };
      } catch (error) {
        drop();
        return { status: "failed", reason: fileReason(error) };
      }
    },
    close() {
      drop();
      lock.release();
    },
  };
}
