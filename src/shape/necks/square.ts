import type { NeckDescription } from "../description.ts";

/**
 * All at once, 5 to 8 in deep ("The ins & outs of necklines", 2014). 15 cm, but no deeper than the armhole: common
 * practice, no published source.
 */
export const squareNeck: NeckDescription = {
  about: "a neck with straight sides",
  depth: "min(150, armhole_depth)",
  centre: "stitches",
  steps: [],
};
