import type { Choice, Measurement, ShapeRule, ShapeStation } from "../description.ts";

/** What a front and a back have in common. Common practice, no published source, where no other is named. */

export const armhole: Choice = {
  means:
    "drop: the piece goes up straight; set-in: stitches are bound off and the edge curves in to the shoulders",
  words: ["drop", "set-in"],
};

export const bodyMeasurements = {
  chest: { means: "round the chest or bust, the body's own" },
  ease: { means: "added to the chest", otherwise: "fit", from: "below nothing", orFit: true },
  width: { means: "width of the piece below the armhole", otherwise: "(chest + ease) / 2" },
  length: {
    means: "from the cast-on edge to the shoulders",
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
  "armhole depth": { means: "from the underarm up to the shoulder" },
  "cross back": { means: "across the back, from shoulder to shoulder" },
  shoulders: {
    means: "width of the piece at the shoulders",
    otherwise: { by: "armhole", when: { drop: "width", "set-in": "cross_back" } },
  },
  "armhole bind-off": {
    means: "bound off at each underarm of a set-in armhole",
    otherwise: "(width - shoulders) / 6",
    from: "nothing",
  },
  "neck width": {
    means: "width of the neck",
    // About a third of the back's width: a knitting handbook. A boat neck's half: common practice.
    otherwise: { by: "neck", when: { boat: "shoulders / 2" }, else: "shoulders / 3" },
  },
  rib: { means: "height of the rib or hem", otherwise: "length / 10", from: "nothing" },
} as const satisfies Readonly<Record<string, Measurement>>;

export const bodyMarks = {
  "rib top": "rib",
  underarm: "length - armhole_depth",
  shoulder: "length",
} as const;

export const bodyRules: readonly ShapeRule[] = [
  {
    less: "armhole_depth",
    than: "length",
    trouble: "the armhole is as deep as the piece is long",
    right: "a greater length or a smaller armhole depth",
    blame: ["armhole depth", "length"],
  },
  {
    less: "rib",
    than: "length - armhole_depth",
    orSame: true,
    trouble: "the rib reaches above the underarm",
    right: "less rib, or a greater length",
    blame: ["rib", "length", "armhole depth"],
  },
  {
    when: { armhole: "set-in" },
    less: "shoulders",
    than: "width",
    orSame: true,
    trouble: "the shoulders are wider than the piece is below the armhole",
    right: "a smaller cross back, or more ease",
    blame: ["shoulders", "cross back", "ease", "width"],
  },
  {
    when: { armhole: "set-in" },
    less: "2 * armhole_bind_off",
    than: "width - shoulders",
    orSame: true,
    trouble: "more is bound off for the armholes than lies between the piece's width and its shoulders",
    right: "a smaller armhole bind-off",
    blame: ["armhole bind-off", "shoulders"],
  },
];

export const neckFits: ShapeRule = {
  less: "neck_width + 4 * stitch",
  than: "shoulders",
  orSame: true,
  trouble: "the neck leaves fewer than two stitches of shoulder at each side",
  right: "a smaller neck width, or wider shoulders",
  blame: ["neck width", "shoulders", "width"],
};

const straight: readonly ShapeStation[] = [
  { height: "0", width: "width" },
  { height: "length", width: "shoulders" },
];

/** A sixth of what goes is bound off, the rest curves in over the lower third of the armhole. */
const curvedIn: readonly ShapeStation[] = [
  { height: "0", width: "width" },
  { height: "length - armhole_depth", width: "width" },
  { height: "length - armhole_depth", width: "width - 2 * armhole_bind_off" },
  { height: "length - 2 / 3 * armhole_depth", width: "shoulders", curve: "scoop" },
  { height: "length", width: "shoulders" },
];

export const bodyOutline = { by: "armhole", when: { drop: straight, "set-in": curvedIn } } as const;
