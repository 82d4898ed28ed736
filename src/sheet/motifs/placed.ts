import type { Action } from "../sheet.ts";

/** An action and the row at which it is done. */
export type Placed = readonly [row: number, action: Action];
