import type { NeckDescription } from "../description.ts";

/**
 * All stitches evenly over the whole depth; it starts from 1 in above to 2 in below the armhole ("The ins & outs of
 * necklines", 2014), so level with it where nothing else is said. A piece has an even number of stitches about its
 * centre, so no single stitch stands at the point.
 */
export const vNeck: NeckDescription = {
  about: "a neck that runs straight from a point to the shoulders",
  depth: "armhole_depth",
  centre: "0",
  steps: [{ evenly: "all that is left" }],
};
