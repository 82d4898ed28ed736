/**
 * How many of `steps` steps, spread evenly over `rows` rows, are done once `row` of those rows are knitted.
 * Each step is done where the straight line between the two ends passes the middle between two needles, so the
 * cloth's edge is never more than half a needle off that line; half a gap lies before the first step and half a gap
 * after the last. Those two taken as one, the gaps are those of the trade's division rule: (steps - r) of q rows and
 * r of q + 1, with q = floor(rows / steps) and r = rows mod steps. Source: web tutorial "Knitting and the Magic
 * Formula"; machine-knitting blog, "Taking the magic out of the Magic Formula", 11 Aug 2008. The rule leaves open in
 * which order they come; here they come by turns, because that keeps nearest to the line.
 */
export const stepsDone = (rows: number, steps: number, row: number): number =>
  rows === 0 ? steps : Math.floor((2 * steps * row + rows) / (2 * rows));
