import type { ShapeDescription } from "../description.ts";
import { sleeveMeasurements, tapered, taperMeasurements, taperRules } from "./sleeve.ts";

/**
 * A cap for the set-in armhole of `body front` and `body back`: as much is bound off at each underarm as there, then the
 * edge goes in as a bell, and a fifth of the width is left for the top. The cap is as high as makes its edge as long
 * as the armhole's. Common practice, no published source. The length of a quarter of an ellipse of half axes a and b
 * is taken as a + b - 0.8584 * a * b / (a + b), exact for a circle and a line and within 1 % between them.
 */
export const setInSleeve: ShapeDescription = {
  about: "a sleeve with a cap for a set-in armhole",
  part: "sleeve",
  measurements: {
    ...sleeveMeasurements,
    ...taperMeasurements,
    chest: { means: "round the chest or bust, the body's own" },
    "cross back": { means: "across the back, from shoulder to shoulder" },
    "armhole depth": { means: "from the underarm up to the shoulder" },
    "body width": { means: "width of the front below the armhole", otherwise: "(chest + fit) / 2" },
    "armhole bind-off": {
      means: "bound off at each underarm, as on the front",
      otherwise: "max(0, body_width - cross_back) / 6",
      from: "nothing",
    },
    "armhole inset": {
      means: "how far the armhole curves in above its bind-off",
      otherwise: "max(0, body_width - cross_back) / 2 - armhole_bind_off",
      from: "nothing",
    },
    "armhole edge": {
      means: "length of the armhole's edge on the front, from the underarm to the shoulder",
      otherwise:
        "armhole_bind_off + armhole_inset + armhole_depth - 0.8584 * armhole_inset * armhole_depth / 3 / (armhole_inset + armhole_depth / 3)",
    },
    "cap top": { means: "width of the cap at its top", otherwise: "sleeve_width / 5" },
    "cap inset": {
      means: "how far the cap curves in above its bind-off",
      otherwise: "(sleeve_width - cap_top) / 2 - armhole_bind_off",
    },
    "cap edge": {
      means: "length of the cap's edge, from the underarm to the middle of the top",
      otherwise:
        "armhole_bind_off + cap_inset + cap_height - 0.8584 * cap_inset * cap_height / (cap_inset + cap_height) + cap_top / 2",
    },
    "cap height": {
      means: "from the underarm up to the top of the cap",
      otherwise: {
        make: "cap edge",
        equal: "armhole edge",
        from: "armhole_depth / 4",
        to: "armhole_depth",
        because: "as high as makes its edge as long as the armhole's; common practice, no published source",
        trouble: "no cap that is lower than the armhole is deep has an edge as long as the armhole's",
        right: "a sleeve width that goes with the armhole, or a cap height of your own",
        blame: ["armhole edge", "sleeve width", "ease", "upper arm", "armhole depth"],
      },
    },
  },
  rules: [
    ...taperRules,
    {
      less: "2 * armhole_bind_off + cap_top",
      than: "sleeve_width",
      trouble: "what is bound off and the top of the cap take up the whole width of the sleeve",
      right: "a narrower cap top, less bound off, or a wider sleeve",
      blame: ["cap top", "armhole bind-off", "sleeve width"],
    },
  ],
  outline: [
    ...tapered,
    { height: "length", width: "sleeve_width - 2 * armhole_bind_off" },
    { height: "length + cap_height", width: "cap_top", curve: "bell" },
  ],
  marks: { "rib top": "rib", underarm: "length" },
};
