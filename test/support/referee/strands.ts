import type { AnchorEntry, CordEntry, StrandEntry } from "../garment-file.ts";
import { evaluate, type Scope } from "./arithmetic.ts";

/** One strand with the numbers of its own, and the strand whose anchors it takes for the next repeat. */
export interface OneStrand {
  readonly name: string;
  readonly entry: StrandEntry;
  readonly scope: Scope;
  readonly next: string;
  /** Place in the motif's order of work. */
  readonly order: number;
}

export interface Hung {
  readonly needle: number;
  readonly row: number;
  readonly turn: number;
  /** Cord stitches where the file fixes them. */
  readonly fixed: number | undefined;
}

/** Every strand of a motif for one combination of quantities, in the motif's order of work. */
export function strandsOf(motif: CordEntry, quantities: Scope): readonly OneStrand[] {
  const names = motif.order ?? Object.keys(motif.strands);
  return names
    .flatMap((name) => numbered(name, motif.strands[name]!, quantities))
    .map((strand, order) => ({ ...strand, order }));
}

function numbered(name: string, entry: StrandEntry, quantities: Scope): Omit<OneStrand, "order">[] {
  const [each] = Object.entries(entry.each ?? {});
  if (!each) return [{ name, entry, scope: quantities, next: String(entry.next ?? name) }];
  const [index, range] = each;
  const [first, last] = range.split("..").map((formula) => evaluate(formula, quantities)) as [number, number];
  const strands: Omit<OneStrand, "order">[] = [];
  for (let number = first; number <= last; number++) {
    const scope = { ...quantities, [index]: number };
    const next = entry.next === undefined ? number : evaluate(entry.next, scope);
    strands.push({ name: `${name} ${number}`, entry, scope, next: `${name} ${next}` });
  }
  return strands;
}

/** Where a strand is hung over so many repeats, from the bottom up. */
export function hungOver(
  motif: CordEntry,
  quantities: Scope,
  strand: OneStrand,
  repeats: number,
): (Hung & { readonly order: number })[] {
  const all = strandsOf(motif, quantities);
  const [lead, repeat] = [evaluate(motif.lead, quantities), evaluate(motif.repeat, quantities)];
  const at = (place: OneStrand, anchors: readonly AnchorEntry[], above: number) =>
    anchors.map(([needle, row, more]) => ({
      needle: evaluate(needle, place.scope),
      row: above + evaluate(row, place.scope),
      turn: evaluate(more?.turn ?? 0, place.scope),
      fixed: more?.count === undefined ? undefined : evaluate(more.count, place.scope),
      order: place.order,
    }));
  const path = [...at(strand, [strand.entry.start], 0), ...at(strand, strand.entry["lead-in"] ?? [], 0)];
  let place = strand;
  for (let time = 0; time < repeats; time++) {
    path.push(...at(place, place.entry.repeat, lead + time * repeat));
    place = all.find(({ name }) => name === place.next)!;
  }
  return path;
}

/** Names of the strands hung at each row, in the order in which the file wants them hung. */
export function workingOrder(motif: CordEntry, quantities: Scope, repeats: number): Map<number, string[]> {
  const hung = strandsOf(motif, quantities).flatMap((strand) =>
    hungOver(motif, quantities, strand, repeats).map((one) => ({ ...one, name: strand.name })),
  );
  const rows = new Map<number, string[]>();
  for (const { row, name } of hung.sort(
    (one, other) => one.row - other.row || one.turn - other.turn || one.order - other.order,
  ))
    rows.set(row, [...(rows.get(row) ?? []), name]);
  return rows;
}
