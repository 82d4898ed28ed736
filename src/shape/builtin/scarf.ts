import type { ShapeDescription } from "../description.ts";

/** Its sizes are our own. */
export const scarf: ShapeDescription = {
  about: "a strip of one width",
  part: "other",
  measurements: {
    width: { means: "width of the scarf", otherwise: "200" },
    length: { means: "length of the scarf", otherwise: "1500" },
    border: { means: "height of the border at each end", otherwise: "width / 5", from: "nothing" },
  },
  rules: [
    {
      less: "2 * border",
      than: "length",
      trouble: "the two borders take up the whole length",
      right: "a smaller border, or a greater length",
      blame: ["border", "length"],
    },
  ],
  outline: [
    { height: "0", width: "width" },
    { height: "length", width: "width" },
  ],
  marks: { "border top": "border", "border start": "length - border" },
};
