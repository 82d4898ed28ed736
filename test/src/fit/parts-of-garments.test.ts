import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { checkFit } from "../../../src/fit/check.ts";
import type { Fit } from "../../../src/fit/fit.ts";
import { partWords } from "../../../src/report/part-words.ts";
import { knit } from "../../support/bed-simulator.ts";
import { fitHere, garmentOf, soundGarment } from "../../support/run-garment.ts";
import { sheetPiecesOf } from "../../support/sheet-of.ts";

async function fitted(garment: ReturnType<typeof garmentOf>): Promise<Fit> {
  const result = await fitHere(garment, { rivals: 0 });
  if (result.status !== "fits") throw new Error("it has to fit");
  expect(checkFit(garment, result.fit, result.fit.cost)).toEqual([]);
  const sheetPieces = sheetPiecesOf(result.fit);
  // A growing motif counts anew in each section, so like stretches need not be counted alike.
  const countsAt = (_: number, row: number): string => `row ${row}`;
  for (const piece of sheetPieces) expect(knit(piece, { countsAt }).violations).toEqual([]);
  return result.fit;
}

const plait = (piece: object, place: readonly object[], more: object = {}): ReturnType<typeof garmentOf> =>
  garmentOf({
    format: "evenrow/1",
    bed: { needles: 150 },
    // 2 stitches and 3 rows in 1 cm, so that heights and widths are counted by hand.
    gauge: {
      ground: { stitches: 20, rows: 30, over: "10 cm" },
      cord: { needles: 3, stitches: 18, over: "10 cm" },
    },
    pieces: { panel: piece },
    motifs: {
      plait: { like: "crossed cord", interval: 4, spread: 3, ease: { from: "-30 %", to: "40 %" } },
    },
    place: place.map((one) => ({ motif: "plait", on: "panel", unfinished: "part", ...one })),
    ...more,
  });

const straight = [
  { height: "0 cm", width: "16 cm" },
  { height: "20 cm", width: "16 cm" },
];

describe("a part", () => {
  test.each([
    // Of 60 rows the lead-in of 4 and 6 repeats of 8 take 52; both strands are hung next at rows 56 and 60.
    ["ends with the field", {}, { left: 2, right: 2 }, 60],
    ["leaves the rows that the top margin asks for", { top: "1..20" }, { left: 1, right: 1 }, 56],
    ["is nothing where no hanging has room", { top: "5..20" }, undefined, undefined],
  ])("%s", async (_, margins, columns, lastRow) => {
    const place = { repeats: 6, margins: { bottom: 0, ...margins } };
    const { placements } = await fitted(plait({ outline: straight }, [place]));
    expect(placements[0]!.lastRow).toBe(52);
    expect(placements[0]!.margins.top).toBe(8);
    expect(placements[0]!.part?.columns[0]).toEqual(columns);
    expect(placements[0]!.part?.lastRow).toBe(lastRow);
  });

  test("ends below a neck that opens across its way", async () => {
    const neck = [
      { height: "18 cm", width: "4 cm" },
      { height: "20 cm", width: "6 cm" },
    ];
    const place = { from: "cast-on", to: "bind-off", repeats: 6, margins: { bottom: 0 } };
    // The neck opens at row 54, and the strands cross between rows 52 and 56.
    const { placements } = await fitted(plait({ outline: straight, neck }, [place]));
    expect(placements[0]!.part).toBeUndefined();
  });

  test("keeps clear of a motif that begins where its field ends", async () => {
    const piece = {
      outline: [straight[0]!, { height: "40 cm", width: "16 cm" }],
      marks: { middle: "20 cm" },
    };
    const low = { to: "middle", repeats: 6, margins: { bottom: 0 } };
    const high = { from: "middle", repeats: 6, margins: { bottom: 0 } };
    const { placements } = await fitted(plait(piece, [low, high]));
    expect(placements[1]!.firstRow).toBe(60);
    expect(placements[0]!.part).toMatchObject({ columns: [{ left: 1, right: 1 }], lastRow: 56, rows: 4 });
  });

  test("of a growing motif goes on with the look of its last section", async () => {
    const text = readFileSync("samples/growing-sleeve.yaml", "utf8");
    const fit = await fitted(
      soundGarment(text.replace("    margins:", "    unfinished: part\n    margins:")),
    );
    const { part, lastRow, margins, sections } = fit.placements[0]!;
    expect(sections.length).toBeGreaterThan(1);
    const interval = sections.at(-1)!.look.values.get("interval")!;
    const most = Math.min(2, Math.floor(margins.top / interval));
    expect(part?.lastRow ?? lastRow).toBe(lastRow + most * interval);
  });
});

test("the words say where it ends, and which rows stay plain", async () => {
  const words = async (more: object): Promise<string | undefined> =>
    partWords(
      (await fitted(plait({ outline: straight }, [{ repeats: 6, margins: { bottom: 0 }, ...more }])))
        .placements[0]!,
    );
  expect(await words({ margins: { bottom: 0, top: "1..20" } })).toBe(
    "is left unfinished: 2 hangings of repeat 7, to row 56",
  );
  expect(await words({})).toBe("goes on with 4 hangings of repeat 7, to row 60");
  expect(await words({ unfinished: "plain" })).toBe("rows 53 to 60 above the last whole repeat stay plain");
  expect(await words({ unfinished: "plain", margins: { bottom: 7 } })).toBe(
    "row 60 above the last whole repeat stays plain",
  );
});
