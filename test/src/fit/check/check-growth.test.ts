import { beforeAll, describe, expect, test } from "vitest";
import { checkGrowth } from "../../../../src/fit/check/check-growth.ts";
import type { Motif } from "../../../../src/motif/motif.ts";
import { lookWith, placed, section, swing, written } from "./support/laid-by-hand.ts";

let growing: Motif;
let alike: Motif;

beforeAll(() => {
  const spread = { ...swing.quantities.spread, change: 2 };
  [growing] = written({ swing: { ...swing, quantities: { ...swing.quantities, spread } } }).motifs as [Motif];
  [alike] = written({ swing }).motifs as [Motif];
});

/** Sections of one repeat with these spreads, from the bottom up. */
const inSections = (motif: Motif, spreads: readonly number[], intervals: readonly number[] = []) =>
  checkGrowth(
    placed(
      spreads.map((spread, index) =>
        section(lookWith(motif, { interval: intervals[index] ?? 3, spread }), 1),
      ),
    ),
    "swing on panel",
  );

describe("the independent check of a motif that grows", () => {
  test("lets a quantity change by as much as it may at once, either way", () => {
    expect(inSections(growing, [4, 6, 5, 3])).toEqual([]);
  });

  test("finds each step that is wider, and says in which section", () => {
    expect(inSections(growing, [2, 5, 6, 3])).toEqual([
      { rule: "swing on panel", found: "spread goes from 2 to 5 in section 2, by more than 2" },
      { rule: "swing on panel", found: "spread goes from 6 to 3 in section 4, by more than 2" },
    ]);
  });

  test("lets nothing else change with it", () => {
    expect(inSections(growing, [4, 5], [3, 4])).toEqual([
      { rule: "swing on panel", found: "interval goes from 3 to 4 in section 2, by more than 0" },
    ]);
  });

  test("lets nothing change of a motif that is the same all the way", () => {
    expect(inSections(alike, [4, 4])).toEqual([]);
    expect(inSections(alike, [4, 5])).toEqual([
      { rule: "swing on panel", found: "spread goes from 4 to 5 in section 2, by more than 0" },
    ]);
  });

  test("has nothing to say of one section", () => {
    expect(inSections(growing, [4])).toEqual([]);
  });
});
