import type { FittedPlacement, FittedSection } from "../fit/fit.ts";

/** What of a placement is begun once some rows of its piece are knitted. */
export interface Standing {
  readonly placed: FittedPlacement;
  /** As they were begun, up to the end of the repeat in hand. */
  readonly sections: readonly FittedSection[];
  readonly repeats: number;
  /** Row at which the repeat in hand, or else the last one worked, ends. */
  readonly endRow: number;
  /** Whether the last hanging is made and the cords are fastened: nothing can be added. */
  readonly done: boolean;
}

/**
 * What stands of a placement at a row: the lead-in as soon as the motif is begun, and every repeat of which a row is
 * knitted.
 *
 * @returns undefined where the motif begins only above that row
 */
export function standingOf(placed: FittedPlacement, row: number): Standing | undefined {
  if (placed.firstRow > row) return undefined;
  const done = placed.lastRow <= row;
  const sections: FittedSection[] = [];
  let endRow = placed.firstRow + placed.sections[0]!.look.trace.leadRows;
  for (const [index, section] of placed.sections.entries()) {
    const { repeatRows } = section.look.trace;
    const begun = Math.min(section.repeats, Math.max(0, Math.ceil((row - endRow) / repeatRows)));
    if (index > 0 && begun === 0) break;
    sections.push({ ...section, repeats: begun });
    endRow += begun * repeatRows;
    if (begun < section.repeats) break;
  }
  return {
    placed,
    sections,
    repeats: sections.reduce((sum, { repeats }) => sum + repeats, 0),
    endRow,
    done,
  };
}
