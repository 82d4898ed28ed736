import { describe, expect, test } from "vitest";
import { createLasts } from "../../../../src/fit/refusal/lasts.ts";
import { createRoom, type Room } from "../../../../src/fit/refusal/room.ts";
import { type Allowed, only } from "../../../../src/garment/allowed.ts";
import type { Garment, Stock, SupplyOf } from "../../../../src/garment/garment.ts";
import { ratesOf } from "../../../../src/on-hand/rates.ts";
import type { GarmentFile, PieceEntry, StationEntry } from "../../../support/garment-file.ts";
import { cable, laid, plait, smallGarment, strip } from "../../../support/small-garment.ts";

/** The garment with so much on hand. */
const stocked = (garment: Garment, stocks: Partial<Record<SupplyOf, Stock>>): Garment => ({
  ...garment,
  onHand: {
    supplies: Object.entries(stocks).map(([of, stock]) => ({
      path: ["on hand", of],
      of: of as SupplyOf,
      ...stock,
    })),
    leastWaste: false,
  },
});

const metres = (amount: number): Stock => ({ amount, unit: "m" });

/** So many cord stitches, of 5 mm each, and so many stitches of the ground; no limit on what is left out. */
const withStitches = (garment: Garment, { cord, ground }: Stitches): Garment =>
  stocked(garment, {
    ...(cord !== undefined && { cord: metres(cord / 200) }),
    ...(ground !== undefined && { "ground yarn": gramsFor(garment, ground) }),
  });

interface Stitches {
  readonly cord?: number;
  readonly ground?: number;
}

/** Thick enough that a tenth of a gram is less than a stitch. */
const rope = { ground: { tex: 50_000 } };

function gramsFor(garment: Garment, stitches: number): Stock {
  const supply = { path: [], of: "ground yarn", amount: 1, unit: "g" } as const;
  return { amount: Math.ceil(10 * stitches * ratesOf(garment, supply).groundStitch) / 10, unit: "g" };
}

const lasts = (garment: Garment, room: Room = createRoom(garment)): boolean | undefined =>
  createLasts(room)(garment);

/** Whether so much lasts, and one stitch less of the same thing does not. */
function expectJustEnough(garment: Garment, just: Stitches): void {
  expect(lasts(withStitches(garment, just)), "just enough").toBe(true);
  for (const [of, stitches] of Object.entries(just))
    expect(lasts(withStitches(garment, { ...just, [of]: stitches - 1 })), `one less of ${of}`).toBe(false);
}

const garmentOf = (
  piece: PieceEntry,
  motif: GarmentFile["motifs"][string],
  place: Parameters<typeof laid> extends [string, string, ...infer Rest] ? Rest : never = [],
  more: Partial<GarmentFile> = {},
): Garment =>
  smallGarment({
    yarn: rope,
    pieces: { sleeve: piece },
    motifs: { ornament: motif },
    place: [laid("ornament", "sleeve", ...place)],
    ...more,
  });

// A lead-in of 4 rows over 2 needles is 18.9 mm long and takes at least 4 cord stitches, a crossing of 4 rows over 5
// needles is 29.7 mm and takes at least 6. Two arms and their two ends: 2 + 2 * (4 + 2 * 6 * repeats), and 15 % of
// it in reserve: 34 are 40 to make for one repeat, 58 are 67 for two.
const loose = { ease: { from: "-5 %", to: "35 %", prefer: "30 %" } };
const small = plait(4, 3, loose);

/** Cords of two motifs, one of which stands 12 rows high and the other 20, and a cable. */
const everyKind = (): Garment =>
  smallGarment({
    yarn: rope,
    pieces: { sleeve: strip(20, 12), front: strip(20, 20), back: strip(20, 12) },
    motifs: { ornament: small, ropes: cable(4), other: plait(4, 3, loose) },
    place: [laid("ornament", "sleeve"), laid("other", "front"), laid("ropes", "back")],
  });

describe("cord", () => {
  test("lasts where the fewest stitches that the ease allows are there", () => {
    expectJustEnough(garmentOf(strip(20, 12), small), { cord: 40 });
    expectJustEnough(garmentOf(strip(20, 20), small), { cord: 67 });
  });

  test("is taken for the fewest repeats there is room for", () => {
    expectJustEnough(garmentOf(strip(20, 20), small, [{ top: "0..8" }]), { cord: 40 });
    expectJustEnough(garmentOf(strip(20, 20), small, [{ top: "0..7" }]), { cord: 67 });
    expectJustEnough(garmentOf(strip(20, 20), small, [{ top: "0..8" }, { repeats: { allow: [2, 3] } }]), {
      cord: 67,
    });
  });

  test("is taken for the fewest columns that stand where they should", () => {
    const columns = { columns: { allow: [1, 2] }, gap: 2 };
    expectJustEnough(garmentOf(strip(20, 12), small, [{}, columns]), { cord: 40 });
    // Two columns of 6 needles and a gap of 2 leave 3 needles at each side.
    expectJustEnough(garmentOf(strip(20, 12), small, [{ left: 3, right: 3 }, columns]), { cord: 80 });
  });

  test("is taken for the look that takes least", () => {
    const looks = plait({ allow: [4, 5, 6] }, { allow: [3, 4] }, loose);
    expectJustEnough(garmentOf(strip(20, 12), looks, [{ top: "0..8" }]), { cord: 40 });
    // 16 rows have room for 5 rows of lead-in and 10 of a repeat, and one row is left: 25 mm by 20 mm are 32.0 mm and take
    // 7, 10 mm by 20 mm are 22.4 mm and take 5: 2 + 2 * (5 + 14) = 40 are 46 to make.
    expectJustEnough(garmentOf(strip(20, 16), looks, [{ top: "0..1" }]), { cord: 46 });
  });

  test("is taken for every one that is knitted of a piece, and for every piece", () => {
    expectJustEnough(garmentOf(strip(20, 12, { make: 2 }), small), { cord: 80 });
    const two = smallGarment({
      yarn: rope,
      pieces: { sleeve: strip(20, 12), front: strip(20, 20) },
      motifs: { ornament: small },
      place: [laid("ornament", "sleeve"), laid("ornament", "front")],
    });
    expectJustEnough(two, { cord: 107 });
  });

  test("is taken for every motif", () => {
    expectJustEnough(everyKind(), { cord: 107 });
  });

  test("is one and the same look on all pieces of a motif", () => {
    // 4 rows between hangings leave 12 or 20 rows, 6 leave 18: the motif has room on each piece, but not one look on both.
    const onRows = (rows: number): Garment =>
      smallGarment({
        yarn: rope,
        pieces: { sleeve: strip(20, 12), front: strip(20, rows) },
        motifs: { ornament: plait({ allow: [4, 6] }, 3, loose) },
        place: [laid("ornament", "sleeve"), laid("ornament", "front")],
      });
    expect([18, 20].map((rows) => lasts(withStitches(onRows(rows), { cord: 9000 })))).toEqual([false, true]);
  });

  test("yarn of a cord is taken for its stitches and the tails at its two ends", () => {
    const garment = garmentOf(strip(20, 12), small, [{}, { columns: 2 }]);
    const supply = { path: [], of: "cord yarn", amount: 1, unit: "m" } as const;
    // Two cords of 40 stitches, each with two tails of 20 cm.
    const needed = 80 * ratesOf(garment, supply).cordStitch + 2 * 0.4;
    const just = Math.ceil(10 * needed) / 10;
    expect(lasts(stocked(garment, { "cord yarn": metres(just) }))).toBe(true);
    expect(lasts(stocked(garment, { "cord yarn": metres(just - 0.1) }))).toBe(false);
  });
});

describe("yarn of the ground", () => {
  test("lasts where the shortest piece's stitches can be knitted of it", () => {
    expectJustEnough(garmentOf(strip(20, 12), small), { ground: 240 });
    expectJustEnough(garmentOf(strip(20, 15, { shrink: "12 mm" }), small), { ground: 240 });
    expectJustEnough(garmentOf(strip(20, 15, { shrink: "12 mm" }), small, [{ top: "1..9" }]), {
      ground: 260,
    });
    expectJustEnough(garmentOf(strip(20, 11, { grow: "8 mm" }), small), { ground: 240 });
  });

  test("is taken for each piece as it is", () => {
    const garment = smallGarment({
      yarn: rope,
      pieces: { sleeve: strip(20, 12), front: strip(30, 20, { make: 2 }), belt: strip(4, 10) },
      motifs: { ornament: small },
      place: [laid("ornament", "sleeve"), laid("ornament", "front")],
    });
    expectJustEnough(garment, { ground: 240 + 2 * 600 + 40 });
  });

  test("is taken for the needles that a cable's crossings cost", () => {
    // 4 crossed stitches that lose half are 2 narrower: one needle more at each side, and two for two columns.
    const ropes = cable(4, { "draw-in": "50 %" });
    expectJustEnough(garmentOf(strip(20, 12), ropes), { ground: 12 * 22 });
    expectJustEnough(garmentOf(strip(20, 12), ropes, [{}, { columns: { allow: [1, 2] } }]), {
      ground: 12 * 22,
    });
    expectJustEnough(garmentOf(strip(20, 12), ropes, [{}, { columns: 2 }]), { ground: 12 * 24 });
    expectJustEnough(garmentOf(strip(20, 12), cable(4)), { ground: 12 * 20 });
  });

  test("may be less for a longer piece", () => {
    // The left edge steps out by 35 needles at row 13, where the carriage rests there: 13 rows of 20 and 5 of 55 are 535.
    // A row further up the step has to wait for the carriage for one row more: 15 rows of 20 and 4 of 55 are 520.
    const edge = (row: number, left: number): StationEntry => ({
      height: `${4 * row} mm`,
      left: `${5 * left} mm`,
      right: "50 mm",
    });
    const stepped = (grow: string): Garment =>
      garmentOf(
        {
          outline: [edge(0, 10), edge(13, 10), edge(13, 45), edge(18, 45)],
          marks: { low: "48 mm" },
          grow,
        },
        small,
        [{ top: "0..1" }, { to: "low" }],
      );
    expectJustEnough(stepped("0 mm"), { ground: 535 });
    expectJustEnough(stepped("4 mm"), { ground: 520 });
  });
});

describe("cord and yarn of the ground together", () => {
  // Either 4 rows over 2 needles and 20 rows long, or 6 rows over 9 needles and 18 rows long. Crossings and lead-ins take
  // 5 and 4 cord stitches, two repeats 2 + 2 * (4 + 4 * 5) = 50, 58 to make; or 17 and 9, one repeat
  // 2 + 2 * (9 + 2 * 17) = 88, 102 to make.
  const either = plait(
    { allow: [4, 6] },
    { allow: [2, 9] },
    {
      rules: ["2 * spread = 7 * interval - 24"],
      ease: { from: "-5 %", to: "25 %" },
    },
  );
  const piece = strip(20, 19, { grow: "4 mm", shrink: "4 mm" });

  test("may last for a look that takes more of the one and less of the other", () => {
    const garment = garmentOf(piece, either);
    expectJustEnough(garment, { cord: 58, ground: 400 });
    expectJustEnough(garment, { cord: 102, ground: 360 });
  });

  test("are shared out between motifs as they last longest", () => {
    const garment = smallGarment({
      yarn: rope,
      pieces: { sleeve: piece, front: piece },
      motifs: { ornament: either, other: either },
      place: [laid("ornament", "sleeve"), laid("other", "front")],
    });
    expectJustEnough(garment, { cord: 2 * 58, ground: 2 * 400 });
    expectJustEnough(garment, { cord: 58 + 102, ground: 400 + 360 });
    expectJustEnough(garment, { cord: 2 * 102, ground: 2 * 360 });
  });

  test("are shared out between the pieces of one motif, as long as they are", () => {
    // Nothing ties the lengths of two pieces: each may be 20 rows and two repeats, or 12 rows and one.
    const long = strip(20, 20, { shrink: "32 mm" });
    const garment = smallGarment({
      yarn: rope,
      pieces: { sleeve: long, front: { ...long, make: 2 } },
      motifs: { ornament: small },
      place: [laid("ornament", "sleeve"), laid("ornament", "front", {}, { repeats: { allow: [1, 2] } })],
    });
    expectJustEnough(garment, { cord: 3 * 40, ground: 3 * 240 });
  });

  test("are shared out between the pieces of one motif as they last longest", () => {
    // Two repeats fill 20 rows and take 67 cord stitches; one takes 40, but a margin of 9 or of 19 rows beside it.
    const garment = smallGarment({
      yarn: rope,
      pieces: { sleeve: strip(20, 20, { grow: "4 mm" }), front: strip(20, 20, { grow: "44 mm" }) },
      motifs: { ornament: small },
      place: [laid("ornament", "sleeve", { top: [0, 9] }), laid("ornament", "front", { top: [0, 19] })],
    });
    expectJustEnough(garment, { cord: 40 + 40, ground: 20 * (21 + 31) });
    expectJustEnough(garment, { cord: 40 + 67, ground: 20 * (21 + 20) });
    expectJustEnough(garment, { cord: 67 + 67, ground: 20 * (20 + 20) });
  });
});

describe("where placements are tied by more than their motif and what is on hand", () => {
  const simple = (): Garment => withStitches(garmentOf(strip(20, 12), small), { cord: 40 });

  test.each<[string, () => Garment]>([
    ["nothing is on hand", () => ({ ...simple(), onHand: undefined }) as unknown as Garment],
    ["it has to be steady", () => ({ ...simple(), steady: 0 })],
    [
      "motifs stand alike",
      () => ({ ...simple(), matches: [{ path: [], mark: "bind-off", placements: [0] }] }),
    ],
    [
      "two share a piece",
      () => ({ ...simple(), placements: [...simple().placements, ...simple().placements] }),
    ],
    [
      "one motif of several grows",
      () => {
        const { motifs, ...garment } = withStitches(everyKind(), { cord: 9000 });
        const growing = (name: string): { change?: number } => (name === "other" ? { change: 1 } : {});
        return {
          ...garment,
          motifs: motifs.map((motif) => ({
            ...motif,
            quantities: motif.quantities.map((one) => ({ ...one, ...growing(motif.name) })),
          })),
        };
      },
    ],
  ])("an engine has to tell: %s", (_, garment) => {
    expect(lasts(simple())).toBe(true);
    expect(lasts(garment())).toBe(undefined);
  });
});

/** A room that tells what it is asked for, once for each question. */
function watched(garment: Garment): { room: Room; asked: () => string[] } {
  const room = createRoom(garment);
  const asked: string[] = [];
  const said = (allowed: Allowed): string =>
    allowed.kind === "list" && allowed.values.length === 1 ? String(allowed.values[0]) : "any";
  return {
    room: {
      ...room,
      is: (field, footing, bed) => {
        const { piece, columns, repeats } = field.placement;
        const change = field.leastChange === field.mostChange ? String(field.leastChange) : "any";
        asked.push(
          `${piece}: ${said(repeats.allowed)} repeats of ${footing.repeatRows} rows, ${said(columns.allowed)} columns, ${change} rows longer`,
        );
        return room.is(field, footing, bed);
      },
    },
    asked: () => asked,
  };
}

describe("what is asked", () => {
  const about = (garment: Garment, cord: number): string[] => {
    const { room, asked } = watched(garment);
    lasts(withStitches(garment, { cord }), room);
    return asked();
  };

  test("is no more repeats than the rows hold, nor more than are needed or there is cord for", () => {
    // 28 rows from the mark hold 4 of lead-in and three repeats of 8.
    const garment = (top: string): Garment =>
      garmentOf(strip(20, 36, { marks: { low: "32 mm" } }), small, [{ top }, { from: "low" }]);
    const ofRepeats = (count: number | "any"): string =>
      `sleeve: ${count} repeats of 8 rows, 1 columns, 0 rows longer`;
    expect(about(garment("0..6"), 9000)).toEqual([
      ofRepeats("any"),
      ofRepeats(1),
      ofRepeats(2),
      ofRepeats(3),
    ]);
    expect(about(garment("0..15"), 9000)).toEqual([ofRepeats("any"), ofRepeats(1), ofRepeats(2)]);
    expect(about(garment("0..6"), 67)).toEqual([ofRepeats("any"), ofRepeats(1), ofRepeats(2)]);
    expect(about(garment("1..4"), 9000)).toEqual([ofRepeats("any")]);
    // Where one column stands in none of the ways there are, all of them are tried.
    const two = garmentOf(strip(20, 36, { marks: { low: "32 mm" } }), small, [
      { left: 3, right: 3 },
      { from: "low", columns: { allow: [1, 2] }, gap: 2 },
    ]);
    expect(about(two, 9000).filter((question) => question.includes(" 1 columns"))).toEqual(
      [1, 2, 3].map(ofRepeats),
    );
  });

  test("is as many repeats as the piece holds where it grows", () => {
    const grown = garmentOf(strip(20, 24, { marks: { low: "12 mm" }, grow: "28 mm" }), small, [
      {},
      { from: "low" },
    ]);
    // 21 rows and up to 7 more are 28: two repeats fill 20 and three fill 28.
    const asked = about(
      { ...grown, placements: grown.placements.map((one) => ({ ...one, repeats: { allowed: only(3, 4) } })) },
      9000,
    );
    expect(asked).toEqual([
      "sleeve: any repeats of 8 rows, 1 columns, any rows longer",
      "sleeve: 3 repeats of 8 rows, 1 columns, any rows longer",
    ]);
  });

  test("is one length after the other where the yarn of the ground is limited, the shortest first", () => {
    const { room, asked } = watched(garmentOf(strip(20, 13, { grow: "4 mm", shrink: "8 mm" }), small));
    const garment = garmentOf(strip(20, 13, { grow: "4 mm", shrink: "8 mm" }), small);
    expect(lasts(withStitches(garment, { ground: 20 * 14 }), room)).toBe(true);
    const ofChange = (change: number): string =>
      `sleeve: 1 repeats of 8 rows, 1 columns, ${change} rows longer`;
    expect(asked().slice(1)).toEqual([ofChange(-2), ofChange(-1)]);
  });

  test("is no more repeats of a cable than the fewest, for they take no more", () => {
    const garment = garmentOf(strip(20, 12), cable(4), [{ top: "0..8" }]);
    expect(about(garment, 9000)).toEqual([
      "sleeve: any repeats of 4 rows, 1 columns, 0 rows longer",
      "sleeve: 1 repeats of 4 rows, 1 columns, 0 rows longer",
    ]);
  });

  test("is nothing of a look or a piece once it is settled that it does not last", () => {
    const garment = smallGarment({
      pieces: { sleeve: strip(20, 20), front: strip(20, 12) },
      motifs: { ornament: small },
      place: [laid("ornament", "sleeve"), laid("ornament", "front")],
    });
    expect(about(garment, 66).filter((question) => question.startsWith("front"))).toEqual([]);
    const none: Room = { ...createRoom(garment), mayBe: () => false };
    expect(lasts(withStitches(garment, { cord: 9000 }), none)).toBe(false);
    const nowhere: Room = { ...createRoom(garment), mayBe: ({ piece }) => piece.name === "sleeve" };
    expect(lasts(withStitches(garment, { cord: 9000 }), nowhere)).toBe(false);
  });
});

describe("what is asked again", () => {
  const garment = garmentOf(strip(20, 20), small, [{ top: "0..8" }]);

  test("is answered from what is known where nothing has changed", () => {
    const { room, asked } = watched(garment);
    const again = createLasts(room);
    const one = withStitches(garment, { cord: 40 });
    expect(again(one)).toBe(true);
    const before = asked().length;
    expect(again({ ...one })).toBe(true);
    expect(asked()).toHaveLength(before);
  });

  test.each<[string, (one: Garment) => Garment, boolean]>([
    ["less is on hand", (one) => withStitches(one, { cord: 39 }), false],
    ["the bed is narrower", (one) => ({ ...one, bed: { ...one.bed, needles: 18 } }), false],
    ["the piece is longer", (one) => ({ ...one, pieces: garmentOf(strip(20, 21), small).pieces }), false],
    [
      "the placement asks for more",
      (one) => ({
        ...one,
        placements: one.placements.map((placement) => ({ ...placement, repeats: { allowed: only(2) } })),
      }),
      false,
    ],
    [
      "a child wears it whose loops are small",
      (one) => ({ ...one, wearer: { path: [], ageYears: 5 } }),
      true,
    ],
    [
      "the motif is a longer one",
      (one) => ({ ...one, motifs: garmentOf(strip(20, 20), plait(5, 3, loose)).motifs }),
      false,
    ],
  ])("is another question once %s", (_, change, expected) => {
    const again = createLasts(createRoom(garment));
    const one = withStitches(garment, { cord: 40 });
    expect(again(one)).toBe(true);
    expect(again(change(one))).toBe(expected);
    expect(again(one)).toBe(true);
  });

  test("limits of a child's loops are lifted with the wearer", () => {
    // A crossing of 6 rows over 7 needles is more than 75 mm round.
    const large = garmentOf(strip(20, 18), plait(6, 4));
    const again = createLasts(createRoom(large));
    const one = withStitches(large, { cord: 9000 });
    const answers = [{ ...one, wearer: { path: [], ageYears: 5 } }, one].map((each) => again(each));
    expect(answers).toEqual([false, true]);
  });
});
