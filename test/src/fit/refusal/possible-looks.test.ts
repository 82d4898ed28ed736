import { describe, expect, test } from "vitest";
import type { Footing } from "../../../../src/fit/footing.ts";
import { createSomeLook } from "../../../../src/fit/refusal/possible-looks.ts";
import { only } from "../../../../src/garment/allowed.ts";
import type { Garment } from "../../../../src/garment/garment.ts";
import type { MotifEntry } from "../../../support/garment-file.ts";
import { cable, laid, plait, smallGarment, strip } from "../../../support/small-garment.ts";

const wearing = (motif: MotifEntry, wearer?: { age: number }): Garment =>
  smallGarment({
    pieces: { sleeve: strip(40, 60) },
    motifs: { ornament: motif },
    place: [laid("ornament", "sleeve", { bottom: "0..99", top: "0..99" })],
    ...(wearer && { wearer }),
  });

const anything = (): boolean => true;

/** Whether there is some look of a garment's only motif. */
const isSome = (garment: Garment, couldDo: (footing: Footing) => boolean = anything): boolean =>
  createSomeLook()(garment, garment.motifs[0]!, couldDo);

/** The footings a question is asked for, in order: as rows of a repeat and needles to the left. */
function asked(garment: Garment): string[] {
  const footings: string[] = [];
  isSome(garment, ({ repeatRows, reach }) => {
    footings.push(`${repeatRows} rows, ${reach.left} needles`);
    return false;
  });
  return footings;
}

describe("some look of a motif", () => {
  test("is sought among all values its rules allow", () => {
    const values = { allow: [2, 3] };
    expect(asked(wearing(plait(values, values)))).toEqual([
      "4 rows, 2 needles",
      "4 rows, 3 needles",
      "6 rows, 2 needles",
      "6 rows, 3 needles",
    ]);
    expect(asked(wearing(plait(values, values, { rules: ["spread < interval"] })))).toEqual([
      "6 rows, 2 needles",
    ]);
  });

  test("is not one whose anchors are no needles", () => {
    // A spread of 0 would hang the cord on a needle that no bed has.
    const garment = wearing(plait(2, 3));
    const motifs = garment.motifs.map((motif) => ({
      ...motif,
      quantities: motif.quantities.map((one) =>
        one.name === "spread" ? { ...one, allowed: only(0, 3) } : one,
      ),
    }));
    expect(asked({ ...garment, motifs })).toEqual(["4 rows, 3 needles"]);
  });

  test("is sought no further than the first that will do", () => {
    const garment = wearing(plait({ allow: [2, 3, 4] }, 3));
    const tried: number[] = [];
    const some = createSomeLook()(garment, garment.motifs[0]!, ({ repeatRows }) => {
      tried.push(repeatRows);
      return repeatRows === 6;
    });
    expect([some, tried]).toEqual([true, [4, 6]]);
  });

  test("is none where the rules leave no values", () => {
    expect(isSome(wearing(plait(3, 3, { rules: ["spread < interval"] })))).toBe(false);
    expect(isSome(wearing(plait(4, 3, { rules: ["spread < interval"] })))).toBe(true);
  });
});

describe("a cord", () => {
  // Lead-in: 2 needles and 4 rows, 10 mm by 16 mm, are 18.87 mm: 4 cord stitches are 20 mm, 6.0 % longer.
  // Crossing: 5 needles and 4 rows, 25 mm by 16 mm, are 29.68 mm: 6 cord stitches are 30 mm, 1.1 % longer.
  test.each([
    ["1.0 %", "6.0 %", true],
    ["1.0 %", "5.9 %", false],
    ["1.2 %", "6.1 %", false],
  ])("with an ease from %s to %s can be counted on every stretch: %s", (from, to, expected) => {
    expect(isSome(wearing(plait(4, 3, { ease: { from, to, prefer: from } })))).toBe(expected);
  });

  test("can be counted for a child only where its loops are small", () => {
    // Cord and cloth of a crossing of 6 rows over 7 needles: 42.44 mm and 9 cord stitches, more than 75 mm.
    expect(isSome(wearing(plait(4, 3), { age: 5 }))).toBe(true);
    expect(isSome(wearing(plait(6, 4), { age: 5 }))).toBe(false);
    expect(isSome(wearing(plait(6, 4), { age: 20 }))).toBe(true);
  });

  test("is asked what is dear only once its footing could do and it can be counted", () => {
    const narrow = { ease: { from: "1 %", to: "1.2 %", prefer: "1 %" } };
    const dear = (motif: MotifEntry, couldDo: () => boolean): number => {
      const garment = wearing(motif);
      let times = 0;
      createSomeLook()(garment, garment.motifs[0]!, couldDo, () => {
        times++;
        return true;
      });
      return times;
    };
    expect(dear(plait(4, 3), anything)).toBe(1);
    expect(dear(plait(4, 3), () => false)).toBe(0);
    expect(dear(plait(4, 3, narrow), anything)).toBe(0);
  });

  test("is refused by what is dear as well", () => {
    const garment = wearing(plait({ allow: [4, 5] }, 3));
    const refused = (rows: number): boolean =>
      createSomeLook()(garment, garment.motifs[0]!, anything, ({ repeatRows }) => repeatRows >= rows);
    expect([refused(10), refused(11)]).toEqual([true, false]);
  });
});

test("a cable has no cord to count", () => {
  const garment = wearing(cable(6));
  expect(isSome({ ...garment, gauge: { ground: garment.gauge.ground } })).toBe(true);
  const corded = wearing(plait(4, 3));
  expect(isSome({ ...corded, gauge: { ground: corded.gauge.ground } })).toBe(false);
});

describe("what is asked again", () => {
  test("was worked out the first time, whatever rules the motif has lost meanwhile", () => {
    const garment = wearing(plait({ allow: [2, 3] }, 3, { rules: ["spread <= interval"] }));
    const motif = garment.motifs[0]!;
    const someLook = createSomeLook();
    const footingsOf = (one: typeof motif): Footing[] => {
      const footings: Footing[] = [];
      someLook(garment, one, (footing) => {
        footings.push(footing);
        return false;
      });
      return footings;
    };
    const [before] = footingsOf(motif);
    const [wider, after, ...others] = footingsOf({ ...motif, rules: [] });
    expect(others).toEqual([]);
    expect([wider!.repeatRows, after!.repeatRows]).toEqual([4, 6]);
    expect(after).toBe(before);
    expect(footingsOf({ ...motif, rules: [] })[0]).toBe(wider);
  });

  test("is answered for each motif and each ease by itself", () => {
    const someLook = createSomeLook();
    const garment = smallGarment({
      pieces: { sleeve: strip(40, 60), cuff: strip(40, 60) },
      motifs: { plait: plait(4, 3), ropes: cable(4, { offset: 3 }) },
      place: [laid("plait", "sleeve", { bottom: "0..99" }), laid("ropes", "cuff", { bottom: "0..99" })],
    });
    const [corded, crossed] = garment.motifs;
    const repeatOf = (rows: number) => (footing: Footing) => footing.repeatRows === rows;
    expect(someLook(garment, corded!, repeatOf(8))).toBe(true);
    expect(someLook(garment, crossed!, repeatOf(8))).toBe(false);
    expect(someLook(garment, crossed!, repeatOf(4))).toBe(true);
    const taut = { ...corded!, ease: { from: 0.5, to: 0.51 } } as typeof corded;
    expect(someLook(garment, taut!, anything)).toBe(false);
    expect(someLook(garment, corded!, anything)).toBe(true);
  });
});
