import { describe, expect, test } from "vitest";
import type { Fit } from "../../../../src/fit/fit.ts";
import { checkFirstSection } from "../../../../src/sheet/document/check-first.ts";
import { bare, plainGarment } from "../support/small-fits.ts";

const swatch =
  "Measure a swatch that is washed and rested as the garment will be. Where it differs by more than the gauge's own uncertainty, put your gauge into the file and print this sheet again.";

const facts = (fit: Fit): readonly object[] => {
  const [first] = checkFirstSection(fit).content;
  return first?.kind === "facts" ? first.facts : [];
};

/** What is said in whole sentences. */
const told = (fit: Fit): readonly string[] =>
  checkFirstSection(fit).content.flatMap((one) => (one.kind === "paragraph" ? [one.text] : []));

test("the gauge comes first, then what the pieces measure by it, and last what to do about it", () => {
  const section = checkFirstSection(bare(plainGarment()));
  expect(section.title).toBe("Check first");
  expect(section.content.map(({ kind }) => kind)).toEqual(["facts", "table", "paragraph"]);
  expect(section.content[1]).toMatchObject({ caption: expect.stringContaining("Finished measurements") });
  expect(told(bare(plainGarment()))).toEqual([swatch]);
});

test("the cord's gauge is told where there is one, with how it was measured", () => {
  const ground = { name: "Ground", value: "20 stitches and 25 rows over 10 cm" };
  expect(facts(bare(plainGarment()))).toEqual([
    ground,
    {
      name: "Cord",
      value: "20 cord stitches over 10 cm, knitted on 3 needles, measured in the middle of a piece of cord",
    },
  ]);
  const gauge = { ground: { stitches: 20, rows: 25, over: "10 cm" } };
  expect(facts(bare(plainGarment({ gauge })))).toEqual([ground]);
  const single = { ...gauge, cord: { needles: 4, stitches: 1, over: "5 mm" } };
  expect(facts(bare(plainGarment({ gauge: single })))[1]).toMatchObject({
    value: expect.stringMatching(/^1 cord stitch over 0.5 cm, knitted on 4 needles, /),
  });
});

describe("an edge that the bed can follow only from far off", () => {
  /** Forty needles, and fewer in the last three rows of forty: several stitches at once wait for the carriage. */
  const narrowing = (widthMm: number): Fit =>
    bare(
      plainGarment({
        pieces: {
          strip: {
            outline: [
              { height: "0 mm", width: "200 mm" },
              { height: "148 mm", width: "200 mm" },
              { height: "160 mm", width: `${widthMm} mm` },
            ],
          },
        },
      }),
    );
  // To 60 mm it goes 70 mm at each side in 12 mm of height. At row 38 the left edge is still 100 mm from the centre, and
  // the outline, half a row lower, 88.3 mm. At row 39 the right edge is at 75 mm, and the outline at 65 mm.
  const left =
    "Knitted edge beside the outline: strip, left edge: at most 11.7 mm to the left of the outline, 15.2 cm up (row 38): several stitches wait for the carriage";

  test("is told where it leaves its outline by more than two stitches' width", () => {
    expect(told(narrowing(60))).toEqual([`${left}.`, swatch]);
    // To 100 mm the left edge leaves it by 8.3 mm and the right one by 10 mm, which are two stitches and no more.
    expect(told(narrowing(100))).toEqual([swatch]);
  });

  test("is told as well where it lies within its outline", () => {
    const widening = bare(
      plainGarment({
        pieces: {
          strip: {
            outline: [
              { height: "0 mm", width: "200 mm" },
              { height: "16 mm", width: "200 mm" },
              { height: "24 mm", width: "400 mm" },
              { height: "60 mm", width: "400 mm" },
            ],
          },
        },
      }),
    );
    expect(told(widening).map((text) => text.slice(0, 92))).toEqual([
      "Knitted edge beside the outline: strip, left edge: at most 25.0 mm to the right of the outli",
      "Knitted edge beside the outline: strip, right edge: at most 25.0 mm to the left of the outli",
      swatch.slice(0, 92),
    ]);
  });

  test("was measured before the piece was lengthened or shortened, and that is said", () => {
    const fit = narrowing(60);
    const [piece] = fit.pieces;
    const { left: atLeft, right: atRight } = piece!;
    const longer = { ...piece!, rows: 42, left: [...atLeft, 6, 6], right: [...atRight, 6, 6] };
    const other = { ...piece!, name: "other" };
    expect(told({ ...fit, pieces: [other, longer] })).toEqual([
      `${left}, before it became 42 rows long.`,
      swatch,
    ]);
  });

  test("of a piece that is not on the sheet is left out", () => {
    const { content } = checkFirstSection({ ...narrowing(60), pieces: [] });
    expect(content.map((one) => (one.kind === "paragraph" ? one.text : one.kind))).toEqual([
      "facts",
      "table",
      swatch,
    ]);
  });
});
