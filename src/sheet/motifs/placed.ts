import type { OrnamentAction } from "../sheet.ts";

/** What a motif asks for, and the row at which it is done. */
export type Placed = readonly [row: number, action: OrnamentAction];
