import { beforeAll, describe, expect, test } from "vitest";
import type { Fit, FittedPlacement } from "../../../../src/fit/fit.ts";
import { buildSheet } from "../../../../src/sheet/build-sheet.ts";
import type { PieceSection } from "../../../../src/sheet/document/document.ts";
import { pieceSection } from "../../../../src/sheet/document/piece.ts";
import { band, cable, laid, plait, smallGarment, strip } from "../../../support/small-garment.ts";
import { fitOf } from "../support/small-fits.ts";

let fit: Fit;
beforeAll(async () => {
  fit = await fitOf(
    smallGarment({
      pieces: { front: strip(40, 14), back: strip(20, 11), cuff: strip(10, 5, { make: 2 }) },
      motifs: { plait: plait(4, 3), rope: cable(4), dots: band(2, 4) },
      place: [
        laid("plait", "front", { top: "0..9" }, { columns: 2, gap: 2, repeats: 1 }),
        laid(
          "dots",
          "back",
          {},
          { margins: { bottom: 0, top: "0..9", left: 2, right: "10..20" }, repeats: 2 },
        ),
        laid(
          "rope",
          "back",
          {},
          { margins: { bottom: 1, top: "0..9", left: "10..20", right: 2 }, repeats: 2 },
        ),
        laid("dots", "cuff", { top: "0..9" }, { repeats: 1, unfinished: "part" }),
      ],
    }),
  );
});

const sectionOf = (name: string, of: Fit = fit): PieceSection =>
  pieceSection(of, buildSheet(of).pieces.find(({ piece }) => piece === name)!);

const facts = (name: string, of: Fit = fit): readonly (readonly [name: string, value: string])[] =>
  sectionOf(name, of).needles.facts.map(({ name, value }) => [name, value]);

describe("what is said of a piece before its rows", () => {
  test("is its needles, its rows, and each motif with what was chosen for it", () => {
    expect(facts("front")).toEqual([
      ["Needles", "40, L20 to R20"],
      ["Rows", "14"],
      // Its counts: four cord stitches over the lead-in, six over a crossing.
      [
        "plait",
        "interval 4, spread 3, lead-in count 4 and crossing count 6; 1 repeat; rows 13 to 14 above the last whole repeat stay plain",
      ],
    ]);
    expect(facts("back")).toEqual([
      ["Needles", "20, L10 to R10"],
      ["Rows", "11"],
      ["dots", "2 repeats; rows 9 to 11 above the last whole repeat stay plain"],
      ["rope", "interval 4 and offset 0; 2 repeats; rows 10 to 11 above the last whole repeat stay plain"],
    ]);
  });

  test("is how many are made, where that is not one", () => {
    expect(facts("cuff")).toEqual([
      ["Make", "2 alike"],
      ["Needles", "10, L5 to R5"],
      ["Rows", "5"],
      ["dots", "1 repeat; is left unfinished: 1 row of repeat 2, to row 5"],
    ]);
  });

  test("is which columns are mirrored", () => {
    const [placement] = fit.placements;
    const mirrored = { ...placement!, panel: { ...placement!.panel, mirrored: 1 } };
    expect(facts("front", { ...fit, placements: [mirrored] }).at(-1)![1]).toMatch(
      /; 1 repeat; column 2 mirrored; rows 13 to 14 above/,
    );
  });

  test("is what changes on the way, section by section", () => {
    const placement = fit.placements[2]!;
    const [section] = placement.sections;
    const later = { ...section!, repeats: 1, look: { ...section!.look, values: new Map([["interval", 6]]) } };
    const grown = { ...placement, sections: [{ ...section!, repeats: 1 }, later] };
    expect(facts("back", { ...fit, placements: [grown] }).at(-1)![1]).toMatch(
      /^interval 4 and offset 0; 1 repeat; then interval 6; 1 repeat; rows 10/,
    );
  });
});

test("a piece has its own name, how it is begun and its rows in blocks", () => {
  const { piece, castOn, blocks, needles } = sectionOf("back");
  expect(piece).toBe("back");
  expect(needles.kind).toBe("facts");
  expect(castOn.map(({ text }) => text)).toEqual([expect.stringContaining("carriage at the right")]);
  expect(blocks).toHaveLength(1);
});

test("a column is named on the rows of a motif that has several, and where motifs are in their repeats", () => {
  const done = (name: string, row: number): readonly string[] =>
    sectionOf(name).blocks[0]!.lines.flatMap((line) =>
      line.kind === "do" && line.row === row ? [...line.phrases, ...line.running] : [],
    );
  expect(done("front", 4)).toEqual([
    "column 1, left: count 4, hang both legs on L7",
    "column 1, right: count 4, hang both legs on L2",
    "column 2, left: count 4, hang both legs on R2",
    "column 2, right: count 4, hang both legs on R7",
    "lead-in, row 4 of 4",
  ]);
  expect(done("back", 5).at(-1)).toBe("rope: repeat 1 of 2, row 4 of 4");
});

const phrasesAt = (row: number, { blocks }: PieceSection): readonly string[] =>
  blocks[0]!.lines.flatMap((line) => (line.kind === "do" && line.row === row ? line.phrases : []));

describe("columns are named by the motif", () => {
  const single = (): FittedPlacement => {
    const [one] = fit.placements;
    return { ...one!, columns: 1, panel: { ...one!.panel, centres: [-15] } };
  };

  test("that has several, and not where another has", () => {
    const dots = { ...fit.placements[1]!, piece: "front", columns: 4 };
    const beside = { ...fit, placements: [single(), dots] };
    expect(phrasesAt(4, sectionOf("front", beside)).slice(0, 2)).toEqual([
      "left: count 4, hang both legs on L18",
      "right: count 4, hang both legs on L13",
    ]);
  });

  test("wherever it lies on the piece, if it has several at one of the places", () => {
    const twice = { ...fit, placements: [single(), { ...fit.placements[0]!, index: 1 }] };
    const starts = phrasesAt(4, sectionOf("front", twice)).map((phrase) => phrase.split(",")[0]);
    expect(starts).toEqual(["column 1", "column 1", "column 1", "column 1", "column 2", "column 2"]);
  });
});
