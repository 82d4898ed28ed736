import { noRangeText } from "../grading/report/no-range-text.ts";
import { noFitText } from "../report/no-fit-text.ts";
import type { Solved } from "./solving.ts";

/** Why nothing fits, in words: for one size of a file with sizes also what the others have to do with it. */
export function refusalText({ loaded, result, conflict }: Solved, width: number): string {
  if (!("misfits" in result)) return noFitText(loaded.garment!.title, conflict, width);
  const size = loaded.size?.name ?? "";
  const conflicts = result.misfits.includes(size) && conflict ? [{ size, rules: conflict }] : [];
  return noRangeText(result, conflicts, width);
}
