/** So many of the items that the one at `at` is among them, with as much before as after it where there is room. */
export function windowAround<Item>(items: readonly Item[], at: number, size: number): readonly Item[] {
  if (items.length <= size) return items;
  const from = Math.max(0, Math.min(items.length - size, at - Math.floor(size / 2)));
  return items.slice(from, from + size);
}
