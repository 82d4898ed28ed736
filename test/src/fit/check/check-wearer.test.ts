import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { checkWearer } from "../../../../src/fit/check/check-wearer.ts";
import type { Fit } from "../../../../src/fit/fit.ts";
import type { Garment, Piece, Wearer } from "../../../../src/garment/garment.ts";
import { fitHere, soundGarment } from "../../../support/run-garment.ts";
import { fitOf, lookWith, placed, section, stretch, swing, written } from "./support/laid-by-hand.ts";

/** Its crossing is 5 needles across and 8 rows up, with 7 cord stitches: 34.4 + 36.8 mm round. */
let fit: Fit;

beforeAll(async () => {
  const wide = readFileSync("samples/sleeve.yaml", "utf8").replace(
    "interval: { allow: [2, 4, 6, 8]",
    "interval: { allow: [8]",
  );
  const result = await fitHere(soundGarment(wide), { rivals: 0 });
  if (result.status !== "fits") throw new Error("the sleeve has to fit");
  fit = result.fit;
});

const worn = (wearer: Omit<Wearer, "path">, part?: Piece["part"]): Garment => ({
  ...fit.garment,
  wearer: { path: ["wearer"], ...wearer },
  pieces: fit.garment.pieces.map((piece) => ({ ...piece, ...(part && { part }) })),
});

/** The same fit with one cord stitch more, or so many, in every stretch. */
const slacker = (more: number): Fit => ({
  ...fit,
  placements: fit.placements.map((placement) => ({
    ...placement,
    sections: placement.sections.map((section) => ({
      ...section,
      look: {
        ...section.look,
        segments: section.look.segments.map((segment) => ({ ...segment, pickup: segment.pickup + more })),
      },
    })),
  })),
});

describe("the independent check of the wearer's rules", () => {
  test("finds a loop that is longer round than a child's may be", () => {
    expect(checkWearer(worn({ ageYears: 40 }), slacker(6))).toEqual([]);
    expect(checkWearer(fit.garment, slacker(6))).toEqual([]);
    const found = checkWearer(worn({ ageYears: 5 }), slacker(6));
    expect(found.length).toBeGreaterThan(0);
    expect(found[0]?.found).toMatch(/mm round, 75 are allowed/);
  });

  test("looks at an older child's loops at the neck only", () => {
    expect(checkWearer(worn({ ageYears: 10 }), slacker(6))).toEqual([]);
    expect(checkWearer(worn({ ageYears: 10 }, "hood"), slacker(6)).length).toBeGreaterThan(0);
  });

  test("finds a cord where none may lie", () => {
    const found = checkWearer(worn({ heightMm: 1340 }, "hood"), fit).map((one) => one.found);
    expect(found).toContain("no cord may lie there for a young child");
    const older = checkWearer(worn({ heightMm: 1350 }, "hood"), fit).map((one) => one.found);
    expect(older).not.toContain("no cord may lie there for a young child");
  });
});

describe("whom and where the rules about cords hold", () => {
  let garment: Garment;

  beforeAll(() => {
    garment = written({ cord: swing, band: { kind: "band", stitches: 4, repeat: 4 } });
  });

  /** 15 mm of cloth behind 3 needles and 3 rows, and so many cord stitches of 5 mm. */
  const laid = (pickup: number, part?: object): Fit => {
    const look = lookWith(garment.motifs[0]!, { interval: 3, spread: 2 }, [stretch(3, 3, pickup)]);
    return fitOf(garment, [placed([section(look, 1)], part)], []);
  };
  const on = (piece: Partial<Piece>, wearer: Omit<Wearer, "path"> | undefined): Garment => {
    const [panel] = garment.pieces;
    const pieces = [
      { ...panel!, name: "other", part: "hood" as const, marks: [] },
      { ...panel!, ...piece },
    ];
    return { ...garment, pieces, ...(wearer && { wearer: { path: [], ...wearer } }) };
  };
  const long = (row: number): string => `the loop up to row ${row} is 80 mm round, 75 are allowed`;
  const never = "no cord may lie there for a young child";
  const found = (of: Garment, fit: Fit = laid(13)): readonly string[] => {
    const breaches = checkWearer(of, fit);
    expect(new Set(breaches.map(({ rule }) => rule)).size).toBeLessThan(2);
    for (const { rule } of breaches) expect(rule).toBe("cord on panel");
    return breaches.map((one) => one.found);
  };

  test.each<[Omit<Wearer, "path"> | undefined, "young" | "older" | "grown"]>([
    [undefined, "grown"],
    [{}, "grown"],
    [{ ageYears: 7 }, "young"],
    [{ ageYears: 8 }, "older"],
    [{ ageYears: 14 }, "older"],
    [{ ageYears: 15 }, "grown"],
    [{ heightMm: 1340 }, "young"],
    [{ heightMm: 1341 }, "older"],
    [{ heightMm: 1820 }, "older"],
    [{ heightMm: 1821 }, "grown"],
    // The stricter of the two holds, unless the age says that the wearer is grown.
    [{ ageYears: 8, heightMm: 1340 }, "young"],
    [{ ageYears: 7, heightMm: 1900 }, "young"],
    [{ ageYears: 14, heightMm: 1900 }, "older"],
    [{ ageYears: 15, heightMm: 1000 }, "grown"],
  ])("a wearer of %j is %s", (wearer, group) => {
    const loops = [long(3), long(6)];
    expect(found(on({ part: "sleeve" }, wearer))).toEqual(group === "young" ? loops : []);
    const atHood = { young: [never, ...loops], older: loops, grown: [] }[group];
    expect(found(on({ part: "hood" }, wearer))).toEqual(atHood);
  });

  test.each<[string, Partial<Piece>, number, "never" | "near" | "away"]>([
    ["a hood", { part: "hood" }, 10, "never"],
    ["a collar", { part: "collar" }, 10, "never"],
    // 180 mm high.
    ["a back within 5 cm of its shoulder", { part: "back" }, 131, "never"],
    ["a back lower down", { part: "back" }, 130, "away"],
    ["a front within 5 cm of its shoulder", { part: "front" }, 131, "near"],
    ["a front lower down", { part: "front" }, 130, "away"],
    ["a front by its opening", { part: "front", neck: [{ heightMm: 150, widthMm: 80 }] }, 101, "near"],
    ["a front below its opening", { part: "front", neck: [{ heightMm: 150, widthMm: 80 }] }, 100, "away"],
    ["a back by its opening", { part: "back", neck: [{ heightMm: 150, widthMm: 80 }] }, 101, "never"],
    ["another piece by its opening", { part: "other", neck: [{ heightMm: 150, widthMm: 80 }] }, 101, "near"],
    ["a sleeve up to its top", { part: "sleeve" }, 180, "away"],
  ])("%s", (_, piece, upToMm, lies) => {
    const marks = [
      { name: "cast-on", heightMm: 0 },
      { name: "bind-off", heightMm: upToMm },
    ];
    const loops = [long(3), long(6)];
    const outline = [
      { heightMm: 0, widthMm: 80 },
      { heightMm: 30, widthMm: 80 },
      { heightMm: 180, widthMm: 80 },
    ];
    const older = found(on({ outline, marks, ...piece }, { ageYears: 10 }));
    expect(older).toEqual(lies === "away" ? [] : loops);
    const young = found(on({ outline, marks, ...piece }, { ageYears: 5 }));
    expect(young).toEqual(lies === "never" ? [never, ...loops] : loops);
  });

  test("a loop may be as long round as is allowed, and a thousandth of a millimetre more", () => {
    const child = on({}, { ageYears: 5 });
    expect(found(child, laid(12))).toEqual([]);
    expect(found(child, laid(12 + 0.0009 / 5))).toEqual([]);
    expect(found(child, laid(12 + 0.0011 / 5))).toHaveLength(2);
  });

  test("is of cord and cloth, across and up", () => {
    const child = on({}, { ageYears: 5 });
    const look = lookWith(garment.motifs[0]!, { interval: 4, spread: 7 }, [stretch(13, 4, 5)]);
    const fit = fitOf(garment, [placed([section(look, 1)])], []);
    // 13 needles of 4 mm across and 4 rows of 3 mm up: sqrt(52^2 + 12^2) = 53.367; 5 cord stitches of 5 mm.
    const [first] = found(child, fit);
    expect(first).toMatch(/^the loop up to row 4 is 78\.36[67]\d* mm round, 75 are allowed$/);
  });

  test("what is worked of a further repeat is held to it too", () => {
    const part = { lastRow: 0, rows: 0, columns: [] };
    expect(found(on({}, { ageYears: 5 }), laid(13, { part }))).toEqual([3, 6, 9, 12].map(long));
  });

  test("what has no count is left to the check of the look, and what is no cord is free", () => {
    const hood = on({ part: "hood" }, { ageYears: 5 });
    const look = lookWith(garment.motifs[0]!, { interval: 3, spread: 2 });
    expect(found(hood, fitOf(garment, [placed([section(look, 1)])], []))).toEqual([never]);
    const band = lookWith(garment.motifs[1]!, {});
    expect(found(hood, fitOf(garment, [placed([section(band, 1)])], []))).toEqual([]);
    expect(found(hood, fitOf(garment, [placed([])], []))).toEqual([]);
    const { cord: _, ...gauge } = hood.gauge;
    expect(found({ ...hood, gauge })).toEqual([never]);
  });
});
