import { describe, expect, test } from "vitest";
import type { ShapeDescription } from "../../../src/shape/description.ts";
import { makeShape, measurementsOf } from "../../../src/shape/make-shape.ts";

const BIB: ShapeDescription = {
  about: "a bib",
  part: "front",
  choices: { neck: { means: "the neckline", words: ["square", "crew"] } },
  measurements: {
    width: { means: "width of the bib" },
    length: { means: "length of the bib" },
    "neck width": { means: "width of the neck", otherwise: "width / 2" },
    "armhole depth": { means: "height of the ties", otherwise: "length / 3" },
  },
  rules: [
    {
      less: "width",
      than: "length",
      trouble: "it is as wide as it is long",
      right: "a greater length",
      blame: ["length"],
    },
    {
      when: { neck: "crew" },
      less: "neck_width",
      than: "100",
      trouble: "a round neck is too wide",
      right: "a narrower neck",
      blame: ["neck width"],
    },
  ],
  outline: [
    { height: "0", width: "width" },
    { height: "length", width: "width" },
  ],
  marks: { ties: "length - armhole_depth" },
};

const made = (written: Readonly<Record<string, number>>, neck = "square", description = BIB) =>
  makeShape("bib", description, {
    written: new Map(Object.entries(written)),
    choices: new Map([["neck", neck]]),
    fitMm: 0,
    stitch: { widthMm: 5, heightMm: 4 },
  });

describe("a shape", () => {
  test("yields outline, neck and marks", () => {
    expect(made({ width: 200, length: 300 })).toEqual({
      outline: [
        { heightMm: 0, widthMm: 200 },
        { heightMm: 300, widthMm: 200 },
      ],
      neck: [
        { heightMm: 200, widthMm: 100 },
        { heightMm: 300, widthMm: 100 },
      ],
      marks: [{ name: "ties", heightMm: 200 }],
      taken: [],
    });
  });

  test("with a neckline has a neck depth that may be written", () => {
    expect(Object.keys(measurementsOf(BIB, new Map([["neck", "square"]])))).toContain("neck depth");
    expect(measurementsOf(BIB, new Map())).toBe(BIB.measurements);
    expect(made({ width: 200, length: 300, "neck depth": 40 })).toMatchObject({
      neck: [{ heightMm: 260 }, { heightMm: 300 }],
    });
  });

  test("is refused by a rule that does not hold, and by one of a choice only under that choice", () => {
    expect(made({ width: 300, length: 300 })).toMatchObject({
      trouble: {
        message: "this bib can't be made: it is as wide as it is long",
        found: "30 cm beside 30 cm",
        blame: ["length"],
      },
    });
    expect(made({ width: 220, length: 300 })).toHaveProperty("outline");
    expect(made({ width: 220, length: 300 }, "crew")).toMatchObject({
      trouble: { message: "this bib can't be made: a round neck is too wide" },
    });
  });

  test("is refused where one of its marks lies outside", () => {
    expect(made({ width: 200, length: 300, "armhole depth": 310 })).toMatchObject({
      trouble: { message: "the mark ties would lie below the piece", found: "-1 cm" },
    });
    const high = { ...BIB, marks: { ties: "length + 10" } };
    expect(made({ width: 200, length: 300 }, "square", high)).toMatchObject({
      trouble: {
        message: "the mark ties would lie above the piece",
        expected: "a height from 0 cm to 30 cm",
      },
    });
  });

  test("asks for what it lacks", () => {
    expect(made({ width: 200 })).toMatchObject({
      trouble: { code: "missing-measurement", expected: "length: 20 cm, or what it measures" },
    });
  });

  test("with a sum that does not read is a fault of the program, and not of the knitter", () => {
    const broken = { ...BIB, marks: { ties: "lenght" } };
    expect(() => made({ width: 200, length: 300 }, "square", broken)).toThrow(/does not read/);
  });
});
