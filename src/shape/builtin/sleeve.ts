import type { Measurement } from "../description.ts";

/** What sleeves have in common. Common practice, no published source, where no other is named. */

export const sleeveMeasurements = {
  "upper arm": { means: "round the upper arm, the body's own" },
  ease: {
    means: "added to the upper arm",
    otherwise: {
      sum: "fit / 2",
      because: "half of the fit's, which is meant for the chest; common practice, no published source",
    },
    from: "below nothing",
    orFit: true,
  },
  "sleeve width": { means: "width of the sleeve at its widest", otherwise: "upper_arm + ease" },
  "arm length to underarm": { means: "from the wrist up to the underarm" },
  length: { means: "from the cast-on edge to the underarm", otherwise: "arm_length_to_underarm" },
  rib: { means: "height of the cuff's rib", otherwise: "length / 8", from: "nothing" },
} as const satisfies Readonly<Record<string, Measurement>>;

/** What a sleeve that widens upward has as well. */
export const taperMeasurements = {
  cuff: {
    means: "width of the sleeve at the cuff",
    otherwise: {
      sum: "3 / 5 * upper_arm + ease / 2",
      because:
        "the tables have no wrist, so it is taken as 3/5 of the upper arm, with half the ease; an assumption, no published source",
    },
  },
  straight: {
    means: "height that is knitted straight below the underarm",
    otherwise: "length / 12",
    from: "nothing",
  },
} as const satisfies Readonly<Record<string, Measurement>>;

export const taperRules = [
  {
    less: "rib",
    than: "length - straight",
    trouble: "nothing is left between the rib and the straight rows below the underarm",
    right: "less rib, less straight, or a greater length",
    blame: ["rib", "straight", "length"],
  },
] as const;

/** From the cuff to the underarm, widening from the cast-on edge on. */
export const tapered = [
  { height: "0", width: "cuff" },
  { height: "length - straight", width: "sleeve_width" },
  { height: "length", width: "sleeve_width" },
] as const;
