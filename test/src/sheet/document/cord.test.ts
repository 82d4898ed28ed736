import { describe, expect, test } from "vitest";
import type { Fit } from "../../../../src/fit/fit.ts";
import { cordSection } from "../../../../src/sheet/document/cord.ts";
import type { CordEntry, PieceEntry, PlacementEntry } from "../../../support/garment-file.ts";
import { band, laid, plait, smallGarment, strip } from "../../../support/small-garment.ts";
import { bare, fitOf, plainGarment } from "../support/small-fits.ts";

const laidOn = (
  motif: CordEntry | ReturnType<typeof plait>,
  rows: number,
  more: Partial<PlacementEntry> = {},
  piece: Partial<PieceEntry> = {},
): Promise<Fit> =>
  fitOf(
    smallGarment({
      pieces: { strip: strip(40, rows, piece) },
      motifs: { cord: motif },
      place: [laid("cord", "strip", {}, more)],
    }),
  );

/** What is told of each cord, behind what holds for all of them: a sentence and its numbers. */
const cords = (fit: Fit): readonly unknown[] =>
  cordSection(fit)!
    .content.slice(2)
    .map((one) =>
      one.kind === "paragraph"
        ? one.text
        : one.kind === "facts" && one.facts.map(({ name, value }) => `${name}: ${value}`),
    );

const middle =
  " Mark its middle with a thread of another colour: it is hung from there. The right arm is the one that ends with the last round you knitted, so that it can be unravelled.";

test("no cord, no section; a band beside a cord takes none", async () => {
  expect(cordSection(bare(plainGarment()))).toBeUndefined();
  const fit = await fitOf(
    smallGarment({
      pieces: { strip: strip(20, 12), cuff: strip(20, 4) },
      motifs: { cord: plait(4, 3), dots: band(2, 4) },
      place: [laid("dots", "cuff"), laid("cord", "strip")],
    }),
  );
  expect(cords(fit)).toHaveLength(2);
});

test("how a cord is made, and which side it lies on, is told before any of them", async () => {
  const section = cordSection(await laidOn(plait(4, 3), 12))!;
  expect(section.title).toBe("Make the cord before you cast on");
  expect(section.content.slice(0, 2)).toEqual([
    {
      kind: "paragraph",
      text: "Knit the cord at the ground's tension, one way knitting and one way slipping: two passes make one cord stitch. Too long is unravelled, too short spoils the piece: where in doubt make more; about six times the length it decorates is usual for a crossed cord.",
    },
    {
      kind: "paragraph",
      text: "The purl side faces you and is the right side: the cord lies on it, and the other side stays plain with a slight print at each hanging. In every row hang the strands in the order of the sheet, or the crossings lie unevenly.",
    },
  ]);
});

test("a folded cord is one cord with its middle marked, and its numbers are rounded up", async () => {
  // Each arm: one stitch hung at the middle, 4 over the lead-in, twice 6 over the crossings, 17; both arms 34. With
  // 15 % more 39.1, so 40 to make: 80 passes, 200 mm. A thread after every 10th stitch, none at the very end: 3.
  expect(cords(await laidOn(plait(4, 3), 12))).toEqual([
    `cord on strip: one cord.${middle}`,
    [
      "Needles: 3",
      "Used: 34 cord stitches",
      "Reserve: 6 cord stitches",
      "Make: 40 cord stitches = 80 passes, about 20 cm",
      "Tails: 20 cm of yarn left at each end",
      "Markers: lay in a thread of another colour after every 10th cord stitch, 3 threads: 10 from each to the next, 10 after the last",
    ],
  ]);
});

test("a piece that is made several times takes the same cords for each", async () => {
  expect(cords(await laidOn(plait(4, 3), 12, {}, { make: 2 }))[0]).toBe(
    `cord on strip: one cord, and the same for each of the 2 to be made.${middle}`,
  );
});

/** Straight up, five rows of 4 mm and four cord stitches of 5 mm each time, on these needles by name. */
const straight = (needles: Readonly<Record<string, number>>): CordEntry => ({
  kind: "cord",
  quantities: {},
  lead: 0,
  repeat: 5,
  strands: Object.fromEntries(
    Object.entries(needles).map(([name, needle]) => [name, { start: [needle, 0], repeat: [[needle, 5]] }]),
  ),
});

describe("cords that are not folded", () => {
  test("have no middle, and of a short one no markers are asked for", async () => {
    // One stitch hung at the start and 4 up the repeat: 5; 15 % more are 5.75, so 6.
    expect(cords(await laidOn(straight({ a: 1 }), 5))).toEqual([
      "cord on strip: one cord.",
      [
        "Needles: 3",
        "Used: 5 cord stitches",
        "Reserve: 1 cord stitch",
        "Make: 6 cord stitches = 12 passes, about 3 cm",
        "Tails: 20 cm of yarn left at each end",
      ],
    ]);
  });

  test("of several strands are told strand by strand", async () => {
    const told = cords(await laidOn(straight({ a: -2, b: 2 }), 5)).filter((one) => typeof one === "string");
    expect(told).toEqual(["cord on strip (a): one cord.", "cord on strip (b): one cord."]);
  });

  test("are marked once where they are hardly longer than from one thread to the next", async () => {
    // Two repeats: 9 used, 10.35 with the reserve, so 11: one thread after the 10th, one stitch after it.
    expect(cords(await laidOn(straight({ a: 1 }), 10))[1]).toEqual([
      "Needles: 3",
      "Used: 9 cord stitches",
      "Reserve: 2 cord stitches",
      "Make: 11 cord stitches = 22 passes, about 5.5 cm",
      "Tails: 20 cm of yarn left at each end",
      "Markers: lay in a thread of another colour after the 10th cord stitch: 10 before it, 1 after it",
    ]);
  });
});

describe("columns", () => {
  test("that take the same cord are told together", async () => {
    expect(cords(await laidOn(plait(4, 3), 12, { columns: 3, gap: 2 }))[0]).toBe(
      `cord on strip: 3 cords alike, each of them so.${middle}`,
    );
  });

  test("that take different cords are told apart", async () => {
    const fit = await laidOn(straight({ a: -2, b: 2 }), 10, { columns: 3, gap: 2, repeats: 2 });
    const [placement] = fit.placements;
    // One repeat more of what each strand does, in some of the columns.
    const part = {
      lastRow: 15,
      rows: 5,
      columns: [
        { a: 1, b: 1 },
        { a: 1, b: 0 },
        { a: 0, b: 0 },
      ],
    };
    const told = cords({ ...fit, placements: [{ ...placement!, part }] }).filter(
      (one) => typeof one === "string",
    );
    expect(told).toEqual([
      "cord on strip (a; columns 1 and 2): 2 cords alike, each of them so.",
      "cord on strip (a; column 3): one cord.",
      "cord on strip (b; column 1): one cord.",
      "cord on strip (b; columns 2 and 3): 2 cords alike, each of them so.",
    ]);
  });

  test("of one strand are named without it", async () => {
    const fit = await laidOn(straight({ a: 1 }), 10, { columns: 2, gap: 2 });
    const [placement] = fit.placements;
    const part = { lastRow: 15, rows: 5, columns: [{ a: 1 }, { a: 0 }] };
    const told = cords({ ...fit, placements: [{ ...placement!, part }] }).filter(
      (one) => typeof one === "string",
    );
    expect(told).toEqual(["cord on strip (column 1): one cord.", "cord on strip (column 2): one cord."]);
  });
});
