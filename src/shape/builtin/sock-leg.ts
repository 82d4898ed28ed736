import type { ShapeDescription } from "../description.ts";

/** Knitted flat from the top down and seamed at the back; the tables have neither calf nor ankle. */
export const sockLeg: ShapeDescription = {
  about: "the leg of a sock, from its top down to the ankle",
  part: "other",
  measurements: {
    calf: { means: "round the leg at the sock's top" },
    ankle: { means: "round the ankle" },
    ease: {
      means: "added to calf and ankle",
      otherwise: {
        sum: "0 - ankle / 10",
        because:
          "a sock is about a tenth of the ankle smaller than the leg, so that it stays up; common practice, no published source",
      },
      from: "below nothing",
    },
    top: { means: "width at the top", otherwise: "calf + ease" },
    bottom: { means: "width at the ankle", otherwise: "ankle + ease" },
    length: { means: "from the top down to the ankle" },
    rib: { means: "height of the rib at the top", otherwise: "length / 5", from: "nothing" },
    straight: {
      means: "height that is knitted straight at the ankle",
      otherwise: "length / 6",
      from: "nothing",
    },
  },
  rules: [
    {
      less: "rib",
      than: "length - straight",
      trouble: "nothing is left between the rib and the straight rows at the ankle",
      right: "less rib, less straight, or a greater length",
      blame: ["rib", "straight", "length"],
    },
  ],
  outline: [
    { height: "0", width: "top" },
    { height: "rib", width: "top" },
    { height: "length - straight", width: "bottom" },
    { height: "length", width: "bottom" },
  ],
  marks: { "rib top": "rib", ankle: "length - straight" },
};
