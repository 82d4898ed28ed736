import type { ShapeDescription } from "../description.ts";
import { raglanBodyMeasurements, raglanMarks, raglanOutline, raglanRules } from "./raglan.ts";

/** Two stitches are left at each side of the neck, so that both halves can be knitted up to the end. */
export const raglanFront: ShapeDescription = {
  about: "the front of a raglan sweater",
  part: "front",
  choices: { neck: { means: "the neckline", words: ["crew", "V"] } },
  measurements: raglanBodyMeasurements,
  rules: raglanRules,
  outline: raglanOutline("neck_width + 4 * stitch"),
  marks: raglanMarks,
};
