import type { KnitLine } from "./document/document.ts";

const rowsInGroup = 10;

/**
 * The row numbers of a folded line, one to tick for each row that is knitted, in groups that end where the row counter
 * shows a full ten.
 */
export function tickGroups({ rows, toRow }: KnitLine): readonly (readonly number[])[] {
  const groups: number[][] = [];
  for (let row = toRow - rows + 1; row <= toRow; row++) {
    const group = groups.at(-1);
    if (!group || group.at(-1)! % rowsInGroup === 0) groups.push([row]);
    else group.push(row);
  }
  return groups;
}
