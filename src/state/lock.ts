import { randomBytes } from "node:crypto";
import { readFileSync } from "node:fs";
import { hostname } from "node:os";
import { errorCode } from "../edit/file-reason.ts";
import { type Files, removeIfThere, usualFiles, writeAll } from "./durable.ts";

/** Who works on something that only one at a time may write. */
export interface Owner {
  readonly pid: number;
  readonly host: string;
  /** When the process began, by its system's own count; process numbers are used again. Empty where not told. */
  readonly born: string;
  /** When the lock was taken, in milliseconds since 1970 (UTC). */
  readonly since: number;
  /** Told apart by this from all other takings. */
  readonly token: string;
}

export interface Lock {
  readonly owner: Owner;
  /** Whether it is still this one's; someone else may have taken it over at any time. */
  readonly isMine: () => boolean;
  readonly release: () => void;
}

export type Claim =
  | { readonly status: "mine"; readonly lock: Lock }
  | { readonly status: "held"; readonly owner: Owner };

/**
 * Takes a lock file. It is made in one step with what it says, so that nobody reads half of it. A lock whose owner
 * lives no more is taken over at once; with `takeOver` any is. Throws what the system says.
 *
 * Taking over replaces the file, and of two that do so together the later one has it. So its owner does what the lock
 * guards first and asks `isMine` afterwards: where it still is, whoever takes over later sees what was done.
 */
export function claimLock(file: string, takeOver: boolean, files: Files = usualFiles): Claim {
  const owner: Owner = {
    pid: process.pid,
    host: hostname(),
    born: birthOf(process.pid),
    since: Date.now(),
    token: randomBytes(8).toString("hex"),
  };
  const mine = `${file}.${owner.token}`;
  try {
    write(files, mine, JSON.stringify(owner));
    if (tryLink(files, mine, file)) return { status: "mine", lock: lockOf(file, owner, files) };
    const held = ownerOf(file, files);
    if (held && !takeOver && isAlive(held)) return { status: "held", owner: held };
    files.renameSync(mine, file);
    return { status: "mine", lock: lockOf(file, owner, files) };
  } finally {
    removeIfThere(files, mine);
  }
}

/** Who has a lock; undefined where nobody has it. */
export function ownerOf(file: string, files: Files = usualFiles): Owner | undefined {
  try {
    return JSON.parse(files.readFileSync(file, "utf8")) as Owner;
  } catch {
    return undefined;
  }
}

/** Who has a lock and lives; undefined where nobody does. */
export function livingOwnerOf(file: string): Owner | undefined {
  const owner = ownerOf(file);
  return owner && isAlive(owner) ? owner : undefined;
}

const lockOf = (file: string, owner: Owner, files: Files): Lock => {
  const isMine = (): boolean => ownerOf(file, files)?.token === owner.token;
  return {
    owner,
    isMine,
    release() {
      if (isMine()) removeIfThere(files, file);
    },
  };
};

function write(files: Files, file: string, text: string): void {
  const descriptor = files.openSync(file, "wx", 0o600);
  try {
    writeAll(files, descriptor, Buffer.from(text), 0);
  } finally {
    files.closeSync(descriptor);
  }
}

/** link(2) fails where the new name is there already, and is one step. */
function tryLink(files: Files, from: string, to: string): boolean {
  try {
    files.linkSync(from, to);
    return true;
  } catch (error) {
    if (errorCode(error) === "EEXIST") return false;
    throw error;
  }
}

/** Nothing can be known of a process on another machine, so that one is taken for alive. */
function isAlive({ pid, host, born }: Owner): boolean {
  if (host !== hostname()) return true;
  try {
    process.kill(pid, 0);
  } catch (error) {
    return errorCode(error) === "EPERM";
  }
  return born === "" || born === birthOf(pid);
}

/** Field 22 of /proc/PID/stat (proc(5), Linux man-pages): the start in ticks since the machine's. */
function birthOf(pid: number): string {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, "utf8");
    // The name in field 2 may hold spaces and brackets; the third field follows its last bracket.
    return stat.slice(stat.lastIndexOf(")") + 2).split(" ")[19] ?? "";
  } catch {
    return "";
  }
}
