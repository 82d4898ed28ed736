import { describe, expect, test } from "vitest";
import { readGarment } from "../../../../src/garment/read-garment.ts";
import { garmentText } from "../../../support/garment-text.ts";

const read = (line: string) => readGarment(garmentText({ yarn: line }), "test.yaml");

describe("steady", () => {
  test.each([
    ["steady: true", 1],
    ["steady: false", undefined],
    ["steady: 70 %", 0.7],
    ["steady: 0 %", 0],
    ["", undefined],
  ])("is read: %s", (line, share) => {
    expect(read(line).garment?.steady).toBe(share);
  });

  test.each(["steady: often", "steady: 120 %", "steady: 0.7", "steady: [true]", "steady: -5 %"])(
    "is refused: %s",
    (line) => {
      const { garment, diagnostics } = read(line);
      expect(garment).toBeUndefined();
      expect(diagnostics).toMatchObject([{ severity: "error", path: ["steady"] }]);
    },
  );
});

test.each([
  ["yes", "true"],
  ["On", "true"],
  ["no", "false"],
])("steady: %s is refused, and %s offered", (word, right) => {
  expect(read(`steady: ${word}`).diagnostics).toMatchObject([{ severity: "error", expected: right }]);
});

test.each([
  ["2 %", { stitches: 0.02, rows: 0.02 }],
  ["{ stitches: 0.9 %, rows: 0.7 % }", { stitches: 0.009, rows: 0.007 }],
  ["{ rows: 0.7 % }", { rows: 0.007 }],
])("how far off the ground's gauge may be is read for both ways or for each: %s", (within, read) => {
  const gauge = `gauge:\n  ground: { stitches: 22, rows: 31, over: 10 cm, within: ${within} }\n  cord: { needles: 3, stitches: 19, over: 10 cm }`;
  const { ground } = readGarment(garmentText({ gauge }), "test.yaml").garment!.gauge;
  expect(Object.keys(ground.within!)).toEqual(Object.keys(read));
  for (const [way, share] of Object.entries(read))
    expect(ground.within![way as keyof typeof read]).toBeCloseTo(share, 12);
});

test("how far off a cord's gauge may be is read like the ground's", () => {
  const gauge = (within: string): string =>
    `gauge:\n  ground: { stitches: 22, rows: 31, over: 10 cm }\n  cord: { needles: 3, stitches: 19, over: 10 cm, within: ${within} }`;
  expect(readGarment(garmentText({ gauge: gauge("1.5 %") }), "test.yaml").garment?.gauge.cord?.within).toBe(
    0.015,
  );
  expect(readGarment(garmentText({ gauge: gauge("50 %") }), "test.yaml").diagnostics).toMatchObject([
    { severity: "error", path: ["gauge", "cord", "within"] },
  ]);
});

test.each([
  ["grow: 1 cm", true],
  ["shrink: 0 cm", true],
  ["carriage: left", undefined],
])("whether a piece's length has limits is known from what is stated: %s", (line, stated) => {
  const pieces = `pieces:\n  sleeve:\n    outline: [{ height: 0 cm, width: 20 cm }, { height: 36 cm, width: 31 cm }]\n    marks: { rib top: 4 cm, underarm: 33 cm }\n    ${line}`;
  expect(readGarment(garmentText({ pieces }), "test.yaml").garment?.pieces[0]?.limitsLength).toBe(stated);
});
