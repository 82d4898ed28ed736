/**
 * Lists that were worked out before, by all that they depend on, as text: a garment that is read again is made of new
 * objects, so content is the only thing to know it by.
 *
 * @param of everything that the list depends on
 */
export type Kept = <Item>(of: string, make: () => readonly Item[]) => readonly Item[];

/** About 30 MB for those in use and as much for those before them. */
const mostItems = 30_000;

/**
 * Keeps what is asked for again, within bounds: once there is too much, what was not asked for since the last time that
 * there was too much is let go.
 */
export function createKept(): Kept {
  let recent = new Map<string, readonly unknown[]>();
  let before = new Map<string, readonly unknown[]>();
  let items = 0;
  return <Item>(of: string, make: () => readonly Item[]): readonly Item[] => {
    const inUse = recent.get(of);
    if (inUse) return inUse as readonly Item[];
    const list = (before.get(of) as readonly Item[] | undefined) ?? make();
    items += list.length + 1;
    if (items > mostItems) {
      before = recent;
      recent = new Map();
      items = list.length + 1;
    }
    recent.set(of, list);
    return list;
  };
}
