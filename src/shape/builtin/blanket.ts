import type { ShapeDescription } from "../description.ts";

/** Knitted in panels that are joined, since few beds are as wide as a blanket. Its sizes are our own, a baby's. */
export const blanket: ShapeDescription = {
  about: "a blanket, or one of the panels that it is joined from",
  part: "other",
  measurements: {
    width: { means: "width of the blanket", otherwise: "700" },
    length: { means: "length of the blanket", otherwise: "900" },
    panel: { means: "width of one panel, the whole where it is not joined", otherwise: "width" },
    border: { means: "height of the border at each end", otherwise: "length / 18", from: "nothing" },
  },
  rules: [
    {
      less: "2 * border",
      than: "length",
      trouble: "the two borders take up the whole length",
      right: "a smaller border, or a greater length",
      blame: ["border", "length"],
    },
    {
      less: "panel",
      than: "width",
      orSame: true,
      trouble: "one panel is wider than the blanket",
      right: "a panel no wider than the blanket",
      blame: ["panel", "width"],
    },
  ],
  outline: [
    { height: "0", width: "panel" },
    { height: "length", width: "panel" },
  ],
  marks: { "border top": "border", "border start": "length - border" },
};
