/** A place on a drawing, in mm: x to the right, y upward. */
export type Point = readonly [xMm: number, yMm: number];

/** One line of a drawing, its curves already broken into straight pieces. */
export interface Contour {
  readonly points: readonly Point[];
  /** Whether the drawing itself leads it back to its start. */
  readonly closed: boolean;
}

/** One outline that a drawing offers, under the names by which a garment may ask for it. */
export interface DrawnShape {
  readonly name: string;
  /** The size it is drawn in, where the drawing says so. */
  readonly size?: string;
  readonly contours: readonly Contour[];
  /** Places that the drawing marks on the outline's edge (notches). */
  readonly notches: readonly Point[];
  /** What was left out or taken as something else, one sentence each. */
  readonly remarks: readonly string[];
  /** Why it cannot be an outline at all. */
  readonly refusal?: string;
}

/** A drawing as read: plain data in mm, whatever the kind of file. */
export interface Drawing {
  readonly shapes: readonly DrawnShape[];
  /** What holds for the whole drawing, such as a unit that had to be taken for granted. */
  readonly remarks: readonly string[];
}

/** The two kinds of drawing, by the key that names the file. */
export type DrawingKind = "svg" | "dxf";

/** Gives a drawing that a garment names, as it was read beforehand. */
export type DrawingSource = (file: string, kind: DrawingKind) => Drawing | DrawingProblem;

/** Why a drawing cannot be read. */
export interface DrawingProblem {
  readonly problem: string;
  /** What would be right. */
  readonly expected?: string;
}

export const isProblem = (read: Drawing | DrawingProblem): read is DrawingProblem => "problem" in read;

/**
 * How far a curve may lie from the straight pieces it is broken into, in mm: a quarter of the finest stitch that a
 * garment may have is 0.125 mm, so that simplifying the outline to the garment's own stitch has room as well.
 */
export const FLATTENING_TOLERANCE_MM = 0.05;

/** Beyond this a coordinate is a slip or a trap: 100 m. */
export const FARTHEST_MM = 100_000;

/** More points than any drawn outline has once its curves are broken up. */
export const MOST_POINTS = 20_000;

/** More points than a whole pattern has, every piece in every size. */
const MOST_POINTS_IN_ALL = 200_000;

/** Makes shapes one after the other, until the drawing has more points than any pattern; the others are refused. */
export function withinBudget<Source>(
  sources: readonly Source[],
  shapeOf: (source: Source) => DrawnShape,
  nameOf: (source: Source) => string,
): DrawnShape[] {
  let points = 0;
  return sources.map((source) => {
    if (points > MOST_POINTS_IN_ALL)
      return refusedShape(nameOf(source), `the drawing has more than ${MOST_POINTS_IN_ALL} points in all`);
    const shape = shapeOf(source);
    points += shape.contours.reduce((sum, contour) => sum + contour.points.length, 0);
    return shape;
  });
}

export const refusedShape = (name: string, refusal: string): DrawnShape => ({
  name,
  contours: [],
  notches: [],
  remarks: [],
  refusal,
});

/** The largest drawing that is read, in bytes; pattern files hold every size of a style. */
export const LARGEST_DRAWING_BYTES = 2_000_000;
