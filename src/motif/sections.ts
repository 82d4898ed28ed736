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
 * Every point of a strand or a cable over a run of sections; rows count from the motif's first row. A strand goes on in
 * the place of another wherever that is the next of the one it is in.
 *
 * @param name of the strand or cable in which it starts
 * @param more points of one repeat more on top, as far as that has so many
 */
export function pointsOver(
  sections: readonly Section[],
  kind: "strands" | "cables",
  name: string,
  more = 0,
): readonly SectionPoint[] {
  const points: SectionPoint[] = [];
  let base = 0;
  let place = name;
  sections.forEach(({ trace, repeats }, section) => {
    const blocks = (): BlockTrace => trace[kind].find((one) => one.name === place)!;
    if (section === 0) {
      const { start, leadIn } = blocks();
      for (const point of [start, ...leadIn]) points.push({ ...point, section });
      base = trace.leadRows;
    }
    for (let time = 0; time < repeats; time++, base += trace.repeatRows) {
      const { repeat, next } = blocks();
      for (const point of repeat) points.push({ ...point, row: base + point.row, section });
      place = next ?? place;
    }
  });
  const last = sections.at(-1)?.trace[kind].find((one) => one.name === place);
  for (const point of last?.repeat.slice(0, more) ?? [])
    points.push({ ...point, row: base + point.row, section: sections.length - 1 });
  return points;
}
