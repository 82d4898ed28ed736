import type { PlacedRule } from "../../report/fit-json.ts";
import { conflictLines } from "../../report/no-fit-text.ts";
import { listed } from "../../report/words.ts";
import { wrap } from "../../report/wrap.ts";
import type { RangeDoesNotFit } from "../range-result.ts";

/** The rules that a size by itself cannot keep. */
export interface SizeConflict {
  readonly size: string;
  readonly rules: readonly PlacedRule[];
}

/** Why not every size fits: those that do not even by themselves, or those that cannot share. */
export function noRangeText(
  { range, misfits, freeing, clash }: RangeDoesNotFit,
  conflicts: readonly SizeConflict[],
  width: number,
): string {
  const { title, sizes } = range;
  const head = [title, "=".repeat(title.length), ""];
  if (misfits.length > 0)
    return [
      ...head,
      ...wrap(
        `${listed(misfits)} ${misfits.length === 1 ? "does" : "do"} not fit, even without the others.`,
        width,
      ),
      ...conflicts.flatMap(({ size, rules }) => ["", size, ...conflictLines(rules, width)]),
    ].join("\n");
  return [
    ...head,
    ...wrap("Every size fits by itself, but there is no look that all of them could share.", width),
    ...wrap(wayOut(freeing, clash, sizes.length), width),
  ].join("\n");
}

function wayOut(freeing: readonly string[], clash: readonly string[], sizes: number): string {
  if (sizes === 2)
    return "Each would have to look as it likes: leave share out, or give one of them a file of its own.";
  if (freeing.length > 0) return `Without ${eitherOf(freeing)} the others could.`;
  return `${listed(clash)} cannot share one; without any one of them the rest of these could.`;
}

const eitherOf = (names: readonly string[]): string =>
  names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} or ${names.at(-1)}`;
