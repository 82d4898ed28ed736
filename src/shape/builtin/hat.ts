import type { ShapeDescription } from "../description.ts";

/** One of two like halves, seamed at both sides. Common practice, no published source; the tables have no head. */
export const hat: ShapeDescription = {
  about: "one half of a hat, with a round crown",
  part: "other",
  measurements: {
    head: { means: "round the head above the ears" },
    ease: {
      means: "added to the head",
      otherwise: {
        sum: "0 - head / 12",
        because:
          "a hat is about a twelfth smaller than the head, so that it stays on; common practice, no published source",
      },
      from: "below nothing",
    },
    width: { means: "width of one half", otherwise: "(head + ease) / 2" },
    height: {
      means: "from the cast-on edge to the top of the crown",
      otherwise: {
        sum: "2 / 5 * head",
        because: "two fifths of the head; common practice, no published source",
      },
    },
    crown: { means: "height of the crown", otherwise: "height * 2 / 5" },
    "crown top": { means: "width that is bound off or gathered at the top", otherwise: "width / 4" },
    rib: { means: "height of the rib", otherwise: "height / 5", from: "nothing" },
  },
  rules: [
    {
      less: "rib + crown",
      than: "height",
      orSame: true,
      trouble: "rib and crown together are higher than the hat",
      right: "less rib or crown, or a greater height",
      blame: ["crown", "rib", "height"],
    },
    {
      less: "crown_top",
      than: "width",
      orSame: true,
      trouble: "the crown is wider at its top than below",
      right: "a smaller crown top",
      blame: ["crown top", "width"],
    },
  ],
  outline: [
    { height: "0", width: "width" },
    { height: "height - crown", width: "width" },
    { height: "height", width: "crown_top", curve: "dome" },
  ],
  marks: { "rib top": "rib", "crown start": "height - crown" },
};
