import type { ShapeDescription } from "../description.ts";

export const bagPanel: ShapeDescription = {
  about: "one side of a bag, its lower corners rounded",
  part: "other",
  measurements: {
    width: { means: "width of the bag" },
    height: { means: "from the bottom to the top edge" },
    corner: { means: "how far each lower corner is rounded", otherwise: "width / 8", from: "nothing" },
    hem: { means: "height of the hem at the top", otherwise: "height / 10", from: "nothing" },
  },
  rules: [
    {
      less: "2 * corner",
      than: "width",
      trouble: "the two rounded corners take up the whole width",
      right: "a smaller corner, or a wider bag",
      blame: ["corner", "width"],
    },
    {
      less: "corner",
      than: "height - hem",
      orSame: true,
      trouble: "the rounded corners reach into the hem",
      right: "a smaller corner, less hem, or a higher bag",
      blame: ["corner", "hem", "height"],
    },
  ],
  outline: [
    { height: "0", width: "width - 2 * corner" },
    { height: "corner", width: "width", curve: "scoop" },
    { height: "height", width: "width" },
  ],
  marks: { "corner top": "corner", "hem start": "height - hem" },
};
