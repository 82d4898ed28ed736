import type { Cursor, Reading, Table } from "./cursor.ts";

/** A value of a motif: as the knitter wrote it, or as the built-in motif has it. */
export type Part = (key: string) => Cursor | undefined;

/** What the parts of a motif of either kind are read with. */
export interface MotifReading {
  readonly reading: Reading;
  readonly name: string;
  /** What the knitter wrote. */
  readonly own: Table;
  readonly part: Part;
  /** The same; a missing key is a mistake. */
  readonly need: (key: string, expected: string) => Cursor | undefined;
  readonly quantities: ReadonlySet<string>;
}
