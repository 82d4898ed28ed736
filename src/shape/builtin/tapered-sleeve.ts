import type { ShapeDescription } from "../description.ts";
import { sleeveMeasurements, tapered, taperMeasurements, taperRules } from "./sleeve.ts";

export const taperedSleeve: ShapeDescription = {
  about: "a sleeve that widens from the cuff and is joined straight, as to a drop shoulder",
  part: "sleeve",
  measurements: { ...sleeveMeasurements, ...taperMeasurements },
  rules: taperRules,
  outline: tapered,
  marks: { "rib top": "rib", underarm: "length - straight" },
};
