import { readdir, readFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { samplesFolder } from "../../src/cli/samples.ts";
import { printable } from "../../src/diagnostics/shown.ts";
import { recentFiles } from "../../src/state/recent-files.ts";
import type { ShelfEntry } from "../state.ts";

/** What may be opened: files opened lately, the samples, and a garment of one's own. */
export async function shelfEntries(stateFolder: string): Promise<readonly ShelfEntry[]> {
  const recent = await Promise.all((await recentFiles(stateFolder)).map((file) => entry("recent", file)));
  const samples = await Promise.all((await sampleFiles()).map((file) => entry("sample", file)));
  return [
    ...recent,
    ...samples,
    { kind: "new", file: "", title: "Answer a few questions and make a new one" },
  ];
}

async function sampleFiles(): Promise<readonly string[]> {
  const folder = samplesFolder();
  if (folder === undefined) return [];
  const names = (await readdir(folder)).filter((name) => name.endsWith(".yaml")).sort();
  return names.map((name) => join(folder, name));
}

async function entry(kind: "recent" | "sample", file: string): Promise<ShelfEntry> {
  const text = await readFile(file, "utf8").catch(() => "");
  const [, title] = /^title:\s*["']?(.+?)["']?\s*$/m.exec(text) ?? [];
  return { kind, file, title: printable(title ?? basename(file)) };
}
