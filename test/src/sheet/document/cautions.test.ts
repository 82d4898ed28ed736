import { beforeAll, expect, test } from "vitest";
import type { Fit } from "../../../../src/fit/fit.ts";
import { cautionsFor } from "../../../../src/safety/cautions.ts";
import { cautionsSection } from "../../../../src/sheet/document/cautions.ts";
import { laid, plait, smallGarment, strip } from "../../../support/small-garment.ts";
import { bare, fitOf, plainGarment } from "../support/small-fits.ts";

let fit: Fit;
beforeAll(async () => {
  fit = await fitOf(
    smallGarment({
      pieces: { strip: strip(20, 12) },
      motifs: { plait: plait(4, 3) },
      place: [laid("plait", "strip")],
    }),
  );
});

test("what a cord can do is told in full, a paragraph for each caution", () => {
  const section = cautionsSection(fit)!;
  expect(section.title).toBe("Caution");
  expect(section.content).toEqual(cautionsFor(fit).map((text) => ({ kind: "paragraph", text })));
  expect(section.content[0]).toMatchObject({ text: expect.stringMatching(/^A cord can catch and strangle/) });
});

test("there is no such section where no cord is laid", () => {
  expect(cautionsSection(bare(plainGarment()))).toBeUndefined();
});
