import type { Motif } from "../../motif/motif.ts";
import type { Weights } from "../garment.ts";
import { DEFAULT_WEIGHTS, TERMS } from "../weights.ts";
import { type Reading, type Table, tableAt, unknownKey } from "./cursor.ts";
import * as limits from "./limits.ts";
import { numberAt } from "./numbers.ts";

/** The weights of the file's top table, those that are not written by default. */
export function weightsAt(reading: Reading, top: Table, motifs: readonly Motif[]): Weights {
  const cursor = top.at("weights");
  const table = cursor && tableAt(reading, cursor, "the weights", undefined, "{ length: 3, ease: 1 }");
  const known = new Set<string>([
    ...TERMS,
    ...Object.keys(DEFAULT_WEIGHTS),
    ...motifs.flatMap(({ quantities }) => quantities.map((quantity) => quantity.name)),
    ...writtenQuantities(top),
  ]);
  // No prototype: a knitter may call a quantity `constructor`.
  const weights: Record<string, number> = Object.assign(Object.create(null), DEFAULT_WEIGHTS);
  if (table?.cursor.written.kind !== "table") return weights;
  for (const [key, entry] of table.cursor.written.entries) {
    if (!known.has(key)) unknownKey(reading, table.cursor, key, entry, "the weights", [...known]);
    const value = numberAt(reading, table.at(key)!, `the weight of ${key}`, limits.weight);
    if (value !== undefined) weights[key] = value;
  }
  return weights;
}

/** Names of quantities in the file, also of motifs that could not be read. */
function writtenQuantities(top: Table): readonly string[] {
  const motifs = top.at("motifs")?.written;
  if (motifs?.kind !== "table") return [];
  return [...motifs.entries.values()].flatMap(({ value }) => {
    const quantities = value.kind === "table" ? value.entries.get("quantities")?.value : undefined;
    return quantities?.kind === "table" ? [...quantities.entries.keys()] : [];
  });
}
