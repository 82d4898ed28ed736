import type { Stitch } from "../cloth/gauge.ts";

/** How far across (0 to 1) and how far up (0 to 1) a curve has come at `t` (0 to 1). */
type Bend = (t: number) => { readonly across: number; readonly up: number };

const quarter = Math.PI / 2;

/** Quarters of an ellipse; `scoop` is level at first, `crown` at its end. */
const scoop: Bend = (t) => ({ across: Math.sin(quarter * t), up: 1 - Math.cos(quarter * t) });
const crown: Bend = (t) => ({ across: 1 - Math.cos(quarter * t), up: Math.sin(quarter * t) });

/**
 * The curves by name. An armhole is a `scoop`: it goes inward first and then straight up. A sleeve's cap is a `bell`: a
 * scoop half of the way and a `crown`, which goes up first and then inward, the other half. A hat's crown is a `dome`:
 * round a half ball, the way round is as the cosine of how far up its surface one is, so that two like halves that are
 * joined at their sides stand as a half ball.
 */
export const CURVES = {
  scoop,
  dome: (t: number) => ({ across: 1 - Math.cos(quarter * t), up: t }),
  bell: (t: number) => {
    const half = t < 0.5 ? scoop(2 * t) : crown(2 * t - 1);
    const done = t < 0.5 ? 0 : 0.5;
    return { across: done + half.across / 2, up: done + half.up / 2 };
  },
} as const satisfies Readonly<Record<string, Bend>>;

export type CurveName = keyof typeof CURVES;

/**
 * A curve is drawn by straight lines that lie less than a quarter of a stitch from it. A little is kept back, because the
 * distance is seen at the middle of each line, which is not always where it is greatest.
 */
const FARTHEST_STITCHES = 0.23;

/** More lines than these are never needed: a quarter of an ellipse 1000 stitches wide takes 50. */
const MOST_LINES = 512;

/**
 * How many lines a curve is drawn by, so that they lie nowhere a quarter of a stitch or more from it, measured in
 * stitch widths across and stitch heights up.
 *
 * @param acrossMm how far the curve goes across, of either sign
 * @param upMm how far it goes up
 */
export function linesOf(name: CurveName, acrossMm: number, upMm: number, stitch: Stitch): number {
  const [stitches, rows] = [acrossMm / stitch.widthMm, upMm / stitch.heightMm];
  let lines = 2;
  while (lines < MOST_LINES && farthest(CURVES[name], lines, stitches, rows) >= FARTHEST_STITCHES) lines *= 2;
  return lines;
}

/** The greatest distance, in stitches, of the curve from its lines, seen at the middle of each. */
function farthest(bend: Bend, lines: number, stitches: number, rows: number): number {
  const at = (t: number): readonly [number, number] => {
    const { across, up } = bend(t);
    return [across * stitches, up * rows];
  };
  let most = 0;
  for (let index = 0; index < lines; index++) {
    const [ax, ay] = at(index / lines);
    const [bx, by] = at((index + 1) / lines);
    const [mx, my] = at((index + 0.5) / lines);
    const length = Math.hypot(bx - ax, by - ay);
    if (length > 0) most = Math.max(most, Math.abs((bx - ax) * (my - ay) - (by - ay) * (mx - ax)) / length);
  }
  return most;
}
