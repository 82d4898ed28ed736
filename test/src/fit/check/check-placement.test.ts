import { beforeAll, describe, expect, test } from "vitest";
import type { CountedPiece } from "../../../../src/cloth/counted-piece.ts";
import { checkChoices, checkPlace, checkPlacement } from "../../../../src/fit/check/check-placement.ts";
import type { Fit, FittedPlacement } from "../../../../src/fit/fit.ts";
import type { Garment, Placement, SideMargins } from "../../../../src/garment/garment.ts";
import {
  fitOf,
  hook,
  lookWith,
  placed,
  section,
  straight,
  stretch,
  swing,
  withNeedles,
  written,
} from "./support/laid-by-hand.ts";

const where = "swing on panel";

/** Nine repeats of 6 rows from row 2 to row 56 of 60, two needles to both sides of the centre of 20. */
let garment: Garment;
let sound: FittedPlacement;
let piece: CountedPiece;

beforeAll(() => {
  const spread = { ...swing.quantities.spread, change: 2 };
  garment = written({ swing: { ...swing, quantities: { ...swing.quantities, spread } } });
  piece = straight(60, 10);
  const look = lookWith(garment.motifs[0]!, { interval: 3, spread: 2 }, [stretch(3, 3, 3)]);
  sound = placed([section(look, 9)], {
    firstRow: 2,
    lastRow: 56,
    margins: { bottom: 2, top: 4, left: 8, right: 8 },
    panel: { centres: [0], mirrored: 0, leftEdge: -2, rightEdge: 2 },
  });
});

const margins = (more: Partial<FittedPlacement["margins"]>): Pick<FittedPlacement, "margins"> => ({
  margins: { ...sound.margins, ...more },
});

/** What is found of the sound placement with something changed, or on another piece. */
const found = (change: Partial<FittedPlacement> = {}, on = piece): readonly string[] => {
  const changed = { ...sound, ...change };
  const fit = fitOf(garment, [sound], [on]);
  const breaches = checkPlacement(garment, fit, changed);
  expect(new Set(breaches.map(({ rule }) => rule))).toEqual(new Set(breaches.length > 0 ? [where] : []));
  return breaches.map((one) => one.found);
};

/** The same placement with these sections, whose first look is the one that is told. */
function inSections(...sections: FittedPlacement["sections"]): readonly string[] {
  const fit = fitOf(garment, [placed(sections)], [piece]);
  return checkPlacement(garment, fit, { ...sound, sections }).map((one) => one.found);
}

describe("the independent check of where a motif lies", () => {
  test("finds nothing of a sound placement", () => {
    expect(found()).toEqual([]);
  });

  test("finds a piece or a look that is missing", () => {
    const missing = [{ rule: where, found: "its piece or its look is missing" }];
    const fit = fitOf(garment, [sound], [piece]);
    expect(checkPlacement(garment, { ...fit, looks: [] }, sound)).toEqual(missing);
    expect(checkPlacement(garment, { ...fit, pieces: [] }, sound)).toEqual(missing);
    const others: Fit = { ...fit, pieces: [straight(60, 10, { name: "back" })] };
    expect(checkPlacement(garment, others, sound)).toEqual(missing);
    const [look] = fit.looks;
    const named = { ...look!, motif: { ...look!.motif, name: "plait" } };
    expect(checkPlacement(garment, { ...fit, looks: [named] }, sound)).toEqual(missing);
  });

  test("takes its own piece and its own look among others", () => {
    const fit = fitOf(garment, [sound], [straight(9, 1, { name: "back" }), piece]);
    const [look] = fit.looks;
    const other = { ...look!, motif: { ...look!.motif, name: "plait" } };
    expect(checkPlacement(garment, { ...fit, looks: [other, look!] }, sound)).toEqual([]);
  });

  test("finds a placement without a section", () => {
    expect(found({ sections: [] })).toEqual(["has no section"]);
  });

  test("finds a first row that its bottom margin does not lead to", () => {
    expect(found({ firstRow: 3, lastRow: 57 })).toEqual([
      "first row is told as 3, and it is 2",
      "top margin is told as 4, and it is 3",
    ]);
    expect(found(margins({ bottom: 3 }))).toEqual(["first row is told as 2, and it is 3"]);
  });

  test("counts the margins from the marks of its field", () => {
    const within = { ...garment.placements[0]!, from: "low", to: "high" };
    const marks = new Map([
      ["low", 1],
      ["high", 59],
    ]);
    const laid = { ...sound, ...margins({ bottom: 1, top: 3 }) };
    expect(checkPlace(within, laid, { ...piece, marks })).toEqual([]);
    expect(checkPlace(within, sound, { ...piece, marks }).map((one) => one.found)).toEqual([
      "first row is told as 2, and it is 3",
      "top margin is told as 4, and it is 3",
    ]);
  });

  test("finds rows that the motif does not have", () => {
    expect(found({ lastRow: 55, ...margins({ top: 5 }) })).toEqual([
      "rows of the motif is told as 53, and it is 54",
    ]);
  });

  test("finds a top margin that is one row off", () => {
    expect(found(margins({ top: 5 }))).toEqual(["top margin is told as 5, and it is 4"]);
  });
});

describe("the independent check of a placement's sections", () => {
  const lookOf = (spread: number, motif = garment.motifs[0]!) =>
    lookWith(motif, { interval: 3, spread }, [stretch(2 * spread - 1, 3, 2 * spread - 1)]);

  test("finds a look that is not the one told", () => {
    const [{ look, repeats }] = sound.sections as [FittedPlacement["sections"][number]];
    const copy = section({ ...look }, repeats);
    expect(found({ sections: [copy] })).toEqual(["begins with another look than is told"]);
  });

  test("finds repeats that do not add up", () => {
    expect(found({ repeats: 8 })).toEqual(["8 repeats are told, its sections have 9"]);
  });

  test("lets a motif grow, each stretch between its sections counted", () => {
    const [low, high] = [lookOf(2), lookOf(3)];
    // From -2 to +3 is 4 needles across, and 4 cord stitches are 20 mm over 18.36.
    expect(inSections(section(low, 4), section(high, 5, [stretch(4, 3, 4)]))).toEqual([
      // What is told of its sides is true of the narrower look.
      ...beside(26, 56),
      "is told to lie between -2 and 2, and it lies between -3 and 3",
    ]);
    expect(inSections(section(low, 4), section(high, 5))[0]).toBe(
      "no count for 4 needles across and 3 rows up",
    );
  });

  /** The wider section of two leaves 7 needles where 8 are told. */
  const beside = (from: number, to: number): readonly string[] =>
    Array.from(
      { length: to - from + 1 },
      (_, index) => `row ${from + index}: only 7 and 7 needles beside column 1`,
    );

  test("holds the stretches between sections of a cord only, and those within once", () => {
    const [low, high] = [lookOf(2), { ...lookOf(2), segments: [] }];
    // Two repeats of the look by itself, and the stretch to it.
    expect(inSections(section(low, 4), section(high, 5))).toEqual(
      Array.from({ length: 5 }, () => "no count for 3 needles across and 3 rows up"),
    );
  });

  test("finds a section of no repeat, but for the first", () => {
    const look = lookOf(2);
    expect(inSections(section(look, 0), section(look, 9))).toEqual([]);
    expect(inSections(section(look, 8), section(look, 1))).toEqual([]);
    expect(inSections(section(look, 9), section(look, 0))).toEqual(["has a section of no repeat"]);
    expect(inSections(section(look, 4), section(look, 0), section(look, 5))).toEqual([
      "has a section of no repeat",
    ]);
  });

  test("finds a section of another motif", () => {
    const other = lookOf(2, { ...garment.motifs[0]!, like: "crossed cord" });
    expect(inSections(section(lookOf(2), 4), section(other, 5))).toEqual(["has a section of another motif"]);
    expect(inSections(section(lookOf(2), 3), section(lookOf(2), 3), section(other, 3))).toEqual([
      "has a section of another motif",
    ]);
  });

  test("holds every later look to its limits, and each step to how far it may go", () => {
    const wide = lookWith(garment.motifs[0]!, { interval: 3, spread: 1 }, [stretch(1, 3, 2)]);
    const found = inSections(section(lookOf(2), 4), section(wide, 5, [stretch(2, 3, 2)]));
    expect(found).toEqual(["1 is not allowed"]);
    const far = inSections(section(lookOf(2), 4), section(lookOf(5), 5, [stretch(6, 3, 5)]));
    expect(far).toContain("spread goes from 2 to 5 in section 2, by more than 2");
  });
});

describe("the independent check of the needles under a motif", () => {
  test("finds every row that leaves less beside it than is told", () => {
    expect(found({}, withNeedles(piece, "left", { 1: 9, 2: 9, 30: 9, 56: 9, 57: 9 }))).toEqual([
      "row 2: only 7 and 8 needles beside column 1",
      "row 30: only 7 and 8 needles beside column 1",
      "row 56: only 7 and 8 needles beside column 1",
    ]);
    expect(found({}, withNeedles(piece, "right", { 30: 9 }))).toEqual([
      "row 30: only 8 and 7 needles beside column 1",
    ]);
    expect(found(margins({ left: 9 }))).toHaveLength(55);
    expect(found(margins({ right: 9 }))).toHaveLength(55);
  });

  test("finds a margin that is told smaller than it is where the motif comes nearest to the edge", () => {
    const left = (told: number, truly: number) => [`left margin is told as ${told}, and it is ${truly}`];
    const right = (told: number, truly: number) => [`right margin is told as ${told}, and it is ${truly}`];
    expect(found(margins({ left: 7 }))).toEqual(left(7, 8));
    expect(found(margins({ right: 7 }))).toEqual(right(7, 8));
    expect(found({}, straight(60, 11))).toEqual([...left(8, 9), ...right(8, 9)]);
    // Nearest at one row is near enough, the first and the last among them; beyond them it is nothing to the motif.
    for (const row of [2, 20, 56]) {
      const wide = withNeedles(straight(60, 11), "left", { [row]: 10 });
      expect(found(margins({ right: 9 }), wide)).toEqual([]);
      const other = withNeedles(straight(60, 11), "right", { [row]: 10 });
      expect(found(margins({ left: 9 }), other)).toEqual([]);
    }
    for (const row of [1, 57]) {
      const wide = withNeedles(straight(60, 11), "left", { [row]: 10 });
      expect(found(margins({ right: 9 }), wide)).toEqual(left(8, 9));
    }
  });

  test("finds a column that is moved one needle", () => {
    const texts = found({ panel: { ...sound.panel, centres: [1] } });
    expect(texts.slice(0, 55)).toEqual(
      Array.from({ length: 55 }, (_, row) => `row ${2 + row}: only 9 and 7 needles beside column 1`),
    );
    expect(texts.slice(55)).toEqual([
      "left margin is told as 8, and it is 9",
      "is told to lie between -2 and 2, and it lies between -1 and 3",
    ]);
  });

  /** The placement on a piece, with the sides that its garment asks for and the margins it is told with. */
  const withSides = (sides: SideMargins, on: CountedPiece, left: number, right: number) => {
    const placement: Placement = {
      ...garment.placements[0]!,
      margins: { ...garment.placements[0]!.margins, sides },
    };
    return checkPlace(placement, { ...sound, ...margins({ left, right }) }, on).map((one) => one.found);
  };

  test("finds a row that leaves less than the garment asks for at least", () => {
    const centred: SideMargins = { kind: "centred", least: 8 };
    expect(withSides(centred, piece, 0, 0)).toEqual([]);
    expect(withSides(centred, withNeedles(piece, "left", { 20: 9 }), 0, 0)).toEqual([
      "row 20: only 7 and 8 needles beside column 1",
    ]);
    expect(withSides(centred, withNeedles(piece, "right", { 20: 9 }), 0, 0)).toEqual([
      "row 20: only 8 and 7 needles beside column 1",
    ]);
    const free: SideMargins = {
      kind: "free",
      left: { kind: "from", least: 9 },
      right: { kind: "from", least: 9 },
    };
    expect(withSides(free, piece, 0, 0)).toEqual([]);
  });

  test("finds a hanging beyond the edge, also where little is told to be free", () => {
    const free: SideMargins = {
      kind: "free",
      left: { kind: "from", least: 0 },
      right: { kind: "from", least: 0 },
    };
    // The cord is hung on L2 at rows 2, 8, 14, and on R2 at rows 5, 11, 17.
    expect(withSides(free, straight(60, 2), 0, 0)).toEqual([]);
    expect(withSides(free, withNeedles(straight(60, 2), "left", { 8: 1 }), -1, 0)).toEqual([
      "row 8: only -1 and 0 needles beside column 1",
      "row 8: needles -2..-1 of column 1 are not in work",
    ]);
    expect(withSides(free, withNeedles(straight(60, 2), "right", { 8: 1 }), 0, -1)).toEqual([
      "row 8: only 0 and -1 needles beside column 1",
    ]);
    expect(withSides(free, withNeedles(straight(60, 2), "right", { 11: 1 }), 0, 0)).toEqual([
      "row 11: only 0 and -1 needles beside column 1",
      "row 11: needles 1..2 of column 1 are not in work",
    ]);
  });

  test("finds a hanging in a neck", () => {
    const at = (left: number, right: number) => ({
      ...piece,
      neck: {
        row: 53,
        left: Array.from({ length: 8 }, () => left),
        right: Array.from({ length: 8 }, () => right),
      },
    });
    // The last hanging but one is made on R2 at the neck's own row, before it opens; the last on L2 at row 56.
    expect(found({}, at(9, 9))).toEqual(["row 56: needles -2..-1 of column 1 are not in work"]);
    expect(found({}, at(2, 1))).toEqual(["row 56: needles -2..-1 of column 1 are not in work"]);
    expect(found({}, at(1, 1))).toEqual([]);
    const lower = (left: number, right: number) => ({
      ...at(left, right),
      neck: { ...at(left, right).neck, row: 52 },
    });
    expect(found({}, lower(1, 2))).toEqual(["row 53: needles 1..2 of column 1 are not in work"]);
    expect(found({}, lower(1, 1))).toEqual([]);
    // The neck widens: at the row of a hanging counts how far it is open then.
    const widening = { ...piece, neck: { row: 52, left: [9, 9, 9, 9, 1], right: [9, 1, 9, 9, 9] } };
    expect(found({}, widening)).toEqual([]);
  });
});

describe("the independent check of columns", () => {
  let hooks: Garment;
  let mirrored: Garment;

  beforeAll(() => {
    hooks = written({ hook });
    mirrored = { ...hooks, placements: [{ ...hooks.placements[0]!, mirror: true }] };
  });

  const columnsFound = (
    of: Garment,
    centres: readonly number[],
    turned: number,
    [left, right]: readonly [number, number],
    change: Partial<FittedPlacement> = {},
    on: CountedPiece = piece,
  ): readonly string[] => {
    const laid = placed([section(lookWith(of.motifs[0]!, {}), 10)], {
      firstRow: 0,
      lastRow: 60,
      columns: centres.length,
      gap: 2,
      margins: { bottom: 0, top: 0, left, right },
      panel: { centres, mirrored: turned, leftEdge: 0, rightEdge: 0 },
      ...change,
    });
    return checkPlace(of.placements[0]!, laid, on).map((one) => one.found);
  };

  // Three columns of 4 needles with 2 between them: -7..-3, -1..3 and 5..9.
  const three = [-6, 0, 6];

  test("finds nothing of columns that stand as far apart as is told", () => {
    expect(columnsFound(hooks, three, 0, [3, 1])).toEqual([]);
  });

  test("finds two that do not", () => {
    expect(columnsFound(hooks, [-7, 0, 6], 0, [2, 1])).toEqual(["columns 1 and 2 are not 2 needles apart"]);
    expect(columnsFound(hooks, [-6, 0, 7], 0, [3, 0])).toEqual(["columns 2 and 3 are not 2 needles apart"]);
    expect(columnsFound(hooks, three, 0, [3, 1], { gap: 3 })).toEqual([
      "columns 1 and 2 are not 3 needles apart",
      "columns 2 and 3 are not 3 needles apart",
    ]);
  });

  test("says which column lies beyond the edge", () => {
    // Hung on R3 of its column, 9 needles right of the piece's centre, at rows 3, 9 ...; there are 8.
    expect(columnsFound(hooks, three, 0, [3, 1], {}, withNeedles(piece, "right", { 9: 8 }))).toEqual([
      "row 9: only 15 and -1 needles beside column 3",
      "row 9: needles 8..9 of column 3 are not in work",
    ]);
  });

  test("turns the columns right of the middle where the garment mirrors them", () => {
    // -8..-4, -2..2 and, turned, 4..8; two of them -5..-1 and, turned, 1..5.
    expect(columnsFound(mirrored, [-7, -1, 7], 1, [2, 2])).toEqual([]);
    expect(columnsFound(mirrored, [-4, 4], 1, [5, 5])).toEqual([]);
  });

  test("finds columns that are turned where they should not be, or not where they should", () => {
    const told = (columns: number, right: number) => [
      `${columns} columns are told to be mirrored, and it is ${right}`,
    ];
    expect(columnsFound(mirrored, [-4, 4], 0, [5, 5])).toEqual(told(0, 1));
    expect(columnsFound(mirrored, [-7, -1, 7], 2, [2, 2])).toEqual(told(2, 1));
    expect(columnsFound(hooks, three, 1, [3, 1])).toEqual(told(1, 0));
  });

  test("finds mirrored columns one needle off", () => {
    expect(columnsFound(mirrored, [-4, 5], 1, [5, 4])).toEqual(["columns 1 and 2 are not 2 needles apart"]);
  });

  test("looks for a turned column's hangings on its own side", () => {
    // Turned, the right of two columns is hung on 3 needles left of its centre at 4, on needle 1..2, and one right of it.
    const narrow = withNeedles(straight(60, 10), "right", { 0: 4 });
    expect(columnsFound(mirrored, [-4, 4], 1, [5, 5], {}, narrow)).toEqual([
      "row 0: only 11 and -1 needles beside column 2",
      "row 0: needles 4..5 of column 2 are not in work",
    ]);
  });

  test("measures how far apart they stand by a repeat, not by a lead-in that reaches less", () => {
    const grown = written({
      led: {
        ...swing,
        lead: "interval",
        strands: {
          cord: {
            start: [1, 0],
            "lead-in": [["-spread", "interval"]],
            repeat: [
              ["spread", "interval"],
              ["-spread", "2 * interval"],
            ],
          },
        },
      },
    });
    const look = lookWith(grown.motifs[0]!, { interval: 3, spread: 2 });
    // The lead-in by itself goes from R1 to L2, the repeats above it from L2 to R2.
    const laid = placed([section(look, 0), section(look, 9)], {
      firstRow: 0,
      lastRow: 57,
      columns: 2,
      gap: 2,
      margins: { bottom: 0, top: 3, left: 5, right: 5 },
      panel: { centres: [-3, 3], mirrored: 0, leftEdge: -5, rightEdge: 5 },
    });
    expect(checkPlace(grown.placements[0]!, laid, piece)).toEqual([]);
  });
});

describe("the independent check of cables and bands", () => {
  test("finds a ladder that leaves the cloth, with the needle that takes its stitch", () => {
    const cables = written({
      rope: {
        kind: "cable",
        lead: 0,
        repeat: 6,
        cross: [2, 2],
        crossings: { start: [0, 0], repeat: [[0, 6]] },
        ladders: [-3, 3],
      },
    });
    // Ladders on L3 and R3, and L4 and R4 beside them.
    const laid = placed([section(lookWith(cables.motifs[0]!, {}), 10)], {
      firstRow: 0,
      lastRow: 60,
      margins: { bottom: 0, top: 0, left: 6, right: 6 },
      panel: { centres: [0], mirrored: 0, leftEdge: -4, rightEdge: 4 },
    });
    const ropesFound = (on: CountedPiece, change: Partial<FittedPlacement> = {}): readonly string[] =>
      checkPlace(cables.placements[0]!, { ...laid, ...change }, on).map((one) => one.found);
    expect(ropesFound(piece)).toEqual([]);
    expect(ropesFound(withNeedles(piece, "right", { 20: 3 }))).toEqual([
      "row 20: only 6 and -1 needles beside column 1",
      "row 20: column 1 does not lie on the cloth",
    ]);
    // A neck of 3 needles each way from row 57 on: both ladders stand in it at rows 58 to 60, and so do crossings at 60.
    const neck = { row: 57, left: [3, 3, 3, 3], right: [3, 3, 3, 3] };
    const inNeck = [58, 59, 60].flatMap((row) => {
      const text = `row ${row}: column 1 does not lie on the cloth`;
      return [text, text];
    });
    expect(ropesFound({ ...piece, neck })).toEqual([
      ...inNeck,
      "row 60: needles -2..2 of column 1 are not in work",
    ]);
    const narrow = { ...neck, left: [2, 2, 2, 2], right: [2, 2, 2, 3] };
    expect(ropesFound({ ...piece, neck: narrow })).toEqual([
      "row 60: column 1 does not lie on the cloth",
      "row 60: needles -2..2 of column 1 are not in work",
    ]);
  });

  test("counts no cord between the sections of a cable", () => {
    const crossings = { start: [0, 0], repeat: [[0, 6]] };
    const cables = written({ rope: { kind: "cable", lead: 0, repeat: 6, cross: [2, 2], crossings } });
    const look = lookWith(cables.motifs[0]!, {});
    const laid = placed([section(look, 4), section(look, 6)], {
      firstRow: 0,
      lastRow: 60,
      margins: { bottom: 0, top: 0, left: 8, right: 8 },
      panel: { centres: [0], mirrored: 0, leftEdge: -2, rightEdge: 2 },
    });
    expect(checkPlacement(cables, fitOf(cables, [laid], [piece]), laid)).toEqual([]);
  });

  test("turns a ladder with its column", () => {
    const leaning = written({
      rope: {
        kind: "cable",
        lead: 0,
        repeat: 6,
        cross: [1, 1],
        crossings: { start: [0, 0], repeat: [[0, 6]] },
        ladders: [-3],
      },
    });
    // A column goes from 4 needles left of its centre to 1 right of it; the right one is turned.
    const laid = placed([section(lookWith(leaning.motifs[0]!, {}), 10)], {
      firstRow: 0,
      lastRow: 60,
      columns: 2,
      gap: 2,
      margins: { bottom: 0, top: 0, left: 4, right: 4 },
      panel: { centres: [-2, 2], mirrored: 1, leftEdge: -6, rightEdge: 6 },
    });
    const place = { ...leaning.placements[0]!, mirror: true };
    // A neck of one needle each way is clear of both, of two needles not.
    const neck = (needles: number) => ({ row: 59, left: [0, needles], right: [0, needles] });
    expect(checkPlace(place, laid, { ...piece, neck: neck(1) })).toEqual([]);
    expect(checkPlace(place, laid, { ...piece, neck: neck(4) }).map((one) => one.found)).toEqual([
      "row 60: needles -3..-1 of column 1 are not in work",
      "row 60: needles 1..3 of column 2 are not in work",
    ]);
    expect(checkPlace(place, laid, { ...piece, neck: neck(5) }).map((one) => one.found)[0]).toBe(
      "row 60: column 1 does not lie on the cloth",
    );
  });

  test("keeps a band with its edge stitches on the cloth", () => {
    const bands = written({ leaves: { kind: "band", stitches: 5, repeat: 6, edge: [1, 2] } });
    // An edge stitch, two repeats of 5 and two edge stitches: 13 needles from 7 left of the centre to 6 right of it.
    const laid = placed([section(lookWith(bands.motifs[0]!, {}), 10)], {
      firstRow: 0,
      lastRow: 60,
      columns: 2,
      margins: { bottom: 0, top: 0, left: 3, right: 4 },
      panel: { centres: [-4, 1], mirrored: 0, leftEdge: -7, rightEdge: 6 },
    });
    const bandFound = (on: CountedPiece, change: Partial<FittedPlacement> = {}): readonly string[] =>
      checkPlace(bands.placements[0]!, { ...laid, ...change }, on).map((one) => one.found);
    expect(bandFound(piece)).toEqual([]);
    expect(bandFound(withNeedles(piece, "left", { 7: 9 }))).toEqual([
      "row 7: only 2 and 11 needles beside column 1",
    ]);
    expect(bandFound(withNeedles(piece, "right", { 7: 9 }))).toEqual([
      "row 7: only 9 and 3 needles beside column 2",
    ]);
    expect(bandFound(piece, { panel: { ...laid.panel, centres: [-4, 2] } })).toContain(
      "columns 1 and 2 are not 0 needles apart",
    );
    // A neck is no place for a band: it lies across it from its first row on.
    const across = { row: 59, left: [2, 2], right: [2, 2] };
    expect(bandFound({ ...piece, neck: across })).toEqual([
      "row 60: column 1 does not lie on the cloth",
      "row 60: column 2 does not lie on the cloth",
    ]);
    // Beside a neck it has room with its edge stitches, or none: those at its right end lie on needles 5 and 6.
    const beside = (left: number) => ({ row: 59, left: [0, left], right: [9, 9] });
    expect(bandFound({ ...piece, neck: beside(-6) })).toEqual([]);
    expect(bandFound({ ...piece, neck: beside(-5) })).toEqual(["row 60: column 2 does not lie on the cloth"]);
    const other = (right: number) => ({ row: 59, left: [9, 9], right: [0, right] });
    expect(bandFound({ ...piece, neck: other(-7) })).toEqual([]);
    expect(bandFound({ ...piece, neck: other(-6) })).toEqual(["row 60: column 1 does not lie on the cloth"]);
  });
});

describe("the independent check of the side margins of a panel", () => {
  /** What is found of a whole placement that tells these side margins, in as many columns as it likes. */
  const sidesFound = (of: Garment, laid: FittedPlacement, left: number, right: number): readonly string[] => {
    const any = { allowed: { kind: "from", least: 0 } } as const;
    const placements = of.placements.map((one) => ({ ...one, columns: any, gap: any, mirror: laid.gap > 0 }));
    const told = { ...laid, margins: { ...laid.margins, left, right } };
    return checkPlacement({ ...of, placements }, fitOf(of, [told], [piece]), told).map((one) => one.found);
  };

  test("measures them at its outermost columns, turned or not", () => {
    const hooks = written({ hook });
    // Three columns of 4 needles with 2 between them, the last one turned: -8..-4, -2..2 and 4..8.
    const laid = placed([section(lookWith(hooks.motifs[0]!, {}), 10)], {
      lastRow: 60,
      columns: 3,
      gap: 2,
      panel: { centres: [-7, -1, 7], mirrored: 1, leftEdge: -8, rightEdge: 8 },
    });
    expect(sidesFound(hooks, laid, 2, 2)).toEqual([]);
    expect(sidesFound(hooks, laid, 1, 1)).toEqual([
      "left margin is told as 1, and it is 2",
      "right margin is told as 1, and it is 2",
    ]);
  });

  test("measures a single column as it is, although others would be turned", () => {
    const hooks = written({ hook });
    const laid = placed([section(lookWith(hooks.motifs[0]!, {}), 10)], {
      lastRow: 60,
      gap: 2,
      panel: { centres: [0], mirrored: 0, leftEdge: -1, rightEdge: 3 },
    });
    expect(sidesFound(hooks, laid, 9, 7)).toEqual([]);
    expect(sidesFound(hooks, laid, 9, 6)).toEqual(["right margin is told as 6, and it is 7"]);
  });

  test("measures a motif that grows by what it reaches at each row", () => {
    const grown = placed(
      [2, 3].map((spread) => section(lookWith(garment.motifs[0]!, { interval: 3, spread }), 4)),
      { firstRow: 2, lastRow: 50, panel: { ...sound.panel, leftEdge: -3, rightEdge: 3 } },
    );
    // Two needles more on both sides from the row on at which it reaches one further: 8 below it, and 9 from there on.
    const widths = Array.from({ length: 61 }, (_, row) => (row < 26 ? 10 : 12));
    const wider = { ...piece, left: widths, right: widths };
    const placement = garment.placements[0]!;
    const sidesOf = (side: number) => {
      const told = { ...grown, ...margins({ top: 10, left: side, right: side }) };
      const fit = fitOf(garment, [told], [wider]);
      return checkPlacement({ ...garment, placements: [placement] }, fit, told).filter(({ found: text }) =>
        text.includes("margin"),
      );
    };
    expect(sidesOf(8)).toEqual([]);
    expect(sidesOf(7)).toEqual([
      { rule: where, found: "left margin is told as 7, and it is 8" },
      { rule: where, found: "right margin is told as 7, and it is 8" },
    ]);
  });

  test("finds a panel that is told narrower than the motif lies, and none that is wider", () => {
    const panelFound = (leftEdge: number, rightEdge: number) =>
      found({ panel: { ...sound.panel, leftEdge, rightEdge } });
    expect(panelFound(-3, 3)).toEqual([]);
    expect(panelFound(-1, 2)).toEqual(["is told to lie between -1 and 2, and it lies between -2 and 2"]);
    expect(panelFound(-2, 1)).toEqual(["is told to lie between -2 and 1, and it lies between -2 and 2"]);
  });

  test("measures them beside its edge stitches", () => {
    const bands = written({ leaves: { kind: "band", stitches: 5, repeat: 6, edge: [1, 2] } });
    // An edge stitch, two repeats of 5 and two edge stitches, from 7 left of the centre to 6 right of it.
    const laid = placed([section(lookWith(bands.motifs[0]!, {}), 10)], {
      lastRow: 60,
      columns: 2,
      panel: { centres: [-4, 1], mirrored: 0, leftEdge: -7, rightEdge: 6 },
    });
    expect(sidesFound(bands, laid, 3, 4)).toEqual([]);
    const narrow = { ...laid, panel: { ...laid.panel, leftEdge: -6, rightEdge: 5 } };
    expect(sidesFound(bands, narrow, 3, 4)).toEqual([
      "is told to lie between -6 and 5, and it lies between -7 and 6",
    ]);
    expect(sidesFound(bands, laid, 2, 3)).toEqual([
      "left margin is told as 2, and it is 3",
      "right margin is told as 3, and it is 4",
    ]);
  });
});

describe("the independent check of what the garment allows", () => {
  const only = (...values: number[]) => ({ kind: "list", values }) as const;

  const choicesFound = (
    asked: Partial<Placement>,
    change: Partial<FittedPlacement> = {},
  ): readonly string[] => {
    const placement = { ...garment.placements[0]!, ...asked };
    const breaches = checkChoices(placement, { ...sound, ...change }, where);
    expect(breaches.every(({ rule }) => rule === where)).toBe(true);
    return breaches.map((one) => one.found);
  };

  const sides = (at: SideMargins, bottom = only(2), top = only(4)): Partial<Placement> => ({
    margins: { bottom, top, sides: at },
  });
  const centred = (least: number): SideMargins => ({ kind: "centred", least });
  const free = (left: number, right: number): SideMargins => ({
    kind: "free",
    left: only(left),
    right: only(right),
  });

  test("finds nothing where just that is allowed", () => {
    const asked = { repeats: { allowed: only(9) }, columns: { allowed: only(1) }, gap: { allowed: only(0) } };
    expect(choicesFound({ ...asked, ...sides(centred(8)) })).toEqual([]);
    expect(choicesFound({ ...asked, ...sides(free(8, 8)) })).toEqual([]);
  });

  test.each([
    ["repeats 9", { repeats: { allowed: only(8, 10) } }],
    ["columns 1", { columns: { allowed: only(2, 3) } }],
  ])("finds %s that are not", (what, asked) => {
    expect(choicesFound(asked)).toEqual([`${what} is not allowed`]);
  });

  test("holds a gap only where there is one", () => {
    const asked = { gap: { allowed: only(3) }, columns: { allowed: only(1, 2) } };
    expect(choicesFound(asked, { gap: 2 })).toEqual([]);
    expect(choicesFound(asked, { gap: 2, columns: 2 })).toEqual(["gap 2 is not allowed"]);
    expect(choicesFound(asked, { gap: 3, columns: 2 })).toEqual([]);
  });

  test("finds margins below and above that are not", () => {
    expect(choicesFound(sides(centred(0), only(1, 3)))).toEqual(["bottom margin 2 is not allowed"]);
    expect(choicesFound(sides(centred(0), only(2), only(3, 5)))).toEqual(["top margin 4 is not allowed"]);
  });

  test("finds margins at the sides that are not", () => {
    expect(choicesFound(sides(centred(8)), margins({ left: 7 }))).toEqual(["left margin 7 is not allowed"]);
    expect(choicesFound(sides(centred(8)), margins({ right: 7 }))).toEqual(["right margin 7 is not allowed"]);
    expect(choicesFound(sides(centred(8)), margins({ left: 9, right: 9 }))).toEqual([]);
    expect(choicesFound(sides(free(7, 8)))).toEqual(["left margin 8 is not allowed"]);
    expect(choicesFound(sides(free(8, 9)))).toEqual(["right margin 8 is not allowed"]);
  });

  test("is part of the check of a placement", () => {
    const fit = fitOf(garment, [sound], [piece]);
    const asked = { ...garment, placements: [{ ...garment.placements[0]!, repeats: { allowed: only(8) } }] };
    expect(checkPlacement(asked, fit, sound)).toEqual([{ rule: where, found: "repeats 9 is not allowed" }]);
  });
});
