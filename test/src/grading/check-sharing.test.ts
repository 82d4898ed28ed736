import { expect, test } from "vitest";
import type { Fit, FittedLook } from "../../../src/fit/fit.ts";
import { checkSharing } from "../../../src/grading/check-sharing.ts";
import { fitsOf, stripFile } from "../../support/two-sizes.ts";

const { range, sizes, cost } = await fitsOf(
  stripFile({ rows: { S: 28, M: 33 }, share: ["interval", "spread", "pickup"] }),
);
const fits = sizes.map(({ fit }) => fit);
const withLook = (fit: Fit, change: (look: FittedLook) => Partial<FittedLook>): Fit => ({
  ...fit,
  looks: fit.looks.map((look) => ({ ...look, ...change(look) })),
});

test("lets sizes pass that share what they are to share", () => {
  expect(checkSharing(range, fits, cost)).toEqual([]);
});

test("refuses a quantity or a count that one size has otherwise", () => {
  const wider = withLook(fits[1]!, ({ values }) => ({ values: new Map([...values, ["spread", 3]]) }));
  expect(checkSharing(range, [fits[0]!, wider], cost)).toEqual([
    { rule: "share", found: "spread 3 for plait in M, not 2" },
  ]);
  const tighter = withLook(fits[1]!, ({ segments }) => ({
    segments: segments.map((segment) => ({ ...segment, pickup: segment.pickup - 1 })),
  }));
  const [found] = checkSharing(range, [fits[0]!, tighter], cost);
  expect(found!.found).toMatch(
    /^counts lead-in \d, crossing \d for plait in M, not lead-in \d, crossing \d$/,
  );
});

test("asks for nothing that the file does not share", () => {
  const wider = withLook(fits[1]!, ({ values }) => ({ values: new Map([...values, ["spread", 3]]) }));
  const looser = { ...range, share: { ...range.share!, quantities: ["interval"], pickup: false } };
  expect(checkSharing(looser, [fits[0]!, wider], cost)).toEqual([]);
});

test("refuses a cost that is not the sum over the sizes", () => {
  expect(checkSharing(range, fits, cost + 1)).toMatchObject([{ rule: "cost" }]);
});

test("refuses a size without the motif", () => {
  expect(checkSharing(range, [fits[0]!, { ...fits[1]!, looks: [] }], cost)).toEqual([
    { rule: "share", found: "no plait in M" },
  ]);
});
