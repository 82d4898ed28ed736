import type { Measurement, ShapeRule, ShapeStation } from "../description.ts";

/** What the pieces of a raglan have in common. Common practice, no published source, where no other is named. */

export const raglanMeasurements = {
  "cross back": { means: "across the back, from shoulder to shoulder" },
  "armhole depth": { means: "from the underarm up to the shoulder" },
  "raglan depth": {
    means: "from the underarm straight up to the neck",
    otherwise: {
      sum: "armhole_depth + 25",
      because: "the armhole depth and 2.5 cm; common practice, no published source",
    },
  },
  // About a third of the back's width: a knitting handbook.
  "neck width": { means: "width of the neck", otherwise: "cross_back / 3" },
} as const satisfies Readonly<Record<string, Measurement>>;

export const raglanBodyMeasurements = {
  chest: { means: "round the chest or bust, the body's own" },
  ease: { means: "added to the chest", otherwise: "fit", from: "below nothing", orFit: true },
  width: { means: "width of the piece below the armhole", otherwise: "(chest + ease) / 2" },
  length: {
    means: "from the cast-on edge to the neck",
    otherwise: [
      "back_hip_length",
      {
        sum: "4 / 3 * back_waist_length",
        because: "a third of the back waist length below the waist; common practice, no published source",
      },
    ],
  },
  "back waist length": { means: "from the neck down to the waist" },
  "back hip length": { means: "from the neck down to the hips" },
  ...raglanMeasurements,
  "underarm bind-off": { means: "bound off at each underarm", otherwise: "width / 20", from: "nothing" },
  rib: { means: "height of the rib or hem", otherwise: "length / 10", from: "nothing" },
} as const satisfies Readonly<Record<string, Measurement>>;

export const raglanMarks = { "rib top": "rib", underarm: "length - raglan_depth" } as const;

export const raglanRules: readonly ShapeRule[] = [
  {
    less: "rib",
    than: "length - raglan_depth",
    orSame: true,
    trouble: "the raglan begins below the top of the rib",
    right: "a greater length, less rib or a smaller raglan depth",
    blame: ["raglan depth", "length", "rib", "armhole depth"],
  },
  {
    less: "neck_width + 4 * stitch",
    than: "width - 2 * underarm_bind_off",
    orSame: true,
    trouble: "the neck is as wide as the piece above its underarm",
    right: "a smaller neck width, or a wider piece",
    blame: ["neck width", "width", "cross back", "ease"],
  },
];

/** Straight to the underarm, where stitches are bound off, then evenly in to the top. */
export const raglanOutline = (top: string): readonly ShapeStation[] => [
  { height: "0", width: "width" },
  { height: "length - raglan_depth", width: "width" },
  { height: "length - raglan_depth", width: "width - 2 * underarm_bind_off" },
  { height: "length", width: top },
];
