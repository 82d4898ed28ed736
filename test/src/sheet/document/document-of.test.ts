import { beforeAll, expect, test } from "vitest";
import type { Fit } from "../../../../src/fit/fit.ts";
import { buildSheet } from "../../../../src/sheet/build-sheet.ts";
import { documentOf } from "../../../../src/sheet/document/document-of.ts";
import { band, laid, plait, smallGarment, strip } from "../../../support/small-garment.ts";
import { bare, fitOf, plainGarment } from "../support/small-fits.ts";

let fit: Fit;
beforeAll(async () => {
  fit = await fitOf(
    smallGarment({
      title: "Two strips",
      pieces: { strip: strip(20, 12), cuff: strip(10, 4) },
      motifs: { plait: plait(4, 3), dots: band(2, 4) },
      place: [laid("plait", "strip"), laid("dots", "cuff")],
    }),
  );
});

test("a sheet has what is to be seen to first, then piece by piece what is worked, then the finish", () => {
  const { title, sections, pieces, finish } = documentOf(fit, buildSheet(fit));
  expect(title).toBe("Two strips: working sheet");
  expect(sections.map((section) => section.title)).toEqual([
    "Check first",
    "Needles",
    "Make the cord before you cast on",
    "Yarn",
    "Caution",
  ]);
  expect(pieces.map(({ piece }) => piece)).toEqual(["strip", "cuff"]);
  expect(finish.title).toBe("Finish");
});

test("of a garment without a cord it leaves out the cord and what it can do", () => {
  const without = bare(plainGarment());
  const { sections } = documentOf(without, buildSheet(without));
  expect(sections.map((section) => section.title)).toEqual(["Check first", "Needles", "Yarn"]);
});

test("nothing in it can steer a terminal or turn the direction of writing", () => {
  const named = { ...fit, garment: { ...fit.garment, title: "a\u001b[2Jb\u202ec" } };
  expect(documentOf(named, buildSheet(named)).title).toBe("a\\u001b[2Jb\\u202ec: working sheet");
});
