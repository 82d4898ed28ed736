import { describe, expect, it } from "vitest";
import type { Garment } from "../../../../src/garment/garment.ts";
import { garmentText } from "../../../support/garment-text.ts";
import { type Changes, expectOnly, type Mistake } from "../../../support/one-mistake.ts";
import { soundGarment } from "../../../support/run-garment.ts";

const wearer = (text: string): Changes => ({ yarn: `wearer: ${text}` });
const piece = (text: string): Changes => ({
  pieces: `pieces:\n  sleeve: { outline: [{ height: 0 cm, width: 20 cm }, { height: 36 cm, width: 31 cm }], marks: { rib top: 4 cm, underarm: 33 cm }, ${text} }`,
});
const read = (changes: Changes): Garment => soundGarment(garmentText(changes));

describe("the wearer", () => {
  it.each<[string, Garment["wearer"]]>([
    ["{ age: 5, height: 110 cm }", { path: ["wearer"], ageYears: 5, heightMm: 1100 }],
    ["{ age: 5 years }", { path: ["wearer"], ageYears: 5 }],
    ["{ age: 1 year }", { path: ["wearer"], ageYears: 1 }],
    ["{ age: 18 months }", { path: ["wearer"], ageYears: 1.5 }],
    ["{ age: 7.5 }", { path: ["wearer"], ageYears: 7.5 }],
    ["{ height: 48 in }", { path: ["wearer"], heightMm: 1219.2 }],
    ["{}", undefined],
  ])("reads %s", (text, expected) => {
    expect(read(wearer(text)).wearer).toEqual(expected);
  });

  it.each<Mistake>([
    [wearer("§5"), "wrong-type", "5", "{ age: 5, height: 110 cm }"],
    [wearer("{ §agee: 5 }"), "unknown-key", "agee", "age (the nearest known key)"],
    [wearer("{ age: §five }"), "not-an-age", '"five"', "an age such as 5 years"],
    [wearer('{ age: §"5" }'), "missing-unit", '"5"', "5 years, or another of years or months"],
    [wearer("{ age: §5 yrs }"), "unknown-unit", '"5 yrs"', "5 years"],
    [wearer("{ age: §5 weeks }"), "unknown-unit", '"5 weeks"', "one of years or months"],
    [wearer("{ age: §-1 }"), "negative-size", "-1", "from 0 to 130"],
    [wearer("{ age: §500 months2 }"), "not-an-age", '"500 months2"', "an age such as 5 years"],
    [wearer("{ age: §200 years }"), "absurd-size", '"200 years"', "to 130 years"],
    [wearer("{ age: §[5] }"), "wrong-type", "a list of 1", "such as 5 years"],
    [wearer("{ height: §110 }"), "missing-unit", "110", "110 cm"],
    [wearer("{ height: §11 cm }"), "absurd-size", '"11 cm"', "from 25 cm to 280 cm"],
  ])("%j is %s", expectOnly);
});

describe("where on the body a piece lies", () => {
  it("is read from part", () => {
    expect(read(piece("part: hood")).pieces[0]?.part).toBe("hood");
    expect(read({}).pieces[0]).not.toHaveProperty("part");
  });

  it.each<Mistake>([
    [piece("part: §hod"), "wrong-word", '"hod"', "hood"],
    [piece("part: §3"), "wrong-word", "3", "hood or collar or front or back or sleeve or other"],
  ])("%j is %s", expectOnly);
});

describe("the marker threads of a cord", () => {
  const plait = (text: string): Changes => ({ motifs: `motifs:\n  plait: { like: crossed cord, ${text} }` });
  const every = (changes: Changes): number | undefined => {
    const [motif] = read(changes).motifs;
    return motif?.kind === "cord" ? motif.markerEvery : undefined;
  };

  it("are ten cord stitches apart, or as many as marker says", () => {
    expect(every({})).toBe(10);
    expect(every(plait("marker: 25"))).toBe(25);
  });

  it.each<Mistake>([
    [plait("marker: §1"), "absurd-size", "1", "from 2 to 1000"],
    [plait("marker: §2.5"), "not-whole", "2.5", "2 or 3"],
    [plait("marker: §ten"), "wrong-type", '"ten"', "a number from 2 to 1000"],
  ])("%j is %s", expectOnly);
});
