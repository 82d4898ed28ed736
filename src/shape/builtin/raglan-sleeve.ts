import type { ShapeDescription } from "../description.ts";
import { raglanMeasurements } from "./raglan.ts";
import { sleeveMeasurements, tapered, taperMeasurements, taperRules } from "./sleeve.ts";

/** Common practice, no published source: as much bound off as on the front, a quarter of the neck's width at the top. */
export const raglanSleeve: ShapeDescription = {
  about: "the sleeve of a raglan sweater",
  part: "sleeve",
  measurements: {
    ...sleeveMeasurements,
    ...taperMeasurements,
    ...raglanMeasurements,
    chest: { means: "round the chest or bust, the body's own" },
    "underarm bind-off": {
      means: "bound off at each underarm, as on the front",
      otherwise: "(chest + fit) / 40",
      from: "nothing",
    },
    "sleeve top": { means: "width of the sleeve at the neck", otherwise: "neck_width / 4" },
  },
  rules: [
    ...taperRules,
    {
      less: "2 * underarm_bind_off + sleeve_top",
      than: "sleeve_width",
      trouble: "what is bound off at the underarms leaves less than the sleeve's top",
      right: "a smaller underarm bind-off or sleeve top, or a wider sleeve",
      blame: ["underarm bind-off", "sleeve top", "sleeve width", "ease"],
    },
  ],
  outline: [
    ...tapered,
    { height: "length", width: "sleeve_width - 2 * underarm_bind_off" },
    { height: "length + raglan_depth", width: "sleeve_top" },
  ],
  marks: { "rib top": "rib", underarm: "length" },
};
