import type { BlockTrace, Point, Trace } from "./trace.ts";

/**
 * So many whole repeats of a motif with one choice of its values. A motif is worked as a run of sections from the
 * bottom up: the first begins with the lead-in, each other one where the section below ended.
 */
export interface Section {
  readonly trace: Trace;
  /** At least 1, except that a first section may be no more than the lead-in. */
  readonly repeats: number;
}

export interface SectionPoint extends Point {
  /** Index of the section the point belongs to. */
  readonly section: number;
}

/** Rows of a whole run of sections. */
export const rowsOver = (sections: readonly Section[]): number =>
  sections.reduce((rows, section) => rows + rowsOf(section), sections[0]?.trace.leadRows ?? 0);

const rowsOf = ({ trace, repeats }: Section): number => repeats * trace.repeatRows;

/**
 * Every point of a strand or a cable over a run of sections; rows count from the motif's first row.
 *
 * @param blocksOf finds that strand or cable in a section's trace
 */
export function pointsOver(
  sections: readonly Section[],
  blocksOf: (trace: Trace) => BlockTrace,
): readonly SectionPoint[] {
  const points: SectionPoint[] = [];
  let base = 0;
  sections.forEach(({ trace, repeats }, section) => {
    const { start, leadIn, repeat } = blocksOf(trace);
    if (section === 0) {
      for (const point of [start, ...leadIn]) points.push({ ...point, section });
      base = trace.leadRows;
    }
    for (let time = 0; time < repeats; time++, base += trace.repeatRows)
      for (const point of repeat) points.push({ ...point, row: base + point.row, section });
  });
  return points;
}
