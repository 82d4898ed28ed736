import { readFile, rm } from "node:fs/promises";
import { dirname } from "node:path";
import { errorCode, fileReason } from "../edit/file-reason.ts";
import { replaceFile } from "../edit/replace-file.ts";
import { makeFolder, usualFiles } from "./durable.ts";

/** Whether something could be kept; where it could not the program goes on without. */
export type Kept = { readonly status: "kept" } | { readonly status: "failed"; readonly reason: string };

const pending = new Map<string, Promise<Kept>>();

/**
 * Runs what goes by one name in the order in which it was asked for, so that something kept late does not come back
 * after it was dropped; what is thrown becomes a reason.
 */
export function inTurn(name: string, task: () => Promise<void>): Promise<Kept> {
  const before = pending.get(name) ?? Promise.resolve();
  const turn = before.then(() => attempted(task));
  pending.set(name, turn);
  void turn.then(() => {
    if (pending.get(name) === turn) pending.delete(name);
  });
  return turn;
}

async function attempted(task: () => Promise<void>): Promise<Kept> {
  try {
    await task();
    return { status: "kept" };
  } catch (error) {
    return { status: "failed", reason: fileReason(error) };
  }
}

/** Writes state as a whole or not at all, for its owner alone; the folder is made where it is missing. */
export async function writeState(file: string, state: object): Promise<void> {
  makeFolder(usualFiles, dirname(file));
  await replaceFile(file, `${JSON.stringify(state)}\n`, 0o600);
}

/** State as it was written; undefined where there is none, or where it cannot be read. */
export async function readState(file: string): Promise<unknown> {
  try {
    return JSON.parse(await readFile(file, "utf8"));
  } catch {
    return undefined;
  }
}

/** Removes state; that there is none is no failure. */
export async function removeState(file: string): Promise<void> {
  try {
    await rm(file);
  } catch (error) {
    if (errorCode(error) !== "ENOENT") throw error;
  }
}
