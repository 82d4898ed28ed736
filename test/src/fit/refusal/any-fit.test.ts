import { describe, expect, test } from "vitest";
import type { Engine, EngineOptions, Outcome } from "../../../../solver/program.ts";
import { simplexEngine } from "../../../../solver/simplex-engine.ts";
import { createAnyFit, Undecided } from "../../../../src/fit/refusal/any-fit.ts";
import { only } from "../../../../src/garment/allowed.ts";
import type { Garment } from "../../../../src/garment/garment.ts";
import type {
  LikeCordEntry,
  MarginsEntry,
  PieceEntry,
  PlacementEntry,
} from "../../../support/garment-file.ts";
import { band, cable, laid, plait, smallGarment, strip } from "../../../support/small-garment.ts";

/** An engine that may not be asked. */
const none: Engine = () => {
  throw new Error("an engine was asked");
};

/** Whether something fits, as is told without an engine. */
const fits = (garment: Garment): Promise<boolean> => createAnyFit(garment, none)(garment);

/** Whether something fits, as an engine tells, and the programs that it was asked, by the names of their groups. */
async function byEngine(garment: Garment): Promise<readonly [fits: boolean, asked: readonly number[]]> {
  const asked: number[] = [];
  const engine: Engine = (program, options) => {
    asked.push(program.columns.length);
    return simplexEngine(program, options);
  };
  return [await createAnyFit(garment, engine)(garment), asked];
}

/** An engine that ends so, whatever it is asked. */
const ending =
  (outcome: Outcome): Engine =>
  async () =>
    outcome;

const anywhere: MarginsEntry = { left: "0..99", right: "0..99" };

const one = (
  piece: PieceEntry,
  motif = plait(4, 3),
  margins: MarginsEntry = {},
  more: object = {},
): Garment =>
  smallGarment({
    pieces: { sleeve: piece },
    motifs: { ornament: motif },
    place: [laid("ornament", "sleeve", margins)],
    ...more,
  });

describe("a motif by itself", () => {
  test("fits from the first row and needle on that is enough, and no engine is asked", async () => {
    // 4 rows of lead-in and two repeats of 8; 3 needles to each side.
    expect(await fits(one(strip(6, 20)))).toBe(true);
    expect(await fits(one(strip(6, 19)))).toBe(false);
    expect(await fits(one(strip(6, 19, { grow: "4 mm" })))).toBe(true);
    expect(await fits(one(strip(4, 20)))).toBe(false);
    expect(await fits(one(strip(8, 20), plait(4, 3), { side: { least: 1 } }))).toBe(true);
    expect(await fits(one(strip(8, 20), plait(4, 3), { side: { least: 2 } }))).toBe(false);
  });

  test("fits where its cord can be counted", async () => {
    expect(await fits(one(strip(6, 20), plait(4, 3, { ease: { from: "1 %", to: "6 %" } })))).toBe(true);
    expect(await fits(one(strip(6, 20), plait(4, 3, { ease: { from: "1 %", to: "5 %" } })))).toBe(false);
  });

  test("fits nobody who may not wear it there", async () => {
    const hood = (age: number): Garment =>
      smallGarment({
        wearer: { age },
        pieces: { sleeve: strip(6, 20), hood: strip(6, 20) },
        motifs: { ornament: plait(4, 3) },
        place: [laid("ornament", "sleeve"), laid("ornament", "hood")],
      });
    expect([await fits(hood(7)), await fits(hood(8))]).toEqual([false, true]);
  });
});

describe("motifs that are not tied to each other", () => {
  const two = (sleeve: number, front: number): Garment =>
    smallGarment({
      pieces: { sleeve: strip(20, sleeve), front: strip(20, front) },
      motifs: { ornament: plait(4, 3), waves: band(4, 7) },
      place: [laid("ornament", "sleeve"), laid("waves", "front")],
    });

  test("fit where each of them does", async () => {
    const all = [two(20, 21), two(19, 21), two(20, 22)].map((garment) => fits(garment));
    expect(await Promise.all(all)).toEqual([true, false, false]);
  });
});

describe("placements of one motif", () => {
  const three = (back: number): Garment =>
    smallGarment({
      pieces: { front: strip(20, 22), sleeve: strip(20, 21), back: strip(20, back) },
      motifs: { ropes: cable({ allow: [7, 11] }), waves: band(4, 7) },
      place: [laid("ropes", "front"), laid("waves", "sleeve"), laid("ropes", "back")],
    });

  test("fit on one look, whatever is laid between them", async () => {
    // 22 rows are two crossings at 11 rows; 21 are three at 7, 33 three at 11.
    expect([await fits(three(21)), await fits(three(33))]).toEqual([false, true]);
  });
});

describe("placements that are tied", () => {
  test("fit side by side on one piece where there are needles for both", async () => {
    const beside = (needles: number): Garment =>
      smallGarment({
        pieces: { front: strip(needles, 12), sleeve: strip(20, 21) },
        motifs: { small: band(4, 6), waves: band(4, 7), large: band(6, 6) },
        place: [laid("small", "front", anywhere), laid("waves", "sleeve"), laid("large", "front", anywhere)],
      });
    expect([await fits(beside(8)), await fits(beside(10))]).toEqual([false, true]);
  });

  test("fit where they stand alike at a mark", async () => {
    const alike = (bottom: string): Garment =>
      smallGarment({
        pieces: { front: strip(20, 20), sleeve: strip(20, 21), back: strip(20, 23) },
        motifs: { waves: band(4, 6), other: band(4, 7) },
        place: [
          laid("waves", "front", { bottom: "0..0", top: "0..5" }),
          laid("other", "sleeve"),
          laid("waves", "back", { bottom, top: "0..5" }),
        ],
        match: [{ motif: "waves", on: ["front", "back"], mark: "bind-off" }],
      });
    // 20 rows are 2 into a repeat of 6; so are 23 from 3 rows on.
    expect([await fits(alike("0..2")), await fits(alike("0..3"))]).toEqual([false, true]);
  });

  test("fit as one where a piece ties two motifs and a motif two pieces", async () => {
    // Front and back share a motif; the belt shares a piece with neither, and the last ties the back to the front's motif.
    const chain = (rows: number): Garment =>
      smallGarment({
        pieces: { front: strip(20, 22), back: strip(20, rows, { grow: "4 mm" }) },
        motifs: { ropes: cable({ allow: [7, 11] }), waves: band(4, 3) },
        place: [laid("ropes", "front"), laid("waves", "back", anywhere), laid("ropes", "back", anywhere)],
      });
    // The front is two crossings at 11 rows, so the back is 33 rows, which the waves' 3 fill as well; 22 they do not.
    const all = [chain(32), chain(33), chain(21), chain(22)].map((garment) => fits(garment));
    expect(await Promise.all(all)).toEqual([true, true, false, false]);
  });
});

describe("what is on hand", () => {
  const stocked = (cord: number, place = [laid("ornament", "sleeve")], more: object = {}): Garment =>
    smallGarment({
      pieces: { sleeve: strip(20, 20), front: strip(20, 12) },
      motifs: { ornament: plait(4, 3) },
      place,
      ...more,
      "on hand": { cord: `${5 * cord} mm` },
    });

  test("is reckoned without an engine where nothing else ties placements", async () => {
    // Two repeats take 2 + 2 * (4 + 4 * 6) cord stitches, and with 15 % in reserve 67.
    expect([await fits(stocked(66)), await fits(stocked(67))]).toEqual([false, true]);
  });

  test("is asked of an engine where more does", async () => {
    const place = [laid("ornament", "sleeve", { top: "0..8" }), laid("ornament", "front", { top: "0..8" })];
    const match = [{ motif: "ornament", on: ["sleeve", "front"], mark: "bind-off" }];
    // One repeat takes 40; at the bind-off both may be whole, or the sleeve 8 rows above its only repeat: whole, too.
    const [enough, asked] = await byEngine(stocked(80, place, { match }));
    expect([enough, asked.length]).toEqual([true, 1]);
    expect((await byEngine(stocked(79, place, { match })))[0]).toBe(false);
  });
});

describe("a fit that has to be steady", () => {
  const steady = (rows: number, more: Partial<PieceEntry>, belt: Partial<PieceEntry> = {}): Garment =>
    smallGarment({
      steady: "100 %",
      gauge: { ground: { stitches: 20, rows: 25, over: "10 cm", within: "2 %" } },
      pieces: { sleeve: strip(20, rows, more), front: strip(20, 21), belt: strip(10, 100, belt) },
      motifs: { waves: band(4, 7), other: band(4, 3) },
      place: [laid("waves", "sleeve"), laid("other", "front")],
    });

  test("keeps its length for every gauge, also where nothing is laid", async () => {
    // 2 % of 100 rows are 2 rows, 8 mm, and a hair more where the rows are higher than told.
    expect(await fits(steady(21, {}))).toBe(true);
    expect(await fits(steady(21, {}, { grow: "9 mm", shrink: "9 mm" }))).toBe(true);
    expect(await fits(steady(21, {}, { grow: "7 mm", shrink: "9 mm" }))).toBe(false);
    expect(await fits(steady(21, {}, { grow: "9 mm", shrink: "7 mm" }))).toBe(false);
    expect(await fits(steady(21, { grow: "2 mm", shrink: "2 mm" }))).toBe(true);
    expect(await fits(steady(21, { grow: "1 mm", shrink: "1 mm" }))).toBe(false);
    expect(await fits(steady(22, {}))).toBe(false);
  });

  test("is on one look wherever a motif is laid, and no engine is asked", async () => {
    const both = (back: number): Garment =>
      smallGarment({
        steady: "100 %",
        pieces: { front: strip(20, 22), sleeve: strip(20, 21), back: strip(20, back) },
        motifs: { ropes: cable({ allow: [7, 11] }), waves: band(4, 7) },
        place: [laid("waves", "sleeve"), laid("ropes", "front"), laid("ropes", "back")],
      });
    expect([await fits(both(21)), await fits(both(33))]).toEqual([false, true]);
  });

  test("keeps its length over motifs one above the other, as an engine tells", async () => {
    const stacked = (
      lower: number,
      upper: number,
      steady: string,
    ): Promise<readonly [boolean, readonly number[]]> =>
      byEngine(
        smallGarment({
          steady,
          gauge: { ground: { stitches: 20, rows: 25, over: "10 cm", within: "2 %" } },
          pieces: { front: strip(20, 20, { marks: { middle: "40 mm" }, grow: "8 mm" }) },
          motifs: { lower: band(4, lower), upper: band(4, upper) },
          place: [
            laid("lower", "front", { top: 1 }, { to: "middle" }),
            laid("upper", "front", { bottom: 1 }, { from: "middle" }),
          ],
        }),
      );
    // 88 mm are 22 rows as told, and 21.6 of rows 2 % higher: a row more is left to it, and not two.
    expect((await stacked(10, 9, "100 %"))[0]).toBe(true);
    expect((await stacked(10, 10, "100 %"))[0]).toBe(false);
    expect((await stacked(10, 10, "0 %"))[0]).toBe(true);
  });

  test("takes no more than is on hand", async () => {
    const stocked = (cord: number): Garment =>
      one(strip(6, 20), plait(4, 3), {}, { steady: "0 %", "on hand": { cord: `${5 * cord} mm` } });
    expect((await byEngine(stocked(66)))[0]).toBe(false);
    expect((await byEngine(stocked(67)))[0]).toBe(true);
  });

  test("has some look and some layout for everything", async () => {
    const tight = (to: string): Garment =>
      one(strip(6, 20), plait(4, 3, { ease: { from: "1 %", to } }), {}, { steady: "0 %" });
    expect([await fits(tight("5 %")), await fits(tight("6 %"))]).toEqual([false, true]);
  });
});

describe("a motif that grows", () => {
  /** A crossed cord that may reach a needle further from one repeat to the next, on a piece that widens by 2 needles. */
  const growing: LikeCordEntry = { ...plait(4, 3), spread: { allow: "3..4", change: 1 } as never };
  const widening = (needles: number): PieceEntry => ({
    outline: [
      { height: "0 mm", width: `${5 * needles} mm` },
      { height: "48 mm", width: `${5 * needles} mm` },
      { height: "48 mm", width: "200 mm" },
      { height: "80 mm", width: "200 mm" },
    ],
  });

  const garment = (needles: number, waves = 21): Garment =>
    smallGarment({
      pieces: { front: strip(20, waves), sleeve: widening(needles) },
      motifs: { waves: band(4, 7), ornament: growing },
      place: [laid("waves", "front"), laid("ornament", "sleeve")],
    });

  test("fits by itself without an engine, as far as its narrowest look", async () => {
    expect([await fits(garment(6)), await fits(garment(4)), await fits(garment(6, 20))]).toEqual([
      true,
      false,
      false,
    ]);
  });

  describe("on a piece with another motif above, which stands alike on a second piece", () => {
    const stack = (bottom: string): PlacementEntry[] => [
      laid("ornament", "front", {}, { to: "middle" }),
      laid("other", "front", { bottom, top: "0..5" }, { from: "middle" }),
    ];
    const second = laid("other", "back", { bottom: "0..0", top: "0..5" });
    const pieces = { front: strip(20, 32, { marks: { middle: "80 mm" } }), back: strip(20, 20) };
    const motifs = { ornament: growing, other: band(4, 6) };
    const match = { motif: "other", on: ["front", "back"], mark: "bind-off" };

    const alone = (bottom: string): Garment =>
      smallGarment({ pieces, motifs, place: [...stack(bottom), second], match: [match] });

    /** The same among motifs on other pieces, two of which stand alike as well. */
    const amongOthers = (bottom: string): Garment =>
      smallGarment({
        pieces: { belt: strip(20, 21), cuff: strip(20, 21), hood: strip(20, 28), ...pieces },
        motifs: { waves: band(4, 7), third: band(4, 3), ...motifs },
        place: [
          laid("waves", "belt"),
          ...stack(bottom),
          laid("third", "cuff"),
          second,
          laid("waves", "hood"),
        ],
        match: [{ motif: "waves", on: ["belt", "hood"], mark: "bind-off" }, match],
      });

    test("is asked of an engine", async () => {
      // At the bind-off the second piece is 2 rows into a repeat of 6; 12 rows are so above a margin of 4.
      expect((await byEngine(alone("1..3")))[0]).toBe(false);
      expect((await byEngine(alone("1..4")))[0]).toBe(true);
    });

    test("is asked with what it is tied to, and with nothing else", async () => {
      const answer = await byEngine(amongOthers("1..4"));
      expect(answer).toEqual(await byEngine(alone("1..4")));
      expect(answer[1]).toHaveLength(1);
      expect((await byEngine(amongOthers("1..3")))[0]).toBe(false);
    });
  });
});

describe("an engine that comes to no answer", () => {
  const asked = (): Garment =>
    smallGarment({
      pieces: { sleeve: strip(20, 20), front: strip(20, 12) },
      motifs: { ornament: plait(4, 3) },
      place: [laid("ornament", "sleeve"), laid("ornament", "front")],
      match: [{ motif: "ornament", on: ["sleeve", "front"], mark: "bind-off" }],
      "on hand": { cord: "10 m" },
    });

  test.each<[string, Outcome]>([
    ["it is tired", { engine: "some", status: "failed", reason: "it is tired" }],
    ["the time allowed was up", { engine: "some", status: "stopped", nodes: 3 }],
  ])("leaves it undecided, and says why: %s", async (reason, outcome) => {
    const answer = createAnyFit(asked(), ending(outcome))(asked());
    const error = await answer.then(
      () => undefined,
      (thrown: unknown) => thrown,
    );
    expect(error).toBeInstanceOf(Undecided);
    expect(error).toMatchObject({ name: "Undecided", message: reason });
  });

  test("says that nothing fits where it is sure", async () => {
    const engine = ending({ engine: "some", status: "infeasible", nodes: 1 });
    expect(await createAnyFit(asked(), engine)(asked())).toBe(false);
  });

  test("is told its limits anew each time", async () => {
    const told: (EngineOptions | undefined)[] = [];
    const engine: Engine = (program, options) => {
      told.push(options);
      return simplexEngine(program, options);
    };
    let left = 3000;
    const anyFit = createAnyFit(asked(), engine, () => ({ timeLimitMs: left-- }) as EngineOptions);
    await anyFit(asked());
    await anyFit(asked());
    expect(told).toMatchObject([{ timeLimitMs: 3000 }, { timeLimitMs: 2999 }]);
    await createAnyFit(asked(), engine)(asked());
    expect(told[2]).toEqual({});
  });
});

test("a garment whose rules changed is answered anew, and what stayed the same as before", async () => {
  const garment = one(strip(6, 19));
  const anyFit = createAnyFit(garment, none);
  const grown = { ...garment, pieces: garment.pieces.map((piece) => ({ ...piece, growMm: 4 })) };
  const looser = {
    ...garment,
    motifs: garment.motifs.map((motif) => ({
      ...motif,
      quantities: motif.quantities.map((each) =>
        each.name === "interval" ? { ...each, allowed: only(4, 19) } : each,
      ),
    })),
  };
  const answers: boolean[] = [];
  for (const each of [garment, grown, garment, looser, garment]) answers.push(await anyFit(each));
  expect(answers).toEqual([false, true, false, false, false]);
});
