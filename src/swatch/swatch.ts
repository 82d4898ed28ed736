/** A number of stitches or rows, and the length in mm over which they were counted. */
export interface Counted {
  readonly count: number;
  readonly mm: number;
}

export type Swatch = GroundSwatch | CordSample;

/** One measuring of a swatch of the ground; the same swatch measured again after washing is another one. */
export interface GroundSwatch {
  readonly of: "ground";
  readonly washed: boolean;
  readonly stitches: Counted;
  readonly rows: Counted;
}

/** One measuring of a length of cord, in its middle. */
export interface CordSample {
  readonly of: "cord";
  readonly washed: boolean;
  /** Needles the cord was knitted on, where that was said. */
  readonly needles?: number;
  readonly stitches: Counted;
}
