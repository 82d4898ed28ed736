import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { Fit } from "../../../../src/fit/fit.ts";
import { warningsFor } from "../../../../src/safety/warnings.ts";
import { buildSheet } from "../../../../src/sheet/build-sheet.ts";
import { phrasesOf } from "../../../../src/sheet/document/phrases.ts";
import { sheetText } from "../../../../src/sheet/text/sheet-text.ts";
import { garmentText } from "../../../support/garment-text.ts";
import { fitHere, soundGarment } from "../../../support/run-garment.ts";

async function fitOf(text: string): Promise<Fit> {
  const result = await fitHere(soundGarment(text), { rivals: 0 });
  if (result.status !== "fits") throw new Error("nothing fits");
  return result.fit;
}

const sample = (name: string): Promise<Fit> => fitOf(readFileSync(`samples/motifs/${name}.yaml`, "utf8"));

/** Every phrase of the only piece, with its row. */
const phrases = (fit: Fit): string[] =>
  buildSheet(fit).pieces[0]!.rows.flatMap(({ row, do: actions }) =>
    phrasesOf(actions, () => 1).map((phrase) => `${row}: ${phrase}`),
  );

describe("the sheet says", () => {
  test("which needle goes out of work, where its stitch goes, and when it comes back", async () => {
    const said = phrases(await sample("mirrored-cables"));
    expect(said).toContain("7: put the stitch of L7 onto L8 and take L7 out of work: it leaves a ladder");
    expect(said).toContain("7: put the stitch of R2 onto R1 and take R2 out of work: it leaves a ladder");
    expect(said).toContain(
      "49: bring R7 back to work and lift the loop below the stitch of R8 onto it, so that no hole is left",
    );
    expect(said.findIndex((one) => one.includes("out of work"))).toBeLessThan(
      said.findIndex((one) => one.includes("cross 2 over 2")),
    );
  });

  test("which group goes back first, a mirrored pair the other way round", async () => {
    const said = phrases(await sample("mirrored-cables"));
    expect(said).toContain(
      "13: cross 2 over 2 on L6 to L3: lift L6 to L5 and L4 to L3, put the stitches of L6 to L5 back first",
    );
    expect(said).toContain(
      "13: cross 2 over 2 on R3 to R6: lift R3 to R4 and R5 to R6, put the stitches of R5 to R6 back first",
    );
  });

  test("where a pattern and its card begin, and where it ends", async () => {
    expect(phrases(await sample("band")).filter((one) => one.includes("leaves"))).toEqual([
      "10: leaves, repeat 1 of 3: knit the pattern on L25 to R25, 4 repeats of 12 stitches by 16 rows side by side," +
        " 1 edge stitch at the left and 1 at the right; set the card at row 1, where stitch 13 of its 24 begins the" +
        " first repeat",
      "26: leaves, repeat 2 of 3: row 1 of the card again",
      "42: leaves, repeat 3 of 3: row 1 of the card again",
      "58: leaves ends: knit plain again on L25 to R25",
    ]);
  });

  test("what stands off as a loop", async () => {
    const said = phrases(await sample("standing-loops"));
    expect(said).toContain("14: cord: count 10 for a standing loop, hang both legs on L1");
    expect(said).toContain("20: cord: count 4, hang both legs on R1");
  });

  test("which strands are the arms of one cord, also where others are hung between them", async () => {
    const four = (order: string): string =>
      garmentText({
        motifs: `motifs:
  plait:
    kind: cord
    lead: 0
    repeat: 4
    ease: { from: -50 %, to: 100 % }
    strands:
      a: { start: [-4, 0], repeat: [[-4, 4]] }
      b: { start: [-3, 0], repeat: [[-3, 4]] }
      c: { start: [3, 0], repeat: [[3, 4]] }
      d: { start: [4, 0], repeat: [[4, 4]] }
    folded: [[a, b], [c, d]]
    order: ${order}`,
      });
    const starts = async (order: string): Promise<string[]> =>
      phrases(await fitOf(four(order))).filter((one) => one.includes("folded"));
    const beside = await starts("[a, b, c, d]");
    expect(beside).toHaveLength(2);
    expect(beside[1]).toContain("c on R3 and d on R4");
    const between = await starts("[a, c, b, d]");
    expect(between).toHaveLength(4);
    expect(between[0]).toContain(
      "a: hang a cord stitch at the middle of the cord folded with b, both legs, on L4",
    );
  });

  test("in every row the strand that lies under first", async () => {
    const text = sheetText(await sample("braid"), buildSheet(await sample("braid")), 200);
    const rows = text.split("\n").filter((line) => /hang both legs on/.test(line));
    expect(rows.slice(0, 3).map((line) => /(left|middle|right):/.exec(line)?.[1])).toEqual([
      "middle",
      "left",
      "right",
    ]);
    // In the second repeat the strands have changed places, and so has the order.
    expect(rows.slice(6, 9).map((line) => /(left|middle|right):/.exec(line)?.[1])).toEqual([
      "right",
      "middle",
      "left",
    ]);
  });
});

test("a loop that is shorter than its way is warned of", async () => {
  const looped = (count: number): string =>
    garmentText({
      motifs: `motifs:
  plait: { kind: cord, lead: 0, repeat: 8, strands: { a: { start: [1, 0], repeat: [[1, 8, { count: ${count} }]] } } }`,
      place:
        "place: [{ motif: plait, on: sleeve, from: rib top, to: underarm, margins: { bottom: 0..9, top: 0..9 } }]",
    });
  expect(warningsFor(await fitOf(looped(12)))).toEqual([]);
  expect(warningsFor(await fitOf(looped(2)))).toEqual([
    "plait: 2 cord stitches are fewer than the loop has way to go, so it pulls the cloth together instead of standing off.",
  ]);
});
