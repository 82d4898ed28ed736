import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import type { Allowed } from "../../../src/garment/allowed.ts";
import type { Garment } from "../../../src/garment/garment.ts";
import { readGarment } from "../../../src/garment/read-garment.ts";
import type { ExpressionNode } from "../../../src/motif/expression.ts";
import { garmentText } from "../../support/garment-text.ts";

function read(text: string | Uint8Array, name = "sleeve.yaml"): Garment {
  const { garment, diagnostics } = readGarment(text, name);
  expect(diagnostics).toEqual([]);
  return garment!;
}

const list = (...values: number[]): Allowed => ({ kind: "list", values });
const from = (least: number): Allowed => ({ kind: "from", least });
const upTo = (first: number, last: number): Allowed =>
  list(...Array.from({ length: last - first + 1 }, (_, index) => first + index));

const SLEEVE = `format: evenrow/1
title: Sleeve with a crossed cord
bed: { needles: 150, pitch: 6.5 mm }
gauge:
  ground: { stitches: 22, rows: 31, over: 10 cm, within: 2 % }
  cord: { needles: 3, stitches: 19, over: 10 cm, thickness: 5 mm }
yarn:                                                     # optional
  ground: { tex: 370 }
  cord: { tex: 370 }
pieces:
  sleeve:
    outline:                                              # from the cast-on edge upward
      - { height: 0 cm, width: 20 cm }
      - { height: 33 cm, width: 31 cm }
      - { height: 36 cm, width: 31 cm }
    marks: { rib top: 4 cm, underarm: 33 cm }
    grow: 1 cm
    shrink: 1 cm
motifs:
  plait:
    like: crossed cord
    interval: { allow: [2, 4, 6, 8], prefer: 4 }
    spread: { allow: 2..9, prefer: 3 }
    ease: { from: -5 %, to: 15 %, prefer: 2 % }
place:
  - motif: plait
    on: sleeve
    from: rib top
    to: underarm
    repeats: { allow: 1..99 }
    columns: 1
    margins: { bottom: 2..20, top: 0..12, side: { least: 5 } }
weights: { length: 3, balance: 0.5, ease: 1, interval: 1.5, spread: 1.2 }
`;

describe("a whole garment file", () => {
  const number = (value: number): ExpressionNode => ({ kind: "number", value });
  const quantity = (name: string): ExpressionNode => ({ kind: "quantity", name });
  const minus = (of: ExpressionNode): ExpressionNode => ({ kind: "negate", of });
  const twiceInterval: ExpressionNode = {
    kind: "binary",
    operator: "*",
    left: number(2),
    right: quantity("interval"),
  };
  const at = (path: readonly (string | number)[], source: string, tree: ExpressionNode) => ({
    source,
    path,
    tree,
  });
  const interval = quantity("interval");
  const spread = quantity("spread");
  const strand = (name: string, first: number, start: ExpressionNode, signs: readonly string[]) => {
    const path = ["motifs", "plait", "strands", name];
    const side = (sign: string): ExpressionNode => (sign === "-" ? minus(spread) : spread);
    const anchor = (block: string, index: number, sign: string, source: string, row: ExpressionNode) => ({
      needle: at([...path, block, index, 0], `${sign}spread`, side(sign)),
      row: at([...path, block, index, 1], source, row),
    });
    const [leadIn = "", one = "", two = ""] = signs;
    return {
      name,
      start: {
        needle: at([...path, "start", 0], String(first), start),
        row: at([...path, "start", 1], "0", number(0)),
      },
      leadIn: [anchor("lead-in", 0, leadIn, "interval", interval)],
      repeat: [
        anchor("repeat", 0, one, "interval", interval),
        anchor("repeat", 1, two, "2 * interval", twiceInterval),
      ],
    };
  };

  it("is read exactly", () => {
    expect(read(SLEEVE)).toEqual({
      title: "Sleeve with a crossed cord",
      bed: { needles: 150, pitchMm: 6.5, carriage: "right" },
      gauge: {
        ground: { stitches: 22, rows: 31, overMm: 100, within: { stitches: 0.02, rows: 0.02 } },
        cord: { needles: 3, stitches: 19, overMm: 100, thicknessMm: 5 },
      },
      yarn: { ground: { tex: 370 }, cord: { tex: 370 } },
      pieces: [
        {
          name: "sleeve",
          path: ["pieces", "sleeve"],
          outline: [
            { heightMm: 0, widthMm: 200 },
            { heightMm: 330, widthMm: 310 },
            { heightMm: 360, widthMm: 310 },
          ],
          marks: [
            { name: "cast-on", heightMm: 0 },
            { name: "rib top", heightMm: 40 },
            { name: "underarm", heightMm: 330 },
            { name: "bind-off", heightMm: 360 },
          ],
          neck: [],
          growMm: 10,
          shrinkMm: 10,
          limitsLength: true,
          carriage: "right",
        },
      ],
      motifs: [
        {
          name: "plait",
          path: ["motifs", "plait"],
          like: "crossed cord",
          kind: "cord",
          quantities: [
            { name: "interval", unit: "rows", allowed: list(2, 4, 6, 8), prefer: 4 },
            { name: "spread", unit: "needles", allowed: upTo(2, 9), prefer: 3 },
          ],
          lead: at(["motifs", "plait", "lead"], "interval", interval),
          repeat: at(["motifs", "plait", "repeat"], "2 * interval", twiceInterval),
          rules: [],
          strands: [
            strand("left", -1, number(-1), ["-", "", "-"]),
            strand("right", 1, number(1), ["", "-", ""]),
          ],
          folded: [["left", "right"]],
          order: ["left", "right"],
          ease: { from: -0.05, to: 0.15, prefer: 0.02 },
          reserve: 0.15,
          markerEvery: 10,
        },
      ],
      placements: [
        {
          path: ["place", 0],
          motif: "plait",
          piece: "sleeve",
          from: "rib top",
          to: "underarm",
          repeats: { allowed: upTo(1, 99) },
          columns: { allowed: list(1) },
          gap: { allowed: list(0) },
          margins: { bottom: upTo(2, 20), top: upTo(0, 12), sides: { kind: "centred", least: 5 } },
          meet: [],
          mirror: false,
          unfinished: "plain",
        },
      ],
      matches: [],
      weights: { length: 3, balance: 0.5, ease: 1, interval: 1.5, spread: 1.2, waste: 0.1 },
    });
  });

  it("is the same as JSON, indented by spaces or tabs or not at all, with a byte order mark or CRLF", () => {
    const expected = read(SLEEVE);
    const data: unknown = parse(SLEEVE);
    for (const indent of [0, 2, "\t"])
      expect(read(JSON.stringify(data, null, indent), "a.json")).toEqual(expected);
    expect(read(`\ufeff${SLEEVE}`)).toEqual(expected);
    expect(read(SLEEVE.replaceAll("\n", "\r\n"))).toEqual(expected);
    expect(read(new TextEncoder().encode(`\ufeff${SLEEVE}`))).toEqual(expected);
  });

  it("keeps the places of its values", () => {
    const { locate } = readGarment(SLEEVE, "sleeve.yaml");
    expect(locate(["pieces", "sleeve", "grow"])).toEqual({ line: 17, column: 11 });
    expect(locate(["pieces", "sleeve", "outline", 1, "width"])).toEqual({ line: 14, column: 33 });
    expect(locate(["place", 0, "margins", "side", "least"])).toEqual({ line: 32, column: 58 });
    expect(locate(["motifs", "plait", "interval"])).toEqual({ line: 22, column: 15 });
  });

  it("finds the nearest written thing for what is not written", () => {
    const { locate } = readGarment(SLEEVE, "sleeve.yaml");
    expect(locate(["motifs", "plait", "strands", "left", "repeat", 0, 1])).toEqual({ line: 21, column: 5 });
    expect(locate(["place", 7])).toEqual({ line: 26, column: 3 });
    expect(locate([])).toEqual({ line: 1, column: 1 });
    expect(locate(["__proto__", "constructor"])).toEqual({ line: 1, column: 1 });
  });

  it.each(["cable-sleeve", "front", "scarf", "sleeve", "too-narrow"])(
    "sample %s has no mistake",
    (sample) => {
      const { garment, diagnostics } = readGarment(readFileSync(`samples/${sample}.yaml`), `${sample}.yaml`);
      expect(diagnostics).toEqual([]);
      expect(garment?.placements.length).toBeGreaterThan(0);
    },
  );
});

describe("what need not be written", () => {
  it("has its defaults", () => {
    const garment = read(
      garmentText({ place: "place: [{ motif: plait, on: sleeve }]" }),
      "patterns/winter/long sleeve.v2.yaml",
    );
    expect(garment.title).toBe("long sleeve.v2");
    expect(garment.bed).toEqual({ needles: 150, carriage: "right" });
    expect(garment.yarn).toEqual({});
    expect(garment.pieces[0]).toMatchObject({ growMm: 0, shrinkMm: 0, neck: [], carriage: "right" });
    expect(garment.motifs[0]).toMatchObject({
      ease: { from: -0.05, to: 0.15, prefer: 0.02 },
      reserve: 0.15,
      rules: [],
    });
    expect(garment.placements[0]).toEqual({
      path: ["place", 0],
      motif: "plait",
      piece: "sleeve",
      from: "cast-on",
      to: "bind-off",
      repeats: { allowed: from(1) },
      columns: { allowed: list(1) },
      gap: { allowed: list(0) },
      margins: { bottom: from(0), top: from(0), sides: { kind: "centred", least: 0 } },
      meet: [],
      mirror: false,
      unfinished: "plain",
    });
    expect(garment.weights).toEqual({
      length: 3,
      balance: 0.5,
      ease: 1,
      interval: 1.5,
      spread: 1.2,
      waste: 0.1,
    });
  });

  it("ends a placement at the neck where the piece has one", () => {
    const garment = read(
      garmentText({
        pieces: `pieces:
  front:
    outline: [{ height: 0 cm, width: 40 cm }, { height: 60 cm, width: 40 cm }]
    neck: [{ height: 52 cm, width: 0 cm }, { height: 60 cm, width: 16 cm }]
    carriage: left`,
        place: "place: [{ motif: plait, on: front }]",
      }),
    );
    expect(garment.placements[0]).toMatchObject({ from: "cast-on", to: "neck" });
    expect(garment.pieces[0]?.neck).toEqual([
      { heightMm: 520, widthMm: 0 },
      { heightMm: 600, widthMm: 160 },
    ]);
    expect(garment.pieces[0]?.marks).toEqual([
      { name: "cast-on", heightMm: 0 },
      { name: "neck", heightMm: 520 },
      { name: "bind-off", heightMm: 600 },
    ]);
    expect(garment.pieces[0]?.carriage).toBe("left");
  });

  it("takes the carriage's side from the bed where the piece does not say", () => {
    const garment = read(garmentText({ bed: "bed: { needles: 150, carriage: left }" }));
    expect(garment.pieces[0]?.carriage).toBe("left");
  });

  it("keeps the other weights where some are written", () => {
    const garment = read(garmentText({ weights: "weights: { length: 0, gap: 2.5 }" }));
    expect(garment.weights).toEqual({
      length: 0,
      balance: 0.5,
      ease: 1,
      interval: 1.5,
      spread: 1.2,
      waste: 0.1,
      gap: 2.5,
    });
  });
});

describe("shapes", () => {
  it("may have two sides of their own, and steps", () => {
    const garment = read(
      garmentText({
        pieces: `pieces:
  sleeve:
    outline:
      - { height: 0 mm, left: 10 cm, right: 0 cm }
      - { height: 1/2 m, left: 10 cm, right: 5 in }
      - { height: 0.5 m, left: 6 cm, right: 5 in }
      - { height: (50 + 2 * 5) cm, width: 12 cm }
    marks: { rib top: 0 cm, underarm: 60 cm }`,
      }),
    );
    expect(garment.pieces[0]?.outline).toEqual([
      { heightMm: 0, leftMm: 100, rightMm: 0 },
      { heightMm: 500, leftMm: 100, rightMm: 127 },
      { heightMm: 500, leftMm: 60, rightMm: 127 },
      { heightMm: 600, widthMm: 120 },
    ]);
  });

  it("may have names that look like something else", () => {
    const garment = read(
      garmentText({
        format: "format: evenrow/1\ntitle: 1.10",
        pieces:
          "pieces:\n  no: { outline: [{ height: 0 cm, width: 9 cm }, { height: 9 cm, width: 9 cm }], marks: { 2: 2 cm } }",
        place: "place: [{ motif: plait, on: no, from: 2 }]",
      }),
    );
    expect(garment.title).toBe("1.10");
    expect(garment.placements[0]).toMatchObject({ piece: "no", from: "2" });
  });

  it("may be repeated by reference", () => {
    const garment = read(
      garmentText({
        pieces: `pieces:
  sleeve: &shape { outline: [{ height: 0 cm, width: 9 cm }, { height: 9 cm, width: 9 cm }] }
  other: *shape`,
        place: "place: [{ motif: plait, on: other }]",
      }),
    );
    expect(garment.pieces.map(({ name }) => name)).toEqual(["sleeve", "other"]);
    expect(garment.pieces[1]?.outline).toEqual(garment.pieces[0]?.outline);
  });
});

describe("what is allowed", () => {
  const repeats = (text: string) =>
    read(garmentText({ place: `place: [{ motif: plait, on: sleeve, repeats: ${text} }]` })).placements[0]
      ?.repeats;

  it.each<[string, Allowed, number?]>([
    ["4", list(4)],
    ["4.0", list(4)],
    ["[6, 2, 4, 2]", list(2, 4, 6)],
    ["2..5", list(2, 3, 4, 5)],
    ["' 2 .. 5 '", list(2, 3, 4, 5)],
    ["3..3", list(3)],
    ["{ from: 2, to: 9, step: 3 }", list(2, 5, 8)],
    ["{ from: 2, to: 4 }", list(2, 3, 4)],
    ["{ allow: { from: 2, to: 4 } }", list(2, 3, 4)],
    ["{ allow: 2..4, prefer: 3 }", list(2, 3, 4), 3],
    ["{ prefer: 3 }", from(1), 3],
  ])("%s", (text, allowed, prefer) => {
    expect(repeats(text)).toEqual({ allowed, ...(prefer === undefined ? {} : { prefer }) });
  });

  it("may be open for margins, or differ from side to side", () => {
    const margins = (text: string) =>
      read(garmentText({ place: `place: [{ motif: plait, on: sleeve, margins: ${text} }]` })).placements[0]
        ?.margins;
    expect(margins("{ bottom: { least: 2 }, top: 3, side: 4 }")).toEqual({
      bottom: from(2),
      top: list(3),
      sides: { kind: "centred", least: 4 },
    });
    expect(margins("{ left: 2..4, right: { least: 3 } }")?.sides).toEqual({
      kind: "free",
      left: list(2, 3, 4),
      right: from(3),
    });
    expect(margins("{ right: 7 }")?.sides).toEqual({ kind: "free", left: from(0), right: list(7) });
  });
});
