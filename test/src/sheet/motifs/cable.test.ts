import { describe, expect, test } from "vitest";
import { motifActions } from "../../../../src/sheet/motif-actions.ts";
import { cableActions } from "../../../../src/sheet/motifs/cable.ts";
import type { Action } from "../../../../src/sheet/sheet.ts";
import type { CableEntry, PlacementEntry } from "../../../support/garment-file.ts";
import { cable, laid, smallGarment, strip } from "../../../support/small-garment.ts";
import { fitOf } from "../support/small-fits.ts";

async function actionsOf(
  rope: CableEntry | ReturnType<typeof cable>,
  rows: number,
  more: Partial<PlacementEntry> = {},
): Promise<readonly (readonly [row: number, ...actions: Action[]])[]> {
  const fit = await fitOf(
    smallGarment({
      pieces: { panel: strip(40, rows) },
      motifs: { rope },
      place: [laid("rope", "panel", {}, more)],
    }),
  );
  return [...motifActions(fit, "panel")].map(([row, actions]) => [row, ...actions]);
}

const laidOver = { bottom: 0, top: "0..9", side: { least: 0 } };

const whose = { motif: "rope", placement: 1, column: 1 };

test("a cable is crossed at its first row and at the end of each repeat", async () => {
  const cross = { act: "cross", from: -2, to: 2, left: 2, right: 2, over: "left", ...whose };
  expect(await actionsOf(cable(4), 8)).toEqual([
    [0, cross],
    [4, cross],
    [8, cross],
  ]);
});

describe("two cables of one motif, with ladders", () => {
  // Ladder at L1, one stitch over two right of it: R1 and R2 to R3; at the left two over one: L4 to L3 and L2.
  const pair: CableEntry = {
    kind: "cable",
    lead: 2,
    repeat: 4,
    cables: {
      right: { cross: [1, 2], over: "right", start: [1, 0], "lead-in": [[1, 2]], repeat: [[1, 4]] },
      left: { cross: [2, 1], over: "left", start: [-2, 0], repeat: [[-2, 1]] },
    },
    ladders: [-1, 4],
  };

  const inShort = (action: Action): string =>
    action.act === "cross"
      ? `${action.left} and ${action.right} on ${action.from} to ${action.to}, ${action.over} over`
      : action.act === "out"
        ? `${action.needle} out, onto ${action.onto}`
        : action.act === "in"
          ? `${action.needle} in, from ${action.from}`
          : action.act;
  const shortly = (rows: readonly (readonly [row: number, ...actions: Action[]])[]) =>
    rows
      .map(([row, ...actions]) => [row, ...actions.map(inShort)] as const)
      .toSorted(([one], [other]) => one - other);
  const right = "1 and 2 on 1 to 3, right over";
  const left = "2 and 1 on -4 to -2, left over";

  test("have their ladders before anything is crossed and bring them back when all is", async () => {
    expect(shortly(await actionsOf(pair, 10))).toEqual([
      [0, "-1 out, onto -2", "4 out, onto 5", right, left],
      [2, right],
      [3, left],
      [6, right],
      [7, left],
      [10, right, "-1 in, from -2", "4 in, from 5"],
    ]);
  });

  test("of an unfinished repeat go on with what there is room for, and so do the ladders", async () => {
    // Whole repeats end at row 10; one row more has room for the left cable's next crossing and not the right one's.
    const cut = await actionsOf(pair, 11, { repeats: 2, unfinished: "part", margins: laidOver });
    expect(shortly(cut).slice(-2)).toEqual([
      [10, right],
      [11, left, "-1 in, from -2", "4 in, from 5"],
    ]);
  });

  test("bring their ladders back at the motif's last row where they are crossed earlier", async () => {
    const early: CableEntry = {
      kind: "cable",
      lead: 0,
      repeat: 6,
      cross: [1, 1],
      crossings: { start: [0, 0], repeat: [[0, 4]] },
      ladders: [2],
    };
    expect(shortly(await actionsOf(early, 6))).toEqual([
      [0, "2 out, onto 3", "1 and 1 on -1 to 1, left over"],
      [4, "1 and 1 on -1 to 1, left over"],
      [6, "2 in, from 3"],
    ]);
  });

  test("in two columns are told column by column, the mirrored one with its groups changed about", async () => {
    const rows = shortly(await actionsOf(pair, 6, { columns: 2, gap: 2, mirror: true }));
    // Nine needles wide, the stitch beyond the ladder counted, and two between: centres at six to each side.
    expect(rows[0]).toEqual([
      0,
      "-7 out, onto -8",
      "-3 out, onto -2",
      "1 and 2 on -6 to -4, right over",
      "2 and 1 on -10 to -8, left over",
      "7 out, onto 8",
      "3 out, onto 2",
      "2 and 1 on 4 to 6, left over",
      "1 and 2 on 8 to 10, right over",
    ]);
    const columns = (await actionsOf(pair, 6, { columns: 2, gap: 2, mirror: true }))[0]!
      .slice(1)
      .map((one) => (one as { column: number }).column);
    expect(columns).toEqual([1, 1, 1, 1, 2, 2, 2, 2]);
  });

  test("are crossed as wide as their own section has them", async () => {
    const { placements } = await fitOf(
      smallGarment({
        pieces: { panel: strip(40, 8) },
        motifs: { rope: cable(4) },
        place: [laid("rope", "panel")],
      }),
    );
    const [section] = placements[0]!.sections;
    const { look } = section!;
    const wider = {
      ...look,
      trace: { ...look.trace, cables: look.trace.cables.map((one) => ({ ...one, left: 3, right: 3 })) },
    };
    const grown = {
      ...placements[0]!,
      sections: [
        { ...section!, repeats: 1 },
        { ...section!, repeats: 1, look: wider },
      ],
    };
    expect(cableActions(grown, 1, 1).map(([row, action]) => [row, inShort(action)])).toEqual([
      [0, "2 and 2 on -1 to 3, left over"],
      [4, "2 and 2 on -1 to 3, left over"],
      [8, "3 and 3 on -2 to 4, left over"],
    ]);
  });
});
