import { describe, expect, it } from "vitest";
import type { OnHand } from "../../../../src/garment/garment.ts";
import { readGarment } from "../../../../src/garment/read-garment.ts";
import { garmentText } from "../../../support/garment-text.ts";
import { type Changes, expectOnly, type Mistake } from "../../../support/one-mistake.ts";
import { soundGarment } from "../../../support/run-garment.ts";

const yarn = "yarn: { ground: { tex: 400 }, cord: { tex: 400 } }";
const onHand = (text: string, known = yarn): OnHand =>
  soundGarment(garmentText({ yarn: known, onHand: `on hand: ${text}` })).onHand!;

describe("what is on hand", () => {
  it.each<[string, OnHand["supplies"]]>([
    ["{ cord: 12 m }", [{ path: ["on hand", "cord"], of: "cord", amount: 12, unit: "m" }]],
    ["{ cord: 40 in }", [{ path: ["on hand", "cord"], of: "cord", amount: 1.016, unit: "m" }]],
    ["{ cord yarn: 40 g }", [{ path: ["on hand", "cord yarn"], of: "cord yarn", amount: 40, unit: "g" }]],
    [
      "{ ground yarn: { balls: 6, each: 50 g } }",
      [
        {
          path: ["on hand", "ground yarn"],
          of: "ground yarn",
          amount: 300,
          unit: "g",
          balls: { count: 6, each: { amount: 50, unit: "g" } },
        },
      ],
    ],
    [
      "{ yarn: { balls: 2.5, each: 125 m } }",
      [
        {
          path: ["on hand", "yarn"],
          of: "yarn",
          amount: 312.5,
          unit: "m",
          balls: { count: 2.5, each: { amount: 125, unit: "m" } },
        },
      ],
    ],
    [
      "{ cord: 2 m, ground yarn: 0.4 kg }",
      [
        { path: ["on hand", "cord"], of: "cord", amount: 2, unit: "m" },
        { path: ["on hand", "ground yarn"], of: "ground yarn", amount: 400, unit: "g" },
      ],
    ],
  ])("reads %s", (text, supplies) => {
    expect(onHand(text)).toEqual({ supplies, leastWaste: false });
  });

  const labelled = "{ balls: 6, each: { weight: 50 g, length: 125 m } }";
  it("takes the yarn's tex from the label of a ball, where the file states none", () => {
    const read = (text: string, known: string) =>
      soundGarment(garmentText({ yarn: known, onHand: `on hand: ${text}` }));
    const ground = read(`{ ground yarn: ${labelled} }`, "");
    expect(ground.yarn).toEqual({ ground: { tex: 400 } });
    expect(ground.onHand!.supplies).toMatchObject([
      { amount: 300, unit: "g", balls: { count: 6, each: { amount: 50, unit: "g" } } },
    ]);
    expect(ground.onHand!.supplies[0]).not.toHaveProperty("label");
    expect(read(`{ yarn: ${labelled} }`, "").yarn).toEqual({ ground: { tex: 400 }, cord: { tex: 400 } });
    const weighed = "yarn: { cord: { swatch: { stitches: 40, weight: 4 g } } }";
    expect(read(`{ cord yarn: ${labelled} }`, weighed).yarn.cord).toEqual({
      tex: 400,
      swatch: { stitches: 40, grams: 4 },
    });
  });

  it("goes by the tex that the file states, and warns where the label has another one", () => {
    const text = (tex: number): string =>
      garmentText({
        yarn: `yarn: { ground: { tex: ${tex} } }`,
        onHand: `on hand: { ground yarn: ${labelled} }`,
      });
    expect(readGarment(text(410), "x.yaml").diagnostics).toEqual([]);
    const { garment, diagnostics } = readGarment(text(450), "x.yaml");
    expect(garment!.yarn.ground).toEqual({ tex: 450 });
    expect(diagnostics).toMatchObject([
      {
        severity: "warning",
        message: "by this label the ground yarn has 400 tex, and the file states 450",
        path: ["on hand", "ground yarn", "each"],
      },
    ]);
  });

  it("reads that as little as can be is to be left over", () => {
    expect(onHand("{ cord: 12 m, prefer: least waste }").leastWaste).toBe(true);
  });

  it("needs nothing of a yarn that is told by length, and no tex of one that is weighed", () => {
    expect(onHand("{ ground yarn: 500 m }", "").supplies).toHaveLength(1);
    const weighed = "yarn: { ground: { swatch: { stitches: 50, rows: 70, weight: 38 g } } }";
    expect(onHand("{ ground yarn: 500 g }", weighed).supplies).toHaveLength(1);
  });

  it("is nothing where it is not written, and pieces are made once", () => {
    const garment = soundGarment(garmentText());
    expect(garment).not.toHaveProperty("onHand");
    expect(garment.pieces[0]).not.toHaveProperty("make");
  });

  it("reads how many of a piece are made", () => {
    const text = garmentText().replace("sleeve:\n", "sleeve:\n    make: 2\n");
    expect(soundGarment(text).pieces[0]!.make).toBe(2);
  });

  const written = (text: string, known = yarn): Changes => ({ yarn: known, onHand: `on hand: ${text}` });
  const of = (supply: string, known = yarn): Changes => written(`{ ${supply} }`, known);
  const weighedCord = "yarn: { cord: { swatch: { stitches: 40, weight: 4 g } } }";
  it.each<Mistake>([
    [written("§12 m"), "wrong-type", '"12 m"', "{ cord: 12 m"],
    [{ onHand: "§on hand: {}" }, "missing-key", undefined, "an amount of cord, cord yarn"],
    [{ onHand: "§on hand: { prefer: least waste }" }, "missing-key", undefined, "an amount of cord"],
    [of("§chord: 12 m, cord: 12 m"), "unknown-key", "chord", "cord (the nearest known key)"],
    [of("cord: §12"), "missing-unit", "12", "12 cm, or another"],
    [of("cord: §12 g"), "unknown-unit", '"12 g"', "one of mm, cm, m or in"],
    [of("cord: §0 m"), "zero-size", '"0 m"', "from 10 cm"],
    [of("cord: §-1 m"), "negative-size", '"-1 m"', "from 10 cm"],
    [of("cord: §12 metres"), "unknown-unit", '"12 metres"', "12 m"],
    [of("cord: §{ balls: 2, each: 5 m }"), "wrong-type", "keys (balls, each)", "a number and a unit"],
    [of("cord yarn: §40"), "missing-unit", "40", "40 g or 40 m"],
    [
      of("ground yarn: { balls: 6, each: §{ weight: 50 g, length: 270 m } }"),
      "conflicting-keys",
      "50 g = 270 m",
      "tex: 185",
    ],
    [
      of("ground yarn: { balls: 6, §each: { weight: 50 g } }"),
      "missing-key",
      undefined,
      "{ weight: 50 g, length: 135 m }",
    ],
    [of("ground yarn: { balls: 6, each: { weight: 50 g, length: §135 } }"), "missing-unit", "135", "135 cm"],
    [of("ground yarn: §5 x 50 g"), "wrong-type", '"5 x 50 g"', "{ balls: 5, each: 50 g }"],
    [of("ground yarn: §5 balls"), "wrong-type", '"5 balls"', "{ balls: 5, each: 50 g }"],
    [
      of("ground yarn: §2.5 balls of 100 m"),
      "wrong-type",
      '"2.5 balls of 100 m"',
      "{ balls: 2.5, each: 100 m }",
    ],
    [of("§ground: 5 balls"), "unknown-key", "ground", "ground yarn (the nearest known key)"],
    [of("cord yarn: §[40 g]"), "wrong-type", "a list of 1", "300 g, 400 m, or { balls: 6"],
    [of("cord yarn: §40 stone"), "unknown-unit", '"40 stone"', "one of g, kg or oz"],
    [of("cord yarn: §much"), "not-a-weight", '"much"', "a weight such as"],
    [of('cord yarn: §"40,5 g"'), "decimal-comma", '"40,5 g"', "40.5 g"],
    [of("ground yarn: §0 g"), "zero-size", '"0 g"', "from 0.1 g"],
    [of("ground yarn: §2 cm"), "absurd-size", '"2 cm"', "from 10 cm"],
    [of("§ground yarn: { balls: 6 }"), "missing-key", undefined, "{ balls: 6, each: 50 g }"],
    [of("§ground yarn: { each: 50 g }"), "missing-key", undefined, "{ balls: 6, each: 50 g }"],
    [of("ground yarn: { balls: §six, each: 50 g }"), "wrong-type", '"six"', "a number from 0.1"],
    [of("ground yarn: { balls: §0, each: 50 g }"), "zero-size", "0", "from 0.1"],
    [of("ground yarn: { balls: 6, each: §50 }"), "missing-unit", "50", "50 g or 50 m"],
    [
      of("ground yarn: { balls: 6, each: 50 g, §length: 9 m }"),
      "unknown-key",
      "length",
      "the label of a ball",
    ],
    [of("cord: 12 m, prefer: §least"), "wrong-word", '"least"', "least waste"],
    [of("§yarn: 300 g, ground yarn: 200 g"), "conflicting-keys", undefined, "yarn alone"],
    [of("§yarn: 300 g, cord yarn: 200 g"), "conflicting-keys", undefined, "yarn alone"],
    [of("ground yarn: §300 g", ""), "yarn-not-known", '"300 g"', "ground: { tex: 370 }"],
    [of("ground yarn: §{ balls: 6, each: 50 g }", ""), "yarn-not-known", "keys (balls, each)", "tex: 370"],
    [of("cord yarn: §300 g", weighedCord), "yarn-not-known", '"300 g"', "cord: { tex: 370 }"],
    [of("cord yarn: §300 m", weighedCord), "yarn-not-known", '"300 m"', "cord: { tex: 370 }"],
    [of("yarn: §300 g", "yarn: { ground: { tex: 370 } }"), "yarn-not-known", '"300 g"', "cord: { tex: 370 }"],
    [
      of("§yarn: 300 g", "yarn: { ground: { tex: 370 }, cord: { tex: 400 } }"),
      "conflicting-keys",
      undefined,
      "one tex for both",
    ],
    [{ pieces: piecesMade("§0") }, "zero-size", "0", "from 1 to 1000"],
    [{ pieces: piecesMade("§1.5") }, "not-whole", "1.5", "1 or 2"],
    [{ pieces: piecesMade("§twice") }, "wrong-type", '"twice"', "a number from 1"],
  ])("%j is %s", expectOnly);

  it("tells of both mistakes where cord and yarn are wrong", () => {
    const { diagnostics } = readGarment(garmentText(written("{ cord: 12, cord yarn: 40 }")), "x.yaml");
    expect(diagnostics.map(({ code }) => code)).toEqual(["missing-unit", "missing-unit"]);
  });
});

function piecesMade(make: string): string {
  return `pieces:
  sleeve:
    make: ${make}
    outline: [{ height: 0 cm, width: 20 cm }, { height: 36 cm, width: 31 cm }]
    marks: { rib top: 4 cm, underarm: 33 cm }`;
}
