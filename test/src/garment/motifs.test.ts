import { describe, expect, it } from "vitest";
import { readGarment } from "../../../src/garment/read-garment.ts";
import { BUILT_IN_MOTIFS } from "../../../src/motif/builtin/index.ts";
import type { CableMotif, CordMotif, Motif } from "../../../src/motif/motif.ts";
import { garmentText } from "../../support/garment-text.ts";

function motif(entry: string): Motif {
  const { garment, diagnostics } = readGarment(
    garmentText({ motifs: `motifs:\n  plait: ${entry}` }),
    "x.yaml",
  );
  expect(diagnostics.filter(({ severity }) => severity === "error")).toEqual([]);
  return garment!.motifs[0]!;
}

const quantity = (entry: string, name: string) => motif(entry).quantities.find((one) => one.name === name);
const numbers = (...values: number[]) => ({ kind: "list", values });
const from2to12 = numbers(2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12);

describe("a motif that is like a built-in one", () => {
  it("has its quantities where nothing else is said", () => {
    expect(quantity("{ like: crossed cord }", "interval")).toEqual({
      name: "interval",
      unit: "rows",
      allowed: from2to12,
      prefer: 4,
    });
  });

  it.each([
    ["interval: 6", numbers(6), undefined],
    ["interval: [4, 6]", numbers(4, 6), undefined],
    ["interval: 2..4", numbers(2, 3, 4), undefined],
    ["interval: { from: 2, to: 6, step: 2 }", numbers(2, 4, 6), undefined],
    ["interval: { allow: 2..4 }", numbers(2, 3, 4), undefined],
    ["interval: { allow: 2..4, prefer: 3 }", numbers(2, 3, 4), 3],
    ["interval: { prefer: 6 }", from2to12, 6],
    ["quantities: { interval: 6 }", numbers(6), undefined],
    ["quantities: { interval: { unit: rows, allow: 6, prefer: 6 } }", numbers(6), 6],
  ])("%s: what is allowed speaks for the preference as well", (entry, allowed, prefer) => {
    expect(quantity(`{ like: crossed cord, ${entry} }`, "interval")).toEqual({
      name: "interval",
      unit: "rows",
      allowed,
      ...(prefer === undefined ? {} : { prefer }),
    });
  });

  it("may have more quantities, and rules over all of them", () => {
    const plait = motif(
      '{ like: crossed cord, quantities: { twist: { unit: needles, allow: 1..3 } }, rules: ["spread <= interval + twist", "twist < 3", "2*twist=4", "spread>=2", "1 > 0", "twist == 2"] }',
    );
    expect(plait.quantities.map(({ name }) => name)).toEqual(["interval", "spread", "twist"]);
    expect(plait.rules.map(({ comparison }) => comparison)).toEqual(["<=", "<", "=", ">=", ">", "="]);
    expect(plait.rules[0]).toMatchObject({
      source: "spread <= interval + twist",
      path: ["motifs", "plait", "rules", 0],
      left: { tree: { kind: "quantity", name: "spread" } },
    });
  });

  it.each([
    ["ease: { from: -2 % }", { from: -0.02, to: 0.15, prefer: 0.02 }],
    ["ease: { to: 9 % }", { from: -0.05, to: 0.09, prefer: 0.02 }],
    ["ease: { prefer: 0 % }", { from: -0.05, to: 0.15, prefer: 0 }],
    ["ease: {}", { from: -0.05, to: 0.15, prefer: 0.02 }],
  ])("%s is filled in field by field", (entry, ease) => {
    expect((motif(`{ like: crossed cord, ${entry} }`) as CordMotif).ease).toEqual(ease);
  });

  it("may have another order of work and reserve", () => {
    const plait = motif("{ like: crossed cord, order: [right, left], reserve: 25 % }") as CordMotif;
    expect(plait).toMatchObject({ order: ["right", "left"], reserve: 0.25, like: "crossed cord" });
  });

  it("may be a cable", () => {
    const cable = motif(
      "{ like: transferred cable, offset: -3, cross: [1, interval / 2], over: right, draw-in: 12 %, limits: { rows: 2 } }",
    ) as CableMotif;
    expect(cable).toMatchObject({
      kind: "cable",
      drawIn: 0.12,
      limits: { rows: 2 },
      cables: [{ over: "right", cross: [{ source: "1" }, { source: "interval / 2" }] }],
    });
    expect(cable.quantities.find(({ name }) => name === "offset")?.allowed).toEqual(numbers(-3));
  });
});

describe("a motif written out in full", () => {
  it("with the built-in one's own words is the built-in one", () => {
    for (const [name, plain] of BUILT_IN_MOTIFS) {
      const same = motif(JSON.stringify(plain));
      const { like, ...rest } = motif(`{ like: ${name} }`);
      expect(like).toBe(name);
      expect(same).toEqual(rest);
    }
  });

  it("needs no quantities, and has an order, an ease and a reserve of its own accord", () => {
    const plain = motif(
      "{ kind: cord, lead: 0, repeat: 4, strands: { b: { start: [1, 0], repeat: [[1, 4]] }, a: { start: [2, 0], repeat: [[2, 4]] } } }",
    );
    expect(plain).toMatchObject({
      quantities: [],
      folded: [],
      order: ["b", "a"],
      ease: { from: -0.05, to: 0.15, prefer: 0.02 },
      reserve: 0.15,
      strands: [{ name: "b", leadIn: [] }, { name: "a" }],
    });
  });

  it("may have several folded cords", () => {
    const strand = "{ start: [1, 0], repeat: [[1, 4]] }";
    const lattice = motif(
      `{ kind: cord, lead: 0, repeat: 4, strands: { a: ${strand}, b: ${strand}, c: ${strand}, d: ${strand} }, folded: [[a, b], [d, c]] }`,
    ) as CordMotif;
    expect(lattice.folded).toEqual([
      ["a", "b"],
      ["d", "c"],
    ]);
  });

  it("has `over: left` and no draw-in where a cable does not say", () => {
    const cable = motif(
      "{ kind: cable, lead: 0, repeat: 6, cross: [2, 2], crossings: { start: [0, 0], repeat: [[0, 6]] } }",
    );
    expect(cable).toMatchObject({
      cables: [{ over: "left", leadIn: [] }],
      ladders: [],
      drawIn: 0,
      limits: {},
    });
  });
});

describe("which motifs a garment has", () => {
  it("takes in a built-in one that is placed by its own name", () => {
    const { garment, diagnostics } = readGarment(
      garmentText({
        motifs: "",
        place: "place: [{ motif: crossed cord, on: sleeve }, { motif: crossed cord, on: sleeve }]",
      }),
      "x.yaml",
    );
    expect(diagnostics).toEqual([]);
    expect(garment?.motifs.map(({ name, kind }) => [name, kind])).toEqual([["crossed cord", "cord"]]);
  });

  it("lets a knitter's own motif stand for a built-in one of the same name", () => {
    const { garment, diagnostics } = readGarment(
      garmentText({
        motifs: "motifs:\n  crossed cord: { like: crossed cord, interval: 5 }",
        place: "place: [{ motif: crossed cord, on: sleeve }]",
      }),
      "x.yaml",
    );
    expect(diagnostics).toEqual([]);
    expect(garment?.motifs).toHaveLength(1);
    expect(garment?.motifs[0]?.quantities[0]?.allowed).toEqual(numbers(5));
  });

  it("asks for no cord gauge where only cables are placed", () => {
    const { diagnostics } = readGarment(
      garmentText({
        gauge: "gauge: { ground: { stitches: 22, rows: 31, over: 10 cm } }",
        place: "place: [{ motif: transferred cable, on: sleeve }]",
      }),
      "x.yaml",
    );
    expect(diagnostics).toEqual([]);
  });

  it("asks for a cord gauge where a cord is placed by its built-in name", () => {
    const { diagnostics } = readGarment(
      garmentText({
        gauge: "gauge: { ground: { stitches: 22, rows: 31, over: 10 cm } }",
        motifs: "",
        place: "place: [{ motif: crossed cord, on: sleeve }]",
      }),
      "x.yaml",
    );
    expect(diagnostics).toMatchObject([{ code: "no-cord-gauge", place: { line: 3, column: 1 } }]);
  });
});
