import stringWidth from "string-width";
import type { Cell } from "./runs.ts";

/** What lies quietly in the background may be written over; edges, strands and other words may not. */
const isFree = (cell: Cell | undefined): boolean =>
  cell !== undefined && cell.role !== "outline" && cell.role !== "strand" && cell.role !== "label";

/**
 * Writes words of one column a character on the drawing, where all of them find room.
 *
 * @returns whether they did
 */
export function writeOn(grid: Cell[][], row: number, column: number, words: string): boolean {
  const cells = grid[row];
  const wide = stringWidth(words);
  if (!cells || column < 0 || column + wide > cells.length) return false;
  if (!cells.slice(column, column + wide).every(isFree)) return false;
  [...words].forEach((character, index) => {
    cells[column + index] = { character, role: "label" };
  });
  return true;
}

/** Cells of one row from a column on, in one direction, up to the first that is not free. */
export function freeFrom(grid: readonly (readonly Cell[])[], row: number, column: number, towards: 1 | -1) {
  let length = 0;
  while (isFree(grid[row]?.[column + towards * length])) length++;
  return length;
}
