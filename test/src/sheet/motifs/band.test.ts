import { describe, expect, test } from "vitest";
import type { FittedPlacement, FittedSection } from "../../../../src/fit/fit.ts";
import type { BandMotif } from "../../../../src/motif/motif.ts";
import { bandActions } from "../../../../src/sheet/motifs/band.ts";
import { smallGarment, strip } from "../../../support/small-garment.ts";

/** A band of six stitches as the garment file tells it. */
const motif = smallGarment({
  pieces: { strip: strip(20, 10) },
  motifs: { waves: { kind: "band", stitches: 6, repeat: 4 } },
  place: [{ motif: "waves", on: "strip", from: "cast-on", to: "bind-off" }],
}).motifs[0] as BandMotif;

type Rows = { readonly repeatRows: number; readonly repeats: number; readonly leadRows?: number };

/** Sections of a band of so many rows a repeat, six stitches of it between the edge stitches. */
const sections = (
  rows: readonly Rows[],
  edge?: { readonly left: number; readonly right: number },
): readonly FittedSection[] =>
  rows.map(({ repeatRows, repeats, leadRows = 0 }) => ({
    repeats,
    joins: [],
    look: {
      motif,
      values: new Map(),
      segments: [],
      trace: {
        leadRows,
        repeatRows,
        reach: { left: 3, right: 3, ...(edge && { edge }) },
        strands: [],
        folded: [],
        cables: [],
        ladders: [],
      },
    },
  }));

const placed = (changes: Partial<FittedPlacement> & Pick<FittedPlacement, "sections">): FittedPlacement => ({
  index: 0,
  piece: "strip",
  motif: "waves",
  repeats: 2,
  columns: 2,
  gap: 0,
  change: 0,
  firstRow: 10,
  lastRow: 18,
  margins: { bottom: 0, top: 0, left: 0, right: 0 },
  panel: { centres: [-3, 3], mirrored: 0, leftEdge: -6, rightEdge: 6 },
  ...changes,
});

const whose = { motif: "waves", placement: 1, column: 1 };

describe("a band", () => {
  test("begins each of its repeats at its first row, and all needles knit plain where the last of them ends", () => {
    const pattern = {
      act: "pattern",
      from: -6,
      to: 6,
      repeats: 2,
      rows: 4,
      stitches: 6,
      across: 2,
      edge: { left: 0, right: 0 },
      ...whose,
    };
    expect(bandActions(placed({ sections: sections([{ repeatRows: 4, repeats: 2 }]) }), motif)).toEqual([
      [10, { ...pattern, repeat: 1 }],
      [14, { ...pattern, repeat: 2 }],
      [18, { act: "plain", from: -6, to: 6, ...whose }],
    ]);
  });

  test("begins behind its lead-in, and counts its repeats on where they become longer", () => {
    const grown = placed({
      index: 2,
      repeats: 3,
      firstRow: 1,
      lastRow: 19,
      sections: sections([
        { repeatRows: 4, repeats: 1, leadRows: 2 },
        { repeatRows: 6, repeats: 2 },
      ]),
    });
    const told = bandActions(grown, motif);
    expect(
      told.map(([row, action]) => [row, ...(action.act === "pattern" ? [action.repeat, action.rows] : [])]),
    ).toEqual([[3, 1, 4], [7, 2, 6], [13, 3, 6], [19]]);
    expect(told.map(([, action]) => "placement" in action && action.placement)).toEqual([3, 3, 3, 3]);
  });

  test("says how many rows there are of a repeat that is left unfinished, and knits plain only above it", () => {
    const cut = placed({
      sections: sections([{ repeatRows: 4, repeats: 2 }]),
      part: { lastRow: 21, rows: 3, columns: [] },
    });
    const [, , third, end] = bandActions(cut, motif);
    expect(third).toMatchObject([18, { act: "pattern", repeat: 3, repeats: 2, rows: 3, unfinished: true }]);
    expect(end).toMatchObject([21, { act: "plain" }]);
  });

  test("names its edge stitches", () => {
    const [first] = bandActions(
      placed({
        sections: sections([{ repeatRows: 4, repeats: 2 }], { left: 1, right: 2 }),
        panel: { centres: [-3, 3], mirrored: 0, leftEdge: -7, rightEdge: 8 },
      }),
      motif,
    );
    expect(first).toMatchObject([10, { from: -7, to: 8, stitches: 6, edge: { left: 1, right: 2 } }]);
    expect(first![1]).not.toHaveProperty("card");
  });
});

describe("the stitch of a card with which the first repeat begins", () => {
  const stitchAt = (leftEdge: number, card: number, edge = 0): number | undefined => {
    const [first] = bandActions(
      placed({
        sections: sections([{ repeatRows: 4, repeats: 2 }], { left: edge, right: 0 }),
        panel: { centres: [], mirrored: 0, leftEdge, rightEdge: leftEdge + 24 },
      }),
      { ...motif, card },
    );
    const action = first![1];
    if (action.act !== "pattern") return undefined;
    expect(action.card).toMatchObject({ row: 1, stitches: card });
    return action.card!.stitch;
  };

  test("is its first at half a card left of the centre, and one more for each needle to the right of there", () => {
    expect(stitchAt(-12, 24)).toBe(1);
    expect(stitchAt(-11, 24)).toBe(2);
    expect(stitchAt(0, 24)).toBe(13);
    expect(stitchAt(11, 24)).toBe(24);
  });

  test("comes again a whole card further on", () => {
    expect(stitchAt(12, 24)).toBe(1);
    expect(stitchAt(-13, 24)).toBe(24);
    expect(stitchAt(-36, 24)).toBe(1);
  });

  test("is counted from the first repeat and not from the edge stitches", () => {
    expect(stitchAt(-12, 24, 2)).toBe(3);
  });

  test("of a narrower card lies as much nearer to the centre", () => {
    expect(stitchAt(-6, 12)).toBe(1);
    expect(stitchAt(0, 12)).toBe(7);
    // Of an odd number the one more lies at the right.
    expect(stitchAt(-2, 5)).toBe(1);
    expect(stitchAt(2, 5)).toBe(5);
  });
});
