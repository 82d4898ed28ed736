/**
 * Even spacing over rows: `steps` shapings in `rows` rows are worked every q-th row (steps - r) times and every
 * (q + 1)-th row r times, with q = floor(rows / steps) and r = rows mod steps; the two add up to `rows`.
 * Source: the trade's division rule for shaping (web tutorial "Knitting and the Magic Formula"; machine-knitting
 * blog, "Taking the magic out of the Magic Formula", 11 Aug 2008).
 */
export interface EvenSpacing {
  readonly every: number;
  readonly times: number;
  /** Shapings that have one row more between them. */
  readonly longerTimes: number;
}

/** Spacing of `steps` (at least 1) over `rows`; with `evenRowsOnly`, over pairs of rows, any odd row left over. */
export function evenSpacing(rows: number, steps: number): EvenSpacing {
  const longerTimes = rows % steps;
  return { every: Math.floor(rows / steps), times: steps - longerTimes, longerTimes };
}

/**
 * How many of `steps` steps, spread evenly over `rows` rows, are done once `row` of those rows are knitted.
 * Each step is done where the straight line between the two ends passes the middle between two needles, so the
 * cloth's edge is never more than half a needle off that line; the gaps between steps are those of `evenSpacing`,
 * and half a gap lies before the first step and after the last.
 */
export const stepsDone = (rows: number, steps: number, row: number): number =>
  rows === 0 ? steps : Math.floor((2 * steps * row + rows) / (2 * rows));
