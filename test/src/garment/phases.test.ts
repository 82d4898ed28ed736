import { describe, expect, it } from "vitest";
import type { Code } from "../../../src/diagnostics/codes.ts";
import { readGarment } from "../../../src/garment/read-garment.ts";
import { garmentText, marked } from "../../support/garment-text.ts";

const pieces = `pieces:
  sleeve: &shape
    outline: [{ height: 0 cm, width: 20 cm }, { height: 36 cm, width: 31 cm }]
    marks: { rib top: 4 cm, underarm: 33 cm }
  back: *shape
  scarf: { outline: [{ height: 0 cm, width: 20 cm }, { height: 36 cm, width: 20 cm }] }`;

const place = (meet: string): string => `place:
  - { motif: plait, on: sleeve, from: rib top, to: underarm${meet} }
  - { motif: plait, on: back, from: cast-on, to: underarm }`;

const file = (meet: string, match = ""): string =>
  garmentText({ pieces, place: `${place(meet === "" ? "" : `, meet: ${meet}`)}\n${match}` });

describe("what a motif meets", () => {
  it.each([
    ["{ mark: underarm, at: whole }", [{ mark: "underarm", at: "whole" }]],
    ["{ mark: rib top, at: half }", [{ mark: "rib top", at: "half" }]],
    [
      "[{ mark: rib top, at: whole }, { mark: underarm, at: 3 }]",
      [
        { mark: "rib top", at: "whole" },
        { mark: "underarm", at: { rows: 3 } },
      ],
    ],
  ])("%s", (text, expected) => {
    expect(readGarment(file(text), "a.yaml").garment?.placements[0]?.meet).toEqual(expected);
  });

  it("is nothing where nothing is said", () => {
    const { garment } = readGarment(file(""), "a.yaml");
    expect(garment?.placements[0]).toMatchObject({ meet: [], mirror: false });
    expect(garment?.matches).toEqual([]);
  });

  it.each<readonly [string, Code, string]>([
    ["{ mark: §ribtop, at: whole }", "unknown-mark", "rib top (the nearest known name)"],
    ["{ mark: §cast-on, at: whole }", "mark-outside-field", "a mark from 4 cm to 33 cm up"],
    ["{ mark: underarm, at: §hole }", "wrong-word", "whole"],
    ["{ mark: underarm, at: §-1 }", "negative-size", "from 0"],
    ["{ mark: underarm, at: §1.5 }", "not-whole", "1 or 2"],
    ["§{ mark: underarm }", "missing-key", "whole, half, or a number of rows"],
    ["§underarm", "wrong-type", "{ mark: underarm, at: whole }"],
    ["{ mark: underarm, at: whole, §row: 2 }", "unknown-key", "one of mark, at"],
  ])("%s is refused", (meet, code, expected) => {
    const { text, place: at } = marked(file(meet));
    const { garment, diagnostics } = readGarment(text, "a.yaml");
    expect(garment).toBeUndefined();
    const where = code === "missing-key" ? {} : { place: at };
    expect(diagnostics).toMatchObject([{ severity: "error", code, ...where }]);
    expect(diagnostics[0]?.expected).toContain(expected);
  });
});

describe("a match", () => {
  it("names the placements that run on into one another", () => {
    const match = "match: [{ motif: plait, on: [sleeve, back], mark: underarm }]";
    expect(readGarment(file("", match), "a.yaml").garment?.matches).toEqual([
      { path: ["match", 0], mark: "underarm", placements: [0, 1] },
    ]);
  });

  it.each<readonly [string, Code, string]>([
    ["{ motif: §plaid, on: [sleeve, back], mark: underarm }", "unknown-motif", "plait"],
    ["{ motif: plait, on: [sleeve, §bakc], mark: underarm }", "unknown-piece", "back"],
    ["{ motif: plait, on: §[sleeve], mark: underarm }", "too-few-pieces", "[front, back]"],
    ["{ motif: plait, on: §[sleeve, sleeve], mark: underarm }", "too-few-pieces", "[front, back]"],
    ["{ motif: plait, on: §sleeve, mark: underarm }", "wrong-type", "[front, back]"],
    ["{ motif: plait, on: [sleeve, back], mark: §neck }", "unknown-mark", "underarm"],
    ["{ motif: plait, on: [§sleeve, back], mark: cast-on }", "no-such-placement", "plait"],
    ["{ motif: plait, on: [sleeve, §scarf], mark: bind-off }", "no-such-placement", "bind-off"],
    ["{ motif: plait, on: [sleeve, back], §marks: underarm }", "unknown-key", "belongs to a piece"],
  ])("%s is refused", (match, code, expected) => {
    const { text, place: at } = marked(file("", `match: [${match}]`));
    const { garment, diagnostics } = readGarment(text, "a.yaml");
    expect(garment).toBeUndefined();
    const found = diagnostics.find((one) => one.code === code && one.place?.column === at.column);
    expect(found?.place).toEqual(at);
    expect(found?.expected).toContain(expected);
  });
});

it("says mirror by true or false only", () => {
  const mirrored = (text: string): string =>
    garmentText({ place: `place:\n  - { motif: plait, on: sleeve, columns: 2, mirror: ${text} }` });
  expect(readGarment(mirrored("true"), "a.yaml").garment?.placements[0]?.mirror).toBe(true);
  expect(readGarment(mirrored("yes please"), "a.yaml").diagnostics).toMatchObject([
    { code: "wrong-type", expected: "true or false" },
  ]);
});

it("says what is done with an unfinished repeat by plain or part only", () => {
  const unfinished = (text: string): string =>
    garmentText({ place: `place:\n  - { motif: plait, on: sleeve, unfinished: ${text} }` });
  for (const word of ["plain", "part"])
    expect(readGarment(unfinished(word), "a.yaml").garment?.placements[0]?.unfinished).toBe(word);
  for (const word of ["parts", "true", "3", "[part]"]) {
    const { garment, diagnostics } = readGarment(unfinished(word), "a.yaml");
    expect(garment).toBeUndefined();
    expect(diagnostics).toHaveLength(1);
    expect(diagnostics[0]?.expected).toMatch(/plain|part/);
    expect(diagnostics[0]?.place).toMatchObject({ line: expect.any(Number), column: expect.any(Number) });
  }
});
