import type { ShapeDescription } from "../description.ts";
import { armhole, bodyMarks, bodyMeasurements, bodyOutline, bodyRules, neckFits } from "./body.ts";

export const bodyBack: ShapeDescription = {
  about: "the back of a sweater, with a drop shoulder or a set-in armhole",
  part: "back",
  choices: { armhole, neck: { means: "the neckline", words: ["back", "boat"] } },
  measurements: bodyMeasurements,
  rules: [...bodyRules, neckFits],
  outline: bodyOutline,
  marks: bodyMarks,
};
