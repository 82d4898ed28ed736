import { expect, test } from "vitest";
import { yarnSection } from "../../../../src/sheet/document/yarn.ts";
import { garmentText } from "../../../support/garment-text.ts";
import { fitHere, soundGarment } from "../../../support/run-garment.ts";

/** The yarn section as one text, for a ground of so many tex whose swatch of 40 by 60 weighs so much. */
async function yarnWith(swatch: string): Promise<string> {
  const result = await fitHere(
    soundGarment(garmentText({ yarn: `yarn: { ground: { tex: 370${swatch} } }` })),
    {
      rivals: 0,
    },
  );
  if (result.status !== "fits") throw new Error(result.status);
  return JSON.stringify(yarnSection(result.fit));
}

test("two figures that cannot both be right are told", async () => {
  expect(await yarnWith(", swatch: { stitches: 40, rows: 60, weight: 150 g }")).toContain(
    "cannot both be right",
  );
  // 40 x 60 loops of 1.84 cm (22 x 31 over 10 cm, fully relaxed) are 44 m, and of 370 tex about 16 g.
  expect(await yarnWith(", swatch: { stitches: 40, rows: 60, weight: 16 g }")).not.toContain("cannot both");
});

test("a swatch is asked for only where the ground has none", async () => {
  expect(await yarnWith("")).toContain("A swatch that was weighed is surer");
  expect(await yarnWith(", swatch: { stitches: 40, rows: 60, weight: 16 g }")).not.toContain(
    "A swatch that was",
  );
});
