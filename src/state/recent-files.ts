import { access } from "node:fs/promises";
import { join, resolve } from "node:path";
import { inTurn, type Kept, readState, writeState } from "./kept.ts";

const format = "evenrow-recent/1";
const mostKept = 20;

/** Garment files opened before that are still there, by their full paths, the most recent first; at most 20. */
export async function recentFiles(folder: string): Promise<readonly string[]> {
  const files = await listed(folder);
  const there = await Promise.all(files.map(isThere));
  return files.filter((_, index) => there[index]);
}

/** Puts a file at the top of the recent ones. */
export const rememberRecent = (folder: string, file: string): Promise<Kept> =>
  inTurn(listFile(folder), async () => {
    const path = resolve(file);
    const others = (await listed(folder)).filter((other) => other !== path);
    await writeState(listFile(folder), { format, files: [path, ...others].slice(0, mostKept) });
  });

const listFile = (folder: string): string => join(folder, "recent.json");

async function listed(folder: string): Promise<readonly string[]> {
  const state = await readState(listFile(folder));
  const files: unknown = typeof state === "object" && state !== null && "files" in state ? state.files : [];
  const paths = Array.isArray(files) ? files.filter((file: unknown) => typeof file === "string") : [];
  return paths.slice(0, mostKept);
}

const isThere = (file: string): Promise<boolean> =>
  access(file).then(
    () => true,
    () => false,
  );
