import { beforeAll, describe, expect, test } from "vitest";
import { strandsWorked, stretchesOf } from "../../../../src/fit/check/stretch.ts";
import type { FittedSection } from "../../../../src/fit/fit.ts";
import type { Motif } from "../../../../src/motif/motif.ts";
import { lookWith, placed, section, stretch, swing } from "./support/laid-by-hand.ts";
import { motifWritten } from "./support/motif-written.ts";

let motif: Motif;

beforeAll(() => {
  motif = motifWritten(swing);
});

/** A repeat from needle L2 to R2 and back in 3 rows each, then two from L4 to R4 and back in 4 rows each. */
const widening = (): readonly FittedSection[] => [
  section(lookWith(motif, { interval: 3, spread: 2 }, [stretch(3, 3, 3)]), 1),
  section(lookWith(motif, { interval: 4, spread: 4 }, [stretch(7, 4, 7)]), 2, [stretch(5, 4, 5)]),
];

const told = (sections: readonly FittedSection[]): readonly string[] => {
  const [strand] = strandsWorked(placed(sections));
  return stretchesOf(sections, strand!.points).map(
    ({ to, needles, rows, counted }) =>
      `${counted?.pickup} up to row ${to.row}: ${needles} needles, ${rows} rows`,
  );
};

describe("the stretches of a strand", () => {
  test("are counted by the look of their section, and by its joins where they come from the one below", () => {
    expect(told(widening())).toEqual([
      "3 up to row 3: 3 needles, 3 rows",
      "3 up to row 6: 3 needles, 3 rows",
      // From L2 to R4.
      "5 up to row 10: 5 needles, 4 rows",
      "7 up to row 14: 7 needles, 4 rows",
      "7 up to row 18: 7 needles, 4 rows",
      "7 up to row 22: 7 needles, 4 rows",
    ]);
  });

  test("are counted by the look too where the joins have no count for them", () => {
    const [below] = widening();
    const above = section(
      lookWith(motif, { interval: 4, spread: 4 }, [stretch(7, 4, 7), stretch(5, 4, 6)]),
      1,
    );
    expect(told([below!, above]).slice(2)).toEqual([
      "6 up to row 10: 5 needles, 4 rows",
      "7 up to row 14: 7 needles, 4 rows",
    ]);
  });

  test("within a section have no count where only its joins tell one", () => {
    const [below] = widening();
    const above = section(lookWith(motif, { interval: 4, spread: 4 }), 1, [
      stretch(5, 4, 5),
      stretch(7, 4, 7),
    ]);
    expect(told([below!, above]).slice(2)).toEqual([
      "5 up to row 10: 5 needles, 4 rows",
      "undefined up to row 14: 7 needles, 4 rows",
    ]);
  });

  test("have no count where one is told for other needles or other rows only", () => {
    const counts = (...counted: Parameters<typeof stretch>[]) =>
      told([
        section(
          lookWith(
            motif,
            { interval: 3, spread: 2 },
            counted.map((one) => stretch(...one)),
          ),
          1,
        ),
      ]);
    expect(counts([3, 4, 9], [4, 3, 9])[0]).toBe("undefined up to row 3: 3 needles, 3 rows");
    expect(counts([3, 4, 9], [4, 3, 9], [3, 3, 3])[0]).toBe("3 up to row 3: 3 needles, 3 rows");
  });

  test("are counted as a standing loop where the file fixes the count, and only there", () => {
    const loops = motifWritten({ like: "standing loops" });
    // Over the same needle and two rows up: once as a loop of 9, and once more as the rest of an interval of 4.
    const look = lookWith(loops, { interval: 4, loop: 9 }, [
      stretch(0, 2, 8, { fixed: 8 }),
      stretch(0, 2, 9, { fixed: 9 }),
      stretch(1, 2, 2),
    ]);
    expect(told([section(look, 1)])).toEqual([
      "9 up to row 2: 0 needles, 2 rows",
      "2 up to row 4: 1 needles, 2 rows",
      "9 up to row 6: 0 needles, 2 rows",
      "2 up to row 8: 1 needles, 2 rows",
    ]);
    const plain = lookWith(loops, { interval: 4, loop: 9 }, [
      stretch(0, 2, 9),
      stretch(1, 2, 2, { fixed: 2 }),
    ]);
    expect(told([section(plain, 1)])[0]).toBe("undefined up to row 2: 0 needles, 2 rows");
    expect(told([section(plain, 1)])[1]).toBe("undefined up to row 4: 1 needles, 2 rows");
  });
});

describe("the strands of a placement", () => {
  const part = { lastRow: 0, rows: 0, columns: [] };

  test("go on for one repeat of the last section where it is worked in part", () => {
    const rowsOf = (more: object) => strandsWorked(placed(widening(), more))[0]!.points.map(({ row }) => row);
    expect(rowsOf({})).toEqual([0, 3, 6, 10, 14, 18, 22]);
    expect(rowsOf({ part })).toEqual([0, 3, 6, 10, 14, 18, 22, 26, 30]);
  });

  test("are none where there is no section", () => {
    expect(strandsWorked(placed([]))).toEqual([]);
  });
});
