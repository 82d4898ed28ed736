import type { NeckDescription } from "../description.ts";

/**
 * All but about 1 in cast off at the centre ("The ins & outs of necklines", 2014): half an inch is left at each side,
 * and goes every other row. 2.5 cm deep: common practice, no published source.
 */
export const boatNeck: NeckDescription = {
  about: "a wide, shallow neck from shoulder to shoulder",
  depth: "25",
  centre: "stitches - 2 * round(12.7 / stitch)",
  steps: [
    { take: "2", times: "floor(left / 3)", every: 2 },
    { take: "1", times: "left", every: 2 },
  ],
};
