import { expect, it } from "vitest";
import { impliedUpperBounds } from "../../solver/implied-bounds.ts";

it("reads bounds off rows without negative coefficients, the least where there are several", () => {
  const bounds = impliedUpperBounds(4, [
    {
      name: "a",
      terms: [
        [0, 2],
        [1, 1],
      ],
      relation: "<=",
      bound: 6,
    },
    { name: "b", terms: [[0, 1]], relation: "=", bound: 2 },
    {
      name: "c",
      terms: [
        [2, 1],
        [3, -1],
      ],
      relation: "<=",
      bound: 1,
    },
    { name: "d", terms: [[3, 1]], relation: ">=", bound: 1 },
  ]);
  expect([...bounds]).toEqual([2, 6, Infinity, Infinity]);
});
