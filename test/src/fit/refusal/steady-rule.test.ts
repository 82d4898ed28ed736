import { describe, expect, test } from "vitest";
import { steadyRules } from "../../../../src/fit/refusal/steady-rule.ts";
import { band, laid, smallGarment, strip } from "../../../support/small-garment.ts";

const steadied = (steady?: string) =>
  smallGarment({
    gauge: { ground: { stitches: 20, rows: 25, over: "10 cm", within: "2 %" } },
    ...(steady !== undefined && { steady }),
    pieces: { cuff: strip(20, 24) },
    motifs: { waves: band(4, 6) },
    place: [laid("waves", "cuff")],
  });

describe("that a fit is steady", () => {
  test("is no rule where the file does not ask for it", () => {
    expect(steadyRules(steadied())).toEqual([]);
  });

  test.each([
    ["100 %", "2 %"],
    ["50 %", "1 %"],
  ])("asked for over %s of 2 %%, names gauges within %s", (share, within) => {
    expect(steadyRules(steadied(share))).toMatchObject([
      {
        rule: "steady",
        path: ["steady"],
        words: `ease and length hold for every gauge within ${within}`,
      },
    ]);
  });

  test("is lifted alone", () => {
    const [rule] = steadyRules(steadied("50 %"));
    expect(rule!.lift(steadied("50 %"))).toStrictEqual(steadied());
  });
});
