import { describe, expect, test } from "vitest";
import { knitPhrase, phrasesOf } from "../../../../src/sheet/document/phrases.ts";
import type { Action, FinishAction, HangAction } from "../../../../src/sheet/sheet.ts";

/** Said of a piece whose motifs have one column, or several. */
const said = (actions: readonly Action[], columns = 1): readonly string[] =>
  phrasesOf(actions, () => columns);

test("plain rows are counted, with the row they end at and where the carriage rests then", () => {
  expect(knitPhrase({ kind: "knit", rows: 7, toRow: 22, carriage: "right" })).toBe(
    "knit 7 rows, to row 22, carriage right",
  );
  expect(knitPhrase({ kind: "knit", rows: 1, toRow: 3, carriage: "left" })).toBe(
    "knit 1 row, to row 3, carriage left",
  );
});

describe("casting on, shaping and binding off", () => {
  test("name needles or a side, and count one stitch or several", () => {
    expect(
      said([
        { act: "cast-on", from: -10, to: 9 },
        { act: "cast-on", side: "left", needles: 3 },
        { act: "increase", side: "right", needles: 1 },
        { act: "decrease", side: "left", needles: 1 },
        { act: "bind-off", side: "right", needles: 2 },
        { act: "bind-off", from: -4, to: 4, yarn: "separate" },
        { act: "bind-off", from: 5, to: 5 },
      ]),
    ).toEqual([
      "cast on L10 to R9",
      "cast on 3 stitches at the left",
      "increase 1 stitch at the right",
      "decrease 1 stitch at the left",
      "bind off 2 stitches at the right",
      "bind off L4 to R4 with a separate length of yarn",
      "bind off all stitches, R5",
    ]);
  });

  test("say where it is the neck's edge and not the outer one", () => {
    expect(
      said([
        { act: "decrease", side: "left", needles: 1, edge: "neck" },
        { act: "bind-off", side: "right", needles: 3, edge: "neck" },
      ]),
    ).toEqual(["decrease 1 stitch at the neck edge (left)", "bind off 3 stitches at the neck edge (right)"]);
  });

  test("that are alike at both sides are said once", () => {
    const [left, right] = (["left", "right"] as const).map(
      (side) => ({ act: "increase", side, needles: 1 }) as const,
    );
    expect(said([left!, right!])).toEqual(["increase 1 stitch at each side"]);
    expect(
      said([
        { ...left!, act: "decrease" },
        { ...right!, act: "decrease" },
      ]),
    ).toEqual(["decrease 1 stitch at each side"]);
    // Nothing that follows is swallowed.
    expect(said([left!, right!, left!])).toEqual([
      "increase 1 stitch at each side",
      "increase 1 stitch at the left",
    ]);
  });

  test("that differ are said one by one", () => {
    const increase = { act: "increase", side: "left", needles: 1 } as const;
    expect(said([increase, { act: "decrease", side: "right", needles: 1 }])).toEqual([
      "increase 1 stitch at the left",
      "decrease 1 stitch at the right",
    ]);
    expect(said([increase, increase])).toEqual([
      "increase 1 stitch at the left",
      "increase 1 stitch at the left",
    ]);
    // The outer edge of a half and its neck edge lie at its two sides.
    expect(
      said([
        { act: "decrease", side: "left", needles: 1 },
        { act: "decrease", side: "right", needles: 1, edge: "neck" },
      ]),
    ).toEqual(["decrease 1 stitch at the left", "decrease 1 stitch at the neck edge (right)"]);
    // Several stitches wait for the carriage, so they never move at both sides of one row.
    expect(
      said([
        { act: "bind-off", side: "left", needles: 2 },
        { act: "bind-off", side: "right", needles: 2 },
      ]),
    ).toEqual(["bind off 2 stitches at the left", "bind off 2 stitches at the right"]);
  });

  test("of two halves name the needles that wait and that come back", () => {
    expect(
      said([
        { act: "hold", from: -20, to: -5 },
        { act: "work", from: 7, to: 7 },
      ]),
    ).toEqual([
      "put L20 to L5 on hold",
      "bring the carriage back to this side, join the yarn again and take R7 back to work",
    ]);
  });
});

const hang = (strand: string, needle: number, more: Partial<HangAction> = {}): HangAction => ({
  act: "hang",
  strand,
  count: 0,
  needle,
  motif: "plait",
  placement: 1,
  column: 1,
  ...more,
});

describe("a hanging", () => {
  test("says its strand, how far the cord is counted and the needle", () => {
    expect(
      said([hang("left", -3, { count: 5 }), hang("right", 1), hang("cord", 2, { count: 9, loop: true })]),
    ).toEqual([
      "left: count 5, hang both legs on L3",
      "right: hang the first cord stitch, both legs, on R1",
      "cord: count 9 for a standing loop, hang both legs on R2",
    ]);
  });

  test("names its column where there are several", () => {
    expect(said([hang("left", -3, { count: 5, column: 2 })], 2)).toEqual([
      "column 2, left: count 5, hang both legs on L3",
    ]);
  });

  const one = hang("left", -1, { folded: true, with: "right" });
  const other = hang("right", 1, { folded: true, with: "left" });
  const middle =
    "hang the middle of the folded cord: two neighbouring cord stitches, both legs of each, left on L1 and right on R1";

  test("of both arms at the middle of a folded cord is one", () => {
    expect(said([one, other])).toEqual([middle]);
    expect(said([one, other, hang("more", 4)])).toEqual([
      middle,
      "more: hang the first cord stitch, both legs, on R4",
    ]);
    expect(
      said(
        [
          { ...one, column: 3 },
          { ...other, column: 3 },
        ],
        3,
      ),
    ).toEqual([`column 3, ${middle}`]);
  });

  test("of one arm, where another strand comes between, says whose other arm it is", () => {
    const alone = (strand: string, needle: string, fold: string): string =>
      `${strand}: hang a cord stitch at the middle of the cord folded with ${fold}, both legs, on ${needle}`;
    expect(said([one, hang("third", 4), other])).toEqual([
      alone("left", "L1", "right"),
      "third: hang the first cord stitch, both legs, on R4",
      alone("right", "R1", "left"),
    ]);
    // Arms of two cords, one in each column or placement, are no two arms of one.
    const apart = [alone("left", "L1", "right"), alone("right", "R1", "left")];
    expect(said([one, { ...other, column: 2 }])).toEqual(apart);
    expect(said([one, { ...other, placement: 2 }])).toEqual(apart);
    expect(said([one, hang("third", 4, { folded: true, with: "fourth" })])).toEqual([
      alone("left", "L1", "right"),
      alone("third", "R4", "fourth"),
    ]);
  });

  test("is told apart from the other arm's by who is folded with whom", () => {
    const third = hang("third", 4, { folded: true, with: "left" });
    expect(said([one, third])[0]).toContain("left: hang a cord stitch");
    expect(said([third, { ...one, with: "fourth" }])[0]).toContain("third: hang a cord stitch");
  });
});

describe("the end of a strand", () => {
  const end = (how: FinishAction["how"], column = 1): FinishAction => ({
    act: "finish",
    strand: "left",
    how,
    loops: 4,
    needle: -3,
    motif: "plait",
    placement: 1,
    column,
  });

  test("is unravelled, or cut and picked back, and its loops are hung", () => {
    expect(said([end("unravel"), end("cut")])).toEqual([
      "left: unravel the spare cord down to this hanging and hang its 4 open loops on L3",
      "left: cut the spare cord two rounds beyond this hanging, pick it back and hang its 4 loops on L3",
    ]);
    expect(said([end("unravel", 2)], 2)[0]).toContain("column 2, left: unravel");
  });

  test("is known by the motif's own columns", () => {
    expect(phrasesOf([end("cut")], (motif) => (motif === "plait" ? 2 : 1))[0]).toContain("column 1, left:");
  });
});

describe("a crossing", () => {
  const cross = (from: number, to: number, left: number, right: number, over: "left" | "right"): Action => ({
    act: "cross",
    from,
    to,
    left,
    right,
    over,
    motif: "rope",
    placement: 1,
    column: 1,
  });

  test("names both groups, and first the one that comes to lie in front", () => {
    expect(said([cross(-2, 2, 2, 2, "left"), cross(3, 6, 2, 2, "right")])).toEqual([
      "cross 2 over 2 on L2 to R2: lift L2 to L1 and R1 to R2, put the stitches of L2 to L1 back first",
      "cross 2 over 2 on R3 to R6: lift R3 to R4 and R5 to R6, put the stitches of R5 to R6 back first",
    ]);
  });

  test("of groups that differ says how many come to lie over how many", () => {
    // Two at the left of R1, over the one to their right; then the same with that one over them.
    expect(said([cross(-2, 1, 2, 1, "left")])).toEqual([
      "cross 2 over 1 on L2 to R1: lift L2 to L1 and R1, put the stitches of L2 to L1 back first",
    ]);
    expect(said([cross(-2, 1, 2, 1, "right")])).toEqual([
      "cross 1 over 2 on L2 to R1: lift L2 to L1 and R1, put the stitches of R1 back first",
    ]);
  });
});

test("what an ornament is worked with is said in its own words, each act by its own", () => {
  const whose = { motif: "dots", placement: 1, column: 1 };
  const firsts = said([
    { act: "out", needle: -3, onto: -4, ...whose },
    { act: "in", needle: -3, from: -4, ...whose },
    {
      act: "pattern",
      from: -4,
      to: 4,
      repeat: 2,
      repeats: 3,
      rows: 4,
      stitches: 8,
      across: 1,
      edge: { left: 0, right: 0 },
      ...whose,
    },
    { act: "plain", from: -4, to: 4, ...whose },
  ]);
  expect(firsts.map((phrase) => phrase.split(" ").slice(0, 2).join(" "))).toEqual([
    "put the",
    "bring L3",
    "dots, repeat",
    "dots ends:",
  ]);
});
