import type { Side } from "../garment/garment.ts";

export const otherSide = (side: Side): Side => (side === "left" ? "right" : "left");

/** Where the carriage rests once `row` rows are knitted: each pass takes it to the other side. */
export const carriageAt = (start: Side, row: number): Side => (row % 2 === 0 ? start : otherSide(start));
