import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { buildSheet } from "../../../../src/sheet/build-sheet.ts";
import type { Content, DoLine, SheetDocument } from "../../../../src/sheet/document/document.ts";
import { documentOf } from "../../../../src/sheet/document/document-of.ts";
import { onlyPieces } from "../../../../src/sheet/only-pieces.ts";
import { fitOfPlain, fitOfText } from "../../draw/support/scenes.ts";
import { oddPieces, sheetOfOddNames, sheetOfSample } from "../support/garments.ts";

const doLines = ({ pieces }: SheetDocument): readonly DoLine[] =>
  pieces.flatMap(({ blocks }) => blocks.flatMap(({ lines }) => lines)).filter((line) => line.kind === "do");

const tableIn = (document: SheetDocument, caption: RegExp): readonly (readonly string[])[] => {
  const content = document.sections.flatMap((section) => [...section.content]);
  const found = content.find((one: Content) => one.kind === "table" && caption.test(one.caption));
  return found?.kind === "table" ? found.rows : [];
};

describe("the sections", () => {
  test("come in the order in which a knitter needs them", async () => {
    const { document } = await sheetOfSample("sleeve");
    expect(document.sections.map(({ title }) => title)).toEqual([
      "Check first",
      "Needles",
      "Make the cord before you cast on",
      "Yarn",
      "Caution",
    ]);
    expect(document.finish.title).toBe("Finish");
  });

  test("leave the cord and its cautions out where none is laid", async () => {
    const { document } = await sheetOfSample("cable-sleeve");
    const titles = document.sections.map(({ title }) => title);
    expect(titles).not.toContain("Make the cord before you cast on");
    expect(JSON.stringify(document.finish)).not.toContain("cord's ends");
  });
});

describe("the finished measurements", () => {
  test("are counted from the gauge, a quarter stitch in the swatch being the least that is told apart", async () => {
    // 44 and 68 stitches at 22 to 10 cm are 20.0 and 30.9 cm; 112 rows at 31 to 10 cm are 36.1 cm.
    // 0.25 / 22 of them are 0.227 and 0.351 cm, and 0.25 / 31 of the length is 0.291 cm, each rounded up.
    const { document } = await sheetOfSample("sleeve");
    expect(tableIn(document, /measurements/)).toEqual([
      ["sleeve", "20.0 cm ± 0.3", "30.9 cm ± 0.4", "36.1 cm ± 0.3"],
    ]);
  });

  test("take the gauge's own uncertainty where the file states it", async () => {
    // 39 stitches, counted as 38 or 40, at 15 to 10 cm; 2 % of 26.7 cm is 0.53 cm.
    const { document } = await sheetOfSample("scarf");
    expect(tableIn(document, /measurements/)[0]![1]).toBe("26.7 cm ± 0.6");
  });

  test("give no width to what a cable draws in", async () => {
    const plain = {
      format: "evenrow/1",
      title: "Panel",
      bed: { needles: 100 },
      gauge: { ground: { stitches: 20, rows: 30, over: "10 cm" } },
      pieces: {
        panel: {
          outline: [
            { height: "0 cm", width: "20 cm" },
            { height: "20 cm", width: "20 cm" },
          ],
        },
      },
      motifs: { rope: { like: "transferred cable", cross: [5, 5], interval: 12, "draw-in": "20 %" } },
      place: [{ motif: "rope", on: "panel", margins: { bottom: "0..20", top: 0, side: { least: 3 } } }],
    };
    const fit = await fitOfPlain(plain);
    // Ten stitches that lie as wide as eight: one needle more at each side, 42 in all, 21.0 cm before the cable
    // begins and 20.0 cm where it is worked.
    const [row] = tableIn(documentOf(fit, buildSheet(fit)), /measurements/);
    expect(row![1]).toMatch(/^21\.0 cm|^20\.0 cm/);
    expect(fit.placements[0]!.firstRow === 0 ? row![2] : row![1]).toMatch(
      fit.placements[0]!.firstRow === 0 ? /^20\.0/ : /^21\.0/,
    );
  });
});

test("the needles are told piece by piece, from the start to the widest", async () => {
  const { document } = await sheetOfSample("sleeve");
  expect(tableIn(document, /Needles/)).toEqual([
    ["sleeve", "44, L22 to R22", "68, L34 to R34", "112", "right"],
  ]);
});

describe("rows", () => {
  test("that are plain are folded up to the next at which something is done", async () => {
    const { document } = await sheetOfSample("sleeve");
    const { lines } = document.pieces[0]!.blocks[0]!;
    expect(lines.slice(0, 3)).toEqual([
      { kind: "do", row: 0, carriage: "right", phrases: ["cast on L22 to R22"], running: [] },
      { kind: "knit", rows: 5, toRow: 5, carriage: "left" },
      { kind: "do", row: 5, carriage: "left", phrases: ["increase 1 stitch at each side"], running: [] },
    ]);
  });

  test("are as many as the sheet has, each with all of its knitting before it", async () => {
    for (const { document, sheet } of [await sheetOfSample("front"), await sheetOfOddNames()]) {
      expect(doLines(document).map(({ row }) => row)).toEqual(
        sheet.pieces.flatMap(({ rows }) => rows.map(({ row }) => row)),
      );
      for (const { blocks } of document.pieces)
        for (const { lines } of blocks)
          for (const [index, line] of lines.entries())
            if (line.kind === "knit") expect(lines[index + 1]).toMatchObject({ kind: "do", row: line.toRow });
    }
  });

  test("name arm, count and needle of a hanging, in working order, and the repeat they lie in", async () => {
    const { document } = await sheetOfSample("sleeve");
    const at = (row: number) => doLines(document).find((line) => line.row === row)!;
    expect(at(27)).toMatchObject({
      phrases: ["left: count 3, hang both legs on L3", "right: count 3, hang both legs on R3"],
      running: ["lead-in, row 4 of 4"],
    });
    expect(at(23).running).toEqual(["start of the motif"]);
    expect(at(31).running).toEqual(["repeat 1 of 8, row 4 of 8"]);
    expect(at(35).running).toEqual(["repeat 1 of 8, row 8 of 8"]);
    expect(at(91).running).toEqual(["repeat 8 of 8, row 8 of 8"]);
    expect(at(5).running).toEqual([]);
  });

  test("of a pattern name its repeats alone, and its quantities only where it has some", async () => {
    const fit = await fitOfText(readFileSync("samples/motifs/band.yaml", "utf8"));
    const document = documentOf(fit, buildSheet(fit));
    expect(doLines(document).flatMap(({ running }) => running)).toEqual([]);
    expect(document.pieces[0]!.needles.facts.at(-1)).toEqual({
      name: "leaves",
      value: "3 repeats; rows 59 to 60 above the last whole repeat stay plain",
    });
  });

  test("have their shaping said above them as well", async () => {
    const { document } = await sheetOfSample("sleeve");
    expect(document.pieces[0]!.blocks[0]!.shaping).toEqual([
      "increase 1 at each side on row 5, then every 8th and 9th row by turns 11 times, to row 98",
    ]);
  });
});

test("above a neck each half is a block that says which it is, on which needles, and where the counter goes", async () => {
  const { document } = await sheetOfSample("front");
  const { blocks } = document.pieces[0]!;
  expect(blocks.map(({ part, title }) => [part, title])).toEqual([
    ["whole", "Up to the neck"],
    ["first half", "First half: the right one, R11 to R52"],
    ["second half", "Second half: the left one, L52 to L11"],
  ]);
  expect(blocks[1]!.before[0]!.text).toBe(
    "42 needles, R11 to R52; it starts at row 200 with the carriage at the right. The left half waits on hold, L52 to L11.",
  );
  expect(blocks[2]!.before[0]!.text).toBe(
    "42 needles, L52 to L11; it starts at row 200 with the carriage at the right. Set the row counter back to 200.",
  );
  expect(blocks[1]!.lines[0]).toMatchObject({ kind: "knit", rows: 1, toRow: 201 });
  expect(blocks[2]!.lines[0]).toMatchObject({ kind: "do", row: 200 });
});

test("a sheet of one piece is about that piece alone", async () => {
  const { fit } = await sheetOfOddNames();
  const [, back] = oddPieces;
  const alone = onlyPieces(fit, [back]);
  const document = documentOf(alone, buildSheet(alone));
  expect(document.pieces.map(({ piece }) => piece)).toEqual([back]);
  expect(tableIn(document, /measurements/).map(([name]) => name)).toEqual([back]);
  expect(document.sections.map(({ title }) => title)).not.toContain("Make the cord before you cast on");
});
