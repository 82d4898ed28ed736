import { describe, expect, test } from "vitest";
import type { CountedPiece } from "../../../src/cloth/counted-piece.ts";
import { buildSheet } from "../../../src/sheet/build-sheet.ts";
import type { Action, SheetPiece } from "../../../src/sheet/sheet.ts";
import type {
  CableEntry,
  CordEntry,
  MarginsEntry,
  MotifEntry,
  PieceEntry,
  PlacementEntry,
} from "../../support/garment-file.ts";
import { band, smallGarment, strip } from "../../support/small-garment.ts";
import { bare, fitOf, plainGarment } from "./support/small-fits.ts";

/** The sheet of one counted piece with nothing laid on it. */
const sheetOf = (piece: Partial<CountedPiece> & Pick<CountedPiece, "left" | "right">): SheetPiece =>
  buildSheet({
    ...bare(plainGarment()),
    pieces: [{ name: "strip", rows: piece.left.length - 1, carriage: "right", marks: new Map(), ...piece }],
  }).pieces[0]!;

describe("a piece without a neck", () => {
  test("begins with its cast-on and ends with its bind-off, and only rows at which something is done are told", () => {
    expect(sheetOf({ left: [3, 3, 3, 3], right: [4, 4, 4, 4] })).toEqual({
      piece: "strip",
      needlesAtStart: [-3, 4],
      rowsInAll: 3,
      rows: [
        { row: 0, carriage: "right", needles: [-3, 4], do: [{ act: "cast-on", from: -3, to: 4 }] },
        { row: 3, carriage: "left", needles: [], do: [{ act: "bind-off", from: -3, to: 4 }] },
      ],
    });
  });

  test("is shaped at the row at which its edge changes, one stitch and several each by their own word", () => {
    // Several stitches go where the carriage rests: left after an odd row, right after an even one.
    const { needlesAtStart, rows } = sheetOf({
      left: [3, 5, 5, 5, 6, 3, 3, 3],
      right: [3, 3, 6, 5, 6, 6, 2, 2],
    });
    expect(needlesAtStart).toEqual([-3, 3]);
    expect(rows).toEqual([
      { row: 0, carriage: "right", needles: [-3, 3], do: [{ act: "cast-on", from: -3, to: 3 }] },
      { row: 1, carriage: "left", needles: [-5, 3], do: [{ act: "cast-on", side: "left", needles: 2 }] },
      { row: 2, carriage: "right", needles: [-5, 6], do: [{ act: "cast-on", side: "right", needles: 3 }] },
      { row: 3, carriage: "left", needles: [-5, 5], do: [{ act: "decrease", side: "right", needles: 1 }] },
      {
        row: 4,
        carriage: "right",
        needles: [-6, 6],
        do: [
          { act: "increase", side: "left", needles: 1 },
          { act: "increase", side: "right", needles: 1 },
        ],
      },
      { row: 5, carriage: "left", needles: [-3, 6], do: [{ act: "bind-off", side: "left", needles: 3 }] },
      { row: 6, carriage: "right", needles: [-3, 2], do: [{ act: "bind-off", side: "right", needles: 4 }] },
      { row: 7, carriage: "left", needles: [], do: [{ act: "bind-off", from: -3, to: 2 }] },
    ]);
  });

  test("starts with the carriage where the piece says", () => {
    const { rows } = sheetOf({ left: [2, 2], right: [2, 2], carriage: "left" });
    expect(rows.map(({ carriage }) => carriage)).toEqual(["left", "right"]);
  });
});

describe("a piece with a neck", () => {
  const rows = sheetOf({
    left: [5, 5, 6, 6, 6, 6, 6, 6, 6],
    right: [6, 6, 6, 6, 6, 6, 5, 5, 5],
    neck: { row: 4, left: [2, 2, 3, 3, 3], right: [2, 4, 4, 4, 4] },
  }).rows;

  test("is one up to the neck, where the centre is bound off and the half away from the carriage goes on hold", () => {
    expect(rows.slice(0, 3)).toEqual([
      { row: 0, carriage: "right", needles: [-5, 6], do: [{ act: "cast-on", from: -5, to: 6 }] },
      { row: 2, carriage: "right", needles: [-6, 6], do: [{ act: "increase", side: "left", needles: 1 }] },
      {
        row: 4,
        carriage: "right",
        // The opening is two needles to each side of the centre.
        needles: [3, 6],
        do: [
          { act: "bind-off", from: -2, to: 2, yarn: "separate" },
          { act: "hold", from: -6, to: -3 },
        ],
      },
    ]);
  });

  test("has each half to its bind-off, with its own edge and its own side of the neck", () => {
    expect(rows.slice(3)).toEqual([
      // The right half's neck edge lies at its left.
      {
        row: 5,
        carriage: "left",
        needles: [5, 6],
        do: [{ act: "bind-off", side: "left", needles: 2, edge: "neck" }],
      },
      { row: 6, carriage: "right", needles: [5, 5], do: [{ act: "decrease", side: "right", needles: 1 }] },
      { row: 8, carriage: "right", needles: [], do: [{ act: "bind-off", from: 5, to: 5 }] },
      { row: 4, carriage: "right", needles: [-6, -3], do: [{ act: "work", from: -6, to: -3 }] },
      {
        row: 6,
        carriage: "right",
        needles: [-6, -4],
        do: [{ act: "decrease", side: "right", needles: 1, edge: "neck" }],
      },
      { row: 8, carriage: "right", needles: [], do: [{ act: "bind-off", from: -6, to: -4 }] },
    ]);
  });

  test("begins with the left half where the carriage rests at the left, and binds nothing off where the neck is a point", () => {
    const pointed = sheetOf({
      left: [4, 4, 4, 5, 5, 5],
      right: [4, 4, 4, 4, 4, 4],
      neck: { row: 3, left: [0, 1, 1], right: [0, 1, 1] },
    });
    expect(pointed.rows).toEqual([
      { row: 0, carriage: "right", needles: [-4, 4], do: [{ act: "cast-on", from: -4, to: 4 }] },
      {
        row: 3,
        carriage: "left",
        needles: [-5, -1],
        do: [
          { act: "increase", side: "left", needles: 1 },
          { act: "hold", from: 1, to: 4 },
        ],
      },
      {
        row: 4,
        carriage: "right",
        needles: [-5, -2],
        do: [{ act: "decrease", side: "right", needles: 1, edge: "neck" }],
      },
      { row: 5, carriage: "left", needles: [], do: [{ act: "bind-off", from: -5, to: -2 }] },
      { row: 3, carriage: "left", needles: [1, 4], do: [{ act: "work", from: 1, to: 4 }] },
      {
        row: 4,
        carriage: "right",
        needles: [2, 4],
        do: [{ act: "decrease", side: "left", needles: 1, edge: "neck" }],
      },
      { row: 5, carriage: "left", needles: [], do: [{ act: "bind-off", from: 2, to: 4 }] },
    ]);
  });
});

describe("the pieces of a garment", () => {
  test("come in the order of the file, with how many are made where that is not one", () => {
    const fit = bare(
      plainGarment({ pieces: { strip: strip(20, 10), sleeve: strip(8, 6, { make: 2 }), cuff: strip(6, 4) } }),
    );
    expect(buildSheet(fit).pieces.map(({ piece, make }) => [piece, make])).toEqual([
      ["strip", undefined],
      ["sleeve", 2],
      ["cuff", undefined],
    ]);
    expect(Object.keys(buildSheet(fit).pieces[0]!)).not.toContain("make");
  });
});

/** Acts of each row of a sheet, with the needle or the side at which each is done. */
const told = ({ rows }: SheetPiece): readonly string[] =>
  rows.map(({ row, do: actions }) => `${row}: ${actions.map(inShort).join(", ")}`);

const inShort = (action: Action): string => {
  if ("side" in action) return `${action.act} ${action.side}`;
  return "needle" in action
    ? `${action.act} ${action.needle}`
    : `${action.act} ${action.from} to ${action.to}`;
};

/** Six rows of ten needles above four rows of eight; the two more are both at the left, or one at each side. */
const step = (left: number, right: number): PieceEntry => ({
  outline: [
    { height: "0 mm", left: "20 mm", right: "20 mm" },
    { height: "16 mm", left: "20 mm", right: "20 mm" },
    { height: "16 mm", left: `${5 * left} mm`, right: `${5 * right} mm` },
    { height: "40 mm", left: `${5 * left} mm`, right: `${5 * right} mm` },
  ],
  marks: { step: "16 mm" },
});

/** Cords that go straight up, five rows from one hanging to the next: 20 mm, or four cord stitches. */
const straight = (...needles: readonly number[]): CordEntry => ({
  kind: "cord",
  quantities: {},
  lead: 0,
  repeat: 5,
  strands: Object.fromEntries(
    needles.map((needle) => [`at ${needle}`, { start: [needle, 0], repeat: [[needle, 5]] }]),
  ),
});

/** What is told of a piece on which one motif lies, once between each of these margins. */
async function sheetOn(
  panel: PieceEntry,
  motif: MotifEntry,
  from: string,
  ...margins: readonly MarginsEntry[]
): Promise<readonly string[]> {
  const place = margins.map(
    (one): PlacementEntry => ({
      motif: "motif",
      on: "panel",
      from,
      to: "bind-off",
      margins: one,
      repeats: 1,
    }),
  );
  const fit = await fitOf(smallGarment({ pieces: { panel }, motifs: { motif }, place }));
  return told(buildSheet(fit).pieces[0]!);
}

describe("ornament and shaping on one row", () => {
  const close = { bottom: 0, top: "0..9", side: { least: 0 } };

  test("what lies on needles that are there already is done first, while nothing moves at the edges", async () => {
    expect(await sheetOn(step(5, 5), straight(-4, 4), "step", close)).toEqual([
      "0: cast-on -4 to 4",
      "4: hang -4, hang 4, increase left, increase right",
      "9: hang -4, finish -4, hang 4, finish 4",
      "10: bind-off -5 to 5",
    ]);
  });

  test("what lies on needles that the row adds waits for them, and so does all else of that row", async () => {
    const all = await sheetOn(step(5, 5), straight(1, 5), "step", close);
    expect(all[1]).toBe("4: increase left, increase right, hang 1, hang 5");
    // Five needles at the left, one more than before, and four at the right as before.
    const across = { bottom: 0, top: "0..9", left: 0, right: 0 };
    expect((await sheetOn(step(5, 4), band(9, 2), "step", across))[1]).toBe(
      "4: increase left, pattern -5 to 4",
    );
  });

  test("needles that an earlier row added are there already", async () => {
    // Four needles to each side, five from row 4 and six from row 8 on.
    const stairs: PieceEntry = {
      outline: [40, 40, 50, 50, 60, 60].map((width, index) => ({
        height: `${[0, 16, 16, 32, 32, 60][index]} mm`,
        width: `${width} mm`,
      })),
      marks: { step: "32 mm" },
    };
    expect((await sheetOn(stairs, straight(-5, 5), "step", close))[2]).toBe(
      "8: hang -5, hang 5, increase left, increase right",
    );
  });

  test("a motif that begins with the piece is on its first row, behind the cast-on", async () => {
    expect(await sheetOn(strip(8, 4), band(8, 4), "cast-on", close)).toEqual([
      "0: cast-on -4 to 4, pattern -4 to 4",
      "4: plain -4 to 4, bind-off -4 to 4",
    ]);
  });
});

describe("ornament above a neck is told in the half on whose needles it lies", () => {
  // Fourteen needles to each side of the centre, of which the neck takes two from row 4 on.
  const halves = strip(28, 12, {
    neck: [
      { height: "16 mm", width: "20 mm" },
      { height: "48 mm", width: "20 mm" },
    ],
  });
  const farLeft = (bottom: number): MarginsEntry => ({ bottom, top: "0..9", left: 2, right: "2..24" });
  const farRight: MarginsEntry = { bottom: 1, top: "0..9", left: "2..24", right: 3 };

  test("a cord's hangings and how it is closed", async () => {
    const beside = await sheetOn(halves, straight(-1, 1), "neck", farLeft(1), farRight);
    expect(beside.slice(2, 4)).toEqual(["5: hang 10, hang 11", "10: hang 10, finish 10, hang 11, finish 11"]);
    expect(beside.slice(6, 8)).toEqual([
      "5: hang -12, hang -11",
      "10: hang -12, finish -12, hang -11, finish -11",
    ]);
    // What is hung at the neck's own row is hung before the centre is bound off.
    const early = await sheetOn(halves, straight(-1, 1), "neck", farLeft(0), farRight);
    expect(early[1]).toBe("4: hang -12, hang -11, bind-off -2 to 2, hold -14 to -3");
  });

  test("what is hung at the last row is hung before the half is bound off", async () => {
    const last = await sheetOn(halves, straight(-1, 1), "neck", {
      bottom: 3,
      top: 0,
      left: 2,
      right: "2..24",
    });
    expect(last.at(-1)).toBe("12: hang -12, finish -12, hang -11, finish -11, bind-off -14 to -3");
  });

  test("crossings and ladders", async () => {
    const rope: CableEntry = {
      kind: "cable",
      lead: 0,
      repeat: 4,
      cross: [2, 2],
      crossings: { start: [0, 0], repeat: [[0, 4]] },
      ladders: [-3, 3],
    };
    const beside = await sheetOn(halves, rope, "neck", farLeft(1), farRight);
    expect(beside.slice(2, 4)).toEqual(["5: out 5, out 10, cross 6 to 9", "9: cross 6 to 9, in 5, in 10"]);
    expect(beside.slice(6, 8)).toEqual([
      "5: out -11, out -6, cross -10 to -7",
      "9: cross -10 to -7, in -11, in -6",
    ]);
  });

  test("the beginnings and the end of a pattern", async () => {
    const beside = await sheetOn(halves, band(6, 4), "neck", farLeft(1), farRight);
    expect(beside.slice(2, 4)).toEqual(["5: pattern 6 to 11", "9: plain 6 to 11"]);
    expect(beside.slice(6, 8)).toEqual(["5: pattern -12 to -7", "9: plain -12 to -7"]);
  });
});
