import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { checkWearer } from "../../../../src/fit/check/check-wearer.ts";
import type { Fit } from "../../../../src/fit/fit.ts";
import type { Garment, Piece, Wearer } from "../../../../src/garment/garment.ts";
import { fitHere, soundGarment } from "../../../support/run-garment.ts";

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
