import type { ShapeDescription } from "../description.ts";
import { raglanBodyMeasurements, raglanMarks, raglanOutline, raglanRules } from "./raglan.ts";

export const raglanBack: ShapeDescription = {
  about: "the back of a raglan sweater, straight across at the neck",
  part: "back",
  measurements: raglanBodyMeasurements,
  rules: raglanRules,
  outline: raglanOutline("neck_width"),
  marks: raglanMarks,
};
