import type { ShapeDescription } from "../description.ts";
import { armhole, bodyMarks, bodyMeasurements, bodyOutline, bodyRules, neckFits } from "./body.ts";

export const bodyFront: ShapeDescription = {
  about: "the front of a sweater, with a drop shoulder or a set-in armhole",
  part: "front",
  choices: {
    armhole,
    neck: { means: "the neckline", words: ["crew", "V", "scoop", "square", "boat"] },
  },
  measurements: bodyMeasurements,
  rules: [...bodyRules, neckFits],
  outline: bodyOutline,
  marks: bodyMarks,
};
