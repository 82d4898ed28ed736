import { beforeAll, describe, expect, test } from "vitest";
import { fitFrom, type Prepared, prepare } from "../../../src/fit/prepare.ts";
import { RefusedFit } from "../../../src/fit/refused-fit.ts";
import type { Garment } from "../../../src/garment/garment.ts";
import { cable, laid, plait, smallGarment, strip } from "../../support/small-garment.ts";

/** A plait and a cable, each on a strip of its own, with rows to spare as told. */
const garment = (spare: number, spread = 3): Garment =>
  smallGarment({
    pieces: { front: strip(20, 20 + spare), belt: strip(20, 18 + spare) },
    motifs: {
      plait: plait(4, spread, { ease: { from: "-20 %", to: "20 %" } }),
      rope: cable(6),
    },
    place: [
      laid("plait", "front", { bottom: "0..4", top: "0..4" }),
      laid("rope", "belt", { bottom: "0..4", top: "0..4" }),
    ],
  });

describe("a garment whose motifs have room", () => {
  let prepared: Prepared;
  beforeAll(() => {
    prepared = prepare(garment(2))!;
  });

  test("is prepared with a group of looks for each motif, then one of layouts for each placement", () => {
    expect(prepared.program.groups.map(({ options }) => options.length)).toEqual(
      [...prepared.choices.looks, ...prepared.choices.layouts].map((options) => options.length),
    );
    expect(prepared.program.groups).toHaveLength(4);
  });

  test("is fitted as it is picked", () => {
    const { looks, layouts } = prepared.choices;
    const last = (options: readonly unknown[]): number => options.length - 1;
    const picks = [last(looks[0]!), last(looks[1]!), last(layouts[0]!), last(layouts[1]!)];
    const picked = [looks[0]!.at(-1)!, looks[1]!.at(-1)!, layouts[0]!.at(-1)!, layouts[1]!.at(-1)!];
    const cost = picked.reduce((sum, one) => sum + one.cost, 0);
    const fit = fitFrom(prepared, { picks, cost });
    expect(fit.cost).toBeCloseTo(cost, 9);
    expect(fit.looks.map(({ motif, values }) => [motif.name, [...values]])).toEqual(
      picked.slice(0, 2).map((look) => "motif" in look && [look.motif.name, [...look.values]]),
    );
    expect(fit.placements.map(({ motif, repeats, margins: { bottom } }) => [motif, repeats, bottom])).toEqual(
      picked.slice(2).map((one) => "field" in one && [one.field.placement.motif, one.repeats, one.bottom]),
    );
  });

  test("is not fitted where the check finds that it costs something else", () => {
    expect(() => fitFrom(prepared, { picks: [0, 0, 0, 0], cost: 1000 })).toThrow(RefusedFit);
    expect(() => fitFrom(prepared, { picks: [0, 0, 0, 0], cost: 1000 })).toThrow(
      /^cost: .* 1000 by the engine$/,
    );
  });
});

test("is not prepared where a placement has no room", () => {
  expect(prepare(garment(2))).toBeDefined();
  // The strips are 20 needles wide, and the plait 22 at its widest.
  expect(prepare(garment(2, 11))).toBeUndefined();
});

test("is not prepared where a motif has no look", () => {
  const { motifs, ...rest } = garment(2);
  const strict = motifs.map((motif) =>
    motif.kind === "cord" ? { ...motif, ease: { from: 0.5, to: 0.5001 } } : motif,
  );
  expect(prepare({ ...rest, motifs: strict })).toBeUndefined();
});

test("as many fits are worked out as are asked for", () => {
  const layouts = (fits?: number): number =>
    prepare(garment(2), fits === undefined ? {} : { fits })!.choices.looks[0]!.length;
  expect(layouts(1)).toBe(1);
  expect(layouts(3)).toBeGreaterThan(1);
});
