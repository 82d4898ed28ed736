import type { NeckDescription } from "../description.ts";

/**
 * Half of what remains after the centre every other row, the rest every 4th, over a depth of more than 5 in ("The
 * ins & outs of necklines", 2014). Two fifths at the centre, of its 40 to 55 %. 14 cm, but no deeper than the armhole:
 * common practice, no published source.
 */
export const scoopNeck: NeckDescription = {
  about: "a deep round neck",
  depth: "min(140, armhole_depth)",
  centre: "2 * round(stitches / 5)",
  steps: [
    { take: "1", times: "ceil(rest / 2)", every: 2 },
    { take: "1", times: "left", every: 4 },
  ],
};
