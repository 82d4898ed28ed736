import { describe, expect, test } from "vitest";
import { footingKey, footingOf } from "../../../src/fit/footing.ts";
import type { CableTrace } from "../../../src/motif/trace.ts";
import { footing, trace } from "./support/plain-parts.ts";

const point = { needle: 0, row: 0, rank: 0 };
const cable = (left: number, right: number): CableTrace => ({
  name: `${left} over ${right}`,
  left,
  right,
  start: point,
  leadIn: [],
  repeat: [],
});

test("a look stands on the rows and the reach of its trace, and on what all of its cables cross", () => {
  // Two cables side by side, 3 over 2 and 1 over 4: 3 + 2 + 1 + 4 stitches change places.
  expect(footingOf(trace({ cables: [cable(3, 2), cable(1, 4)] }))).toEqual({
    leadRows: 4,
    repeatRows: 8,
    reach: { left: 3, right: 3 },
    crossedStitches: 10,
  });
  expect(footingOf(trace()).crossedStitches).toBe(0);
});

describe("the text of a footing", () => {
  test("names its rows, its reach and what it crosses, and no edge where there is none", () => {
    expect(footingKey(footing({ reach: { left: 3, right: 5 }, crossedStitches: 6 }))).toBe("4+8n 3|5 x6");
  });

  test("names edge stitches, and what tells looks apart that lie alike", () => {
    const reach = { left: 6, right: 6, edge: { left: 1, right: 2 } };
    expect(footingKey(footing({ reach, goingOn: " (12 cord stitches)" }))).toBe(
      "4+8n 6|6 edge 1|2 x0 (12 cord stitches)",
    );
  });

  test("differs wherever a layout could lie otherwise", () => {
    const different = [
      footing(),
      footing({ leadRows: 5 }),
      footing({ repeatRows: 9 }),
      footing({ reach: { left: 4, right: 3 } }),
      footing({ reach: { left: 3, right: 4 } }),
      footing({ reach: { left: 3, right: 3, edge: { left: 0, right: 1 } } }),
      footing({ reach: { left: 3, right: 3, edge: { left: 1, right: 0 } } }),
      footing({ crossedStitches: 4 }),
      footing({ goingOn: " a" }),
    ].map(footingKey);
    expect(new Set(different).size).toBe(different.length);
  });
});
