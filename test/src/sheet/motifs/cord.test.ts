import { describe, expect, test } from "vitest";
import { motifActions } from "../../../../src/sheet/motif-actions.ts";
import type { Action } from "../../../../src/sheet/sheet.ts";
import type { CordEntry, PlacementEntry } from "../../../support/garment-file.ts";
import { laid, plait, smallGarment, strip } from "../../../support/small-garment.ts";
import { fitOf } from "../support/small-fits.ts";

/** What a motif asks for on a strip of twenty needles, row by row. */
async function actionsOf(
  cord: CordEntry | ReturnType<typeof plait>,
  rows: number,
  more: Partial<PlacementEntry> = {},
): Promise<readonly (readonly [row: number, ...actions: Action[]])[]> {
  const fit = await fitOf(
    smallGarment({
      pieces: { panel: strip(20, rows) },
      motifs: { cord },
      place: [laid("cord", "panel", {}, more)],
    }),
  );
  return [...motifActions(fit, "panel")].map(([row, actions]) => [row, ...actions]);
}

const whose = { motif: "cord", placement: 1, column: 1 };

test("two arms of one folded cord are hung at its middle, then by their counts, and closed at their ends", async () => {
  // Stitches are 5 mm wide, rows 4 mm high, cord stitches 5 mm long. The lead-in goes 2 needles across and 4 rows up,
  // 18.9 mm, four cord stitches; a crossing 5 needles across and 4 rows up, 29.7 mm, six of them.
  const hang = (strand: string, count: number, needle: number) => ({
    act: "hang",
    strand,
    count,
    needle,
    ...whose,
  });
  const finish = (strand: string, how: string, needle: number) => ({
    act: "finish",
    strand,
    how,
    loops: 3,
    needle,
    ...whose,
  });
  expect(await actionsOf(plait(4, 3), 12)).toEqual([
    [
      0,
      { ...hang("left", 0, -1), folded: true, with: "right" },
      { ...hang("right", 0, 1), folded: true, with: "left" },
    ],
    [4, hang("left", 4, -3), hang("right", 4, 3)],
    [8, hang("left", 6, 3), hang("right", 6, -3)],
    [
      12,
      hang("left", 6, -3),
      // The first arm ends where the cord was cast on, and a cord can be unravelled from its last round only.
      finish("left", "cut", -3),
      hang("right", 6, 3),
      finish("right", "unravel", 3),
    ],
  ]);
});

describe("strands that are not folded", () => {
  /** Straight up on these needles, five rows of 4 mm and four cord stitches of 5 mm each time. */
  const straight = (order?: readonly string[]): CordEntry => ({
    kind: "cord",
    quantities: {},
    lead: 0,
    repeat: 5,
    strands: { a: { start: [-2, 0], repeat: [[-2, 5]] }, b: { start: [3, 0], repeat: [[3, 5]] } },
    ...(order && { order }),
  });
  const inShort = (actions: readonly Action[]): readonly string[] =>
    actions.map((one) => {
      if (one.act === "hang") return `${one.strand} ${one.count} on ${one.needle}`;
      return one.act === "finish" ? `${one.strand} ${one.how}` : one.act;
    });

  test("begin each with a hanging of its own and are unravelled at their ends", async () => {
    const [start, end] = await actionsOf(straight(), 5);
    expect(start).toEqual([
      0,
      { act: "hang", strand: "a", count: 0, needle: -2, ...whose },
      { act: "hang", strand: "b", count: 0, needle: 3, ...whose },
    ]);
    expect(inShort(end!.slice(1) as Action[])).toEqual(["a 4 on -2", "a unravel", "b 4 on 3", "b unravel"]);
  });

  test("are hung in the order of work, first what lies under", async () => {
    const [start] = await actionsOf(straight(["b", "a"]), 5);
    expect(inShort(start!.slice(1) as Action[])).toEqual(["b 0 on 3", "a 0 on -2"]);
  });

  test("change places in the order of work at a row of which the motif says so", async () => {
    const [, end] = await actionsOf(
      {
        kind: "cord",
        quantities: {},
        lead: 0,
        repeat: 5,
        strands: {
          a: { start: [-2, 0], repeat: [[-2, 5, { turn: 2 }]] },
          b: { start: [3, 0], repeat: [[3, 5, { turn: 3 }]] },
          c: { start: [5, 0], repeat: [[5, 5, { turn: 1 }]] },
        },
      },
      5,
    );
    const hung = inShort(end!.slice(1) as Action[]).filter((one) => one.includes(" on "));
    expect(hung).toEqual(["c 4 on 5", "a 4 on -2", "b 4 on 3"]);
  });

  test("are hung row by row, also where one of them is hung at more rows than the other", async () => {
    const uneven = await actionsOf(
      {
        kind: "cord",
        quantities: {},
        lead: 0,
        repeat: 10,
        strands: {
          a: {
            start: [-2, 0],
            repeat: [
              [-2, 5],
              [-2, 10],
            ],
          },
          b: { start: [3, 0], repeat: [[3, 10]] },
        },
        order: ["b", "a"],
      },
      10,
    );
    expect(uneven.map(([row, ...actions]) => [row, ...inShort(actions)])).toEqual([
      [0, "b 0 on 3", "a 0 on -2"],
      [5, "a 4 on -2"],
      [10, "b 8 on 3", "b unravel", "a 4 on -2", "a unravel"],
    ]);
  });
});

test("a stretch whose count is fixed stands off as a loop, and no other is said to", async () => {
  const loops = await actionsOf(
    {
      kind: "cord",
      quantities: {},
      lead: 0,
      repeat: 7,
      strands: {
        cord: {
          start: [1, 0],
          repeat: [
            [1, 2, { count: 9 }],
            [1, 7],
          ],
        },
      },
    },
    7,
  );
  const hang = { act: "hang", strand: "cord", needle: 1, ...whose };
  expect(loops.map(([row, first]) => [row, first])).toEqual([
    [0, { ...hang, count: 0 }],
    [2, { ...hang, count: 9, loop: true }],
    [7, { ...hang, count: 4 }],
  ]);
});

describe("columns side by side", () => {
  // One cord right of each column's centre, two needles wide to the right.
  const leaning: CordEntry = {
    kind: "cord",
    quantities: {},
    lead: 0,
    repeat: 5,
    strands: { cord: { start: [2, 0], repeat: [[2, 5]] } },
  };
  const needles = (actions: readonly (readonly [row: number, ...actions: Action[]])[]) =>
    actions[0]!.slice(1).map((one) => {
      const action = one as Action;
      return action.act === "hang" ? [action.column, action.needle] : [];
    });

  test("are told from left to right, each in its own place", async () => {
    // Two needles wide and six between, so their centres lie four to each side; the cord is the second to the right.
    expect(needles(await actionsOf(leaning, 5, { columns: 2, gap: 6 }))).toEqual([
      [1, -3],
      [2, 6],
    ]);
  });

  test("stand as a whole about the centre where one is the mirror image of the other", async () => {
    expect(needles(await actionsOf(leaning, 5, { columns: 2, gap: 6, mirror: true }))).toEqual([
      [1, -4],
      [2, 4],
    ]);
  });
});

test("an unfinished repeat is hung as far as there is room, and the strands are closed there", async () => {
  // Lead-in of 4 rows, a repeat of 8 to row 12, and 4 rows of the next: one crossing more.
  const cut = await actionsOf(plait(4, 3), 16, {
    repeats: 1,
    unfinished: "part",
    margins: { bottom: 0, top: "0..9", side: { least: 0 } },
  });
  expect(cut.map(([row, ...actions]) => [row, ...actions.map(({ act }) => act)])).toEqual([
    [0, "hang", "hang"],
    [4, "hang", "hang"],
    [8, "hang", "hang"],
    [12, "hang", "hang"],
    [16, "hang", "finish", "hang", "finish"],
  ]);
});
