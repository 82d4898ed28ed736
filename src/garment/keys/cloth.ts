import type { Section } from "./section.ts";

/** The bed, the swatch, the yarns and what is on hand of them, and who will wear the garment. */
export const clothKeys = {
  bed: {
    where: "the bed",
    keys: {
      needles: { means: "needles on the bed, both sides together", form: "a whole number" },
      pitch: { means: "from one needle to the next", form: "a length", otherwise: "not known" },
      carriage: {
        means: "where the carriage rests before the first row",
        form: "left or right",
        otherwise: "right",
      },
    },
  },
  gauge: {
    where: "the gauge",
    keys: {
      ground: { means: "the plain cloth", form: "keys" },
      cord: { means: "the cord", form: "keys", otherwise: "not known, and then no cord can be laid" },
    },
  },
  "ground gauge": {
    where: "the ground's gauge",
    keys: {
      stitches: { means: "stitches counted", form: "a number" },
      rows: { means: "rows counted", form: "a number" },
      over: { means: "what they were counted over", form: "a length" },
      "rows over": {
        means: "what the rows were counted over, where that is another length",
        form: "a length",
        otherwise: "the same as over",
      },
      within: {
        means: "how far off the gauge may be",
        form: "a percentage, or { stitches: 0.9 %, rows: 0.7 % }",
        otherwise: "a quarter stitch or row of the count",
      },
    },
  },
  within: {
    where: "how far the ground's gauge may be off",
    keys: {
      stitches: {
        means: "how far off the stitches may be",
        form: "a percentage",
        otherwise: "a quarter stitch of the count",
      },
      rows: {
        means: "how far off the rows may be",
        form: "a percentage",
        otherwise: "a quarter row of the count",
      },
    },
  },
  "cord gauge": {
    where: "the cord's gauge",
    keys: {
      needles: { means: "needles the cord is knitted on", form: "a whole number, usually 3 to 5" },
      stitches: { means: "cord stitches counted", form: "a number" },
      over: { means: "what they were counted over", form: "a length" },
      within: {
        means: "how far off the gauge may be",
        form: "a percentage",
        otherwise: "a quarter cord stitch of the count",
      },
      thickness: {
        means: "how thick the cord is, where one strand climbs over another",
        form: "a length",
        otherwise: "not counted",
      },
    },
  },
  yarns: {
    where: "the yarn",
    keys: {
      ground: { means: "the yarn of the plain cloth", form: "keys", otherwise: "not known" },
      cord: { means: "the yarn of the cord", form: "keys", otherwise: "not known" },
    },
  },
  yarn: {
    where: "a yarn",
    keys: {
      tex: { means: "grams of 1000 m", form: "a number", otherwise: "not known; then swatch" },
      swatch: { means: "a swatch that was weighed", form: "keys", otherwise: "not known; then tex" },
    },
  },
  "ground swatch": {
    where: "the ground's weighed swatch",
    keys: {
      stitches: { means: "stitches of the whole swatch", form: "a whole number" },
      rows: { means: "rows of the whole swatch", form: "a whole number" },
      weight: { means: "what it weighs, tails and waste yarn cut off", form: "a weight: g, kg or oz" },
    },
  },
  "cord swatch": {
    where: "the cord's weighed swatch",
    keys: {
      stitches: { means: "cord stitches of the whole piece of cord", form: "a whole number" },
      weight: { means: "what it weighs, tails cut off", form: "a weight: g, kg or oz" },
    },
  },
  "on hand": {
    where: "what is on hand",
    keys: {
      cord: { means: "finished cord", form: "a length", otherwise: "as much as it takes" },
      "cord yarn": {
        means: "yarn for the cord, its tails included",
        form: "a weight, a length, or { balls: 2, each: 50 g }",
        otherwise: "as much as it takes",
      },
      "ground yarn": {
        means: "yarn for the plain cloth, waste included",
        form: "a weight, a length, or { balls: 6, each: 50 g }",
        otherwise: "as much as it takes",
      },
      yarn: {
        means: "one yarn for both cloth and cord, in place of the two",
        form: "a weight, a length, or { balls: 8, each: 50 g }",
        otherwise: "as much as it takes",
      },
      prefer: {
        means: "that as little as can be is left over",
        form: "least waste",
        otherwise: "no preference",
      },
    },
  },
  balls: {
    where: "balls of yarn",
    keys: {
      balls: { means: "how many there are", form: "a number, such as 6 or 5.5" },
      each: {
        means: "what one of them is",
        form: "a weight, a length, or what its label says: { weight: 50 g, length: 135 m }",
      },
    },
  },
  ball: {
    where: "the label of a ball",
    keys: {
      weight: { means: "what one ball weighs", form: "a weight: g, kg or oz" },
      length: { means: "how long its yarn is", form: "a length" },
    },
  },
  wearer: {
    where: "the wearer",
    keys: {
      age: { means: "age in years", form: "5, 5 years or 18 months", otherwise: "not known" },
      height: { means: "height of the body", form: "a length", otherwise: "not known" },
    },
  },
} as const satisfies Readonly<Record<string, Section>>;
