import type { BodyPart } from "../garment/garment.ts";
import type { CurveName } from "./curve.ts";

/**
 * A shape as data: what is measured, and how the outline, the marks and the rules that must hold come of it. Every
 * height and width is a sum in the project's arithmetic, worked out in mm. A sum may use the shape's measurements
 * (a name of several words is joined by `_`: `upper_arm`), `fit` (the ease of a named fit, 0 where none is named),
 * and `stitch` and `row`, the width and height of one stitch of the ground.
 */
export interface ShapeDescription {
  /** What the piece is, in one line. */
  readonly about: string;
  /** Where on the body it lies. */
  readonly part: BodyPart;
  /**
   * Words that the knitter chooses among, by key; the first is taken where none is chosen. The words of `neck` are
   * names of necklines, and a shape that has them has a measurement `neck width`.
   */
  readonly choices?: Readonly<Record<string, Choice>>;
  readonly measurements: Readonly<Record<string, Measurement>>;
  readonly rules?: readonly ShapeRule[];
  /** From the cast-on edge upward; the first station stands at height 0. */
  readonly outline: Chosen<readonly ShapeStation[]>;
  /** Named heights. */
  readonly marks: Readonly<Record<string, string>>;
}

export interface Choice {
  readonly means: string;
  readonly words: readonly [string, ...string[]];
}

/** One thing, or another for each word of a choice. */
export type Chosen<Kind> = Kind | ByChoice<Kind>;

export interface ByChoice<Kind> {
  readonly by: string;
  readonly when: Readonly<Record<string, Kind>>;
  /** For the words that are not listed. */
  readonly else?: Kind;
}

/**
 * A length that may be written under its name. Where it is not, it comes from the size if the tables have a body
 * measurement of that name, else from `otherwise`; and where there is none of these it must be written.
 */
export interface Measurement {
  readonly means: string;
  readonly otherwise?: Chosen<Otherwise>;
  /** The least that it may be: more than nothing (a length, as most are), nothing, or less than nothing (an ease). */
  readonly from?: "nothing" | "below nothing";
  /** The name of a fit, such as standard, may be written in place of a length. */
  readonly orFit?: true;
}

/** One sum, or several of which the first is taken whose measurements are known. */
type Otherwise = Sum | readonly Sum[];

/** A sum; one that stands on an assumption, which the knitter is told of; or a length that is sought. */
export type Sum = string | { readonly sum: string; readonly because: string } | Search;

/**
 * The length, from one sum to another, with which `make` comes out as `equal`. `make` is a measurement that hangs on
 * the one sought and grows with it.
 */
export interface Search {
  readonly make: string;
  readonly equal: string;
  readonly from: string;
  readonly to: string;
  readonly because: string;
  /** What is wrong where no such length is found, and what would put it right. */
  readonly trouble: string;
  readonly right: string;
  readonly blame: readonly string[];
}

/** The outline at one height; `curve` is the way to it from the station before, a straight line where none is named. */
export type ShapeStation =
  | { readonly height: string; readonly width: string; readonly curve?: CurveName }
  | { readonly height: string; readonly left: string; readonly right: string; readonly curve?: CurveName };

/** One length must be less than another (or the same, with `orSame`), or the shape can't be made. */
export interface ShapeRule {
  readonly less: string;
  readonly than: string;
  readonly orSame?: true;
  /** The choices under which it must hold; always, where none are named. */
  readonly when?: Readonly<Record<string, string>>;
  /** What is wrong where it does not hold, without the lengths, which are told beside it. */
  readonly trouble: string;
  /** What would put it right. */
  readonly right: string;
  /** Measurements that may be to blame, the likeliest first: the mistake is shown where the first of them is written. */
  readonly blame: readonly string[];
}

/** A neckline as data: the stitches cast off at the centre, then what is taken off each side, upward. */
export interface NeckDescription {
  readonly about: string;
  /** How deep it is where the file does not say; a sum over the shape's measurements. */
  readonly depth: Sum;
  /** Stitches cast off at the centre, an even number: a sum over `stitches`, those of the whole opening, and `stitch`. */
  readonly centre: string;
  /**
   * What is then taken off each side. Its sums may also use `rest`, the stitches of one side after the centre, and
   * `left`, those that are still to be taken off when the step begins.
   */
  readonly steps: readonly NeckStep[];
}

export type NeckStep =
  /** `take` stitches at once, so many times, each `every` rows after the last. */
  | { readonly take: string; readonly times: string; readonly every: number }
  /** All that is left, spread evenly over the rows up to the shoulder. */
  | { readonly evenly: "all that is left" };
