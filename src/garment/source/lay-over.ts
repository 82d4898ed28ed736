import type { Path } from "../../diagnostics/path.ts";
import type { Entry, WrittenTable } from "./written.ts";

/** A set of keys and where it stands in the file. */
export interface PlacedTable {
  readonly table: WrittenTable;
  readonly path: Path;
}

/**
 * One set of keys laid over another: its values take the place of those below, and each value keeps the path at which
 * it is written.
 *
 * @param join how a value is laid over the one below, where it does not simply take its place
 */
export function layOver(
  below: PlacedTable,
  over: PlacedTable,
  join: (key: string, below: Entry, over: Entry) => Entry = (_key, _below, one) => one,
): WrittenTable {
  const entries = new Map(entriesWithHome(below));
  for (const [key, entry] of entriesWithHome(over)) {
    const beneath = entries.get(key);
    entries.set(key, beneath ? join(key, beneath, entry) : entry);
  }
  return { ...over.table, entries };
}

/** Entries that know their path, so that they can be read from another place than their own. */
const entriesWithHome = ({ table, path }: PlacedTable): readonly (readonly [string, Entry])[] =>
  [...table.entries].map(([key, entry]) => [key, { ...entry, home: entry.home ?? [...path, key] }]);
