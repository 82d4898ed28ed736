import type { NeckDescription } from "../description.ts";

/**
 * 32 stitches are 20 at the centre, then 4 and 2 at each side (a knitting handbook's own example, whose last number
 * is blurred; 2 makes up the 32), over 1/2 to 1 1/4 in: 22 mm is the middle.
 */
export const backNeck: NeckDescription = {
  about: "the shallow neck of a back",
  depth: "22",
  centre: "2 * round(5 * stitches / 16)",
  steps: [
    { take: "ceil(2 * rest / 3)", times: "1", every: 2 },
    { take: "left", times: "1", every: 2 },
  ],
};
