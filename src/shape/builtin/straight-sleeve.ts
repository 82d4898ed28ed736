import type { ShapeDescription } from "../description.ts";
import { sleeveMeasurements } from "./sleeve.ts";

export const straightSleeve: ShapeDescription = {
  about: "a sleeve of one width",
  part: "sleeve",
  measurements: sleeveMeasurements,
  rules: [
    {
      less: "rib",
      than: "length",
      trouble: "the rib is as high as the sleeve",
      right: "less rib, or a greater length",
      blame: ["rib", "length"],
    },
  ],
  outline: [
    { height: "0", width: "sleeve_width" },
    { height: "length", width: "sleeve_width" },
  ],
  marks: { "rib top": "rib", underarm: "length" },
};
