import { join, resolve } from "node:path";
import { fullPath, nameFor } from "./garment-key.ts";
import { inTurn, type Kept, readState, removeState, writeState } from "./kept.ts";

/** Changes to a garment file that were not saved. */
export interface Unsaved {
  /** The file's full path. */
  readonly file: string;
  /** What was on disk when the changes began. */
  readonly baseText: string;
  readonly currentText: string;
  /** When they were kept, in milliseconds since 1970 (UTC). */
  readonly at: number;
}

const format = "evenrow-unsaved/1";

/**
 * Keeps changes that are not saved yet, so that they outlive a crash; what was kept before for the file is replaced.
 * Once this has returned, the changes are on disk whatever becomes of the program.
 */
export const rememberUnsaved = (
  folder: string,
  file: string,
  baseText: string,
  currentText: string,
): Promise<Kept> =>
  inTurn(turnOf(folder, file), async () => {
    const path = await fullPath(file);
    await writeState(journalFor(folder, path), { format, file: path, baseText, currentText, at: Date.now() });
  });

/** What was kept for a file, if anything was. */
export async function unsavedFor(folder: string, file: string): Promise<Unsaved | undefined> {
  const path = await fullPath(file);
  const unsaved = unsavedFrom(await readState(journalFor(folder, path)));
  return unsaved?.file === path ? unsaved : undefined;
}

/** Drops what was kept for a file: it was saved, or is not wanted any more. */
export const forgetUnsaved = (folder: string, file: string): Promise<Kept> =>
  inTurn(turnOf(folder, file), async () => removeState(journalFor(folder, await fullPath(file))));

const journalFor = (folder: string, path: string): string => join(folder, "unsaved", `${nameFor(path)}.json`);

const turnOf = (folder: string, file: string): string => `${folder}\0${resolve(file)}`;

function unsavedFrom(state: unknown): Unsaved | undefined {
  if (typeof state !== "object" || state === null) return undefined;
  const { file, baseText, currentText, at } = state as Partial<Record<keyof Unsaved, unknown>>;
  if (typeof file !== "string" || typeof baseText !== "string") return undefined;
  if (typeof currentText !== "string" || typeof at !== "number") return undefined;
  return { file, baseText, currentText, at };
}
