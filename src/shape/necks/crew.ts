import type { NeckDescription } from "../description.ts";

/**
 * About a third of the stitches cast off at the centre, the rest every other row in falling steps; 32 stitches are
 * 12 at the centre, then 3, 2, 2, 1, 1, 1 at each side (a knitting handbook's own example). Two fifths go to the
 * centre: that is 12 of 32, and lies in the 40 to 55 % of another page ("The ins & outs of necklines", 2014), whose
 * depth for it is 3 to 3.5 in. On a narrow neck no deeper than 0.6 of the width: common practice, no published source.
 */
export const crewNeck: NeckDescription = {
  about: "a round neck close to the throat",
  depth: "min(82.5, 0.6 * neck_width)",
  centre: "2 * round(stitches / 5)",
  steps: [
    { take: "3", times: "floor(rest / 10)", every: 2 },
    { take: "2", times: "floor(2 * left / 7)", every: 2 },
    { take: "1", times: "left", every: 2 },
  ],
};
