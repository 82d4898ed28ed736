import { describe, expect, it } from "vitest";
import { examine } from "../../../src/examine/examine.ts";
import { readGarment } from "../../../src/garment/read-garment.ts";
import { BUILT_IN_SHAPES } from "../../../src/shape/builtin/index.ts";
import { garmentText, marked } from "../../support/garment-text.ts";

/** A garment whose one piece is written so; § marks the place that is looked for. */
const withPiece = (piece: string): string =>
  garmentText({
    bed: "bed: { needles: 250 }",
    pieces: `pieces:\n  sleeve: ${piece}`,
    place: "place: [{ motif: plait, on: sleeve }]",
  });
const withShape = (shape: string): string => withPiece(`{ shape: ${shape} }`);

const read = (shape: string) => readGarment(withShape(shape), "sleeve.yaml");
const pieceOf = (shape: string) => {
  const { garment, diagnostics } = read(shape);
  expect(diagnostics.filter(({ severity }) => severity === "error")).toEqual([]);
  return garment!.pieces[0]!;
};
const notesOf = (shape: string): readonly string[] =>
  read(shape)
    .diagnostics.filter(({ severity }) => severity === "note")
    .map(({ code, message }) => `${code}: ${message}`);

const FRONT =
  "like: body front, chest: 90 cm, ease: 10 cm, length: 58 cm, armhole depth: 20 cm, cross back: 38 cm";

describe("a piece made from a shape", () => {
  it("has its outline, neck, marks and part of the body", () => {
    const { outline, neck, marks, part, outlinePath } = pieceOf(`{ ${FRONT}, rib: 5 cm, neck: square }`);
    expect(outline).toEqual([
      { heightMm: 0, widthMm: 500 },
      { heightMm: 580, widthMm: 500 },
    ]);
    // A third of 50 cm is 36 stitches at 22 over 10 cm; 15 cm are 47 rows at 31, and 58 cm are 180.
    expect(neck.map(({ widthMm }) => Math.round((widthMm * 22) / 100))).toEqual([36, 36]);
    expect(neck.map(({ heightMm }) => (heightMm * 31) / 100)).toEqual([133, expect.closeTo(179.8, 9)]);
    expect(Object.fromEntries(marks.map(({ name, heightMm }) => [name, heightMm]))).toMatchObject({
      ...{ "cast-on": 0, "rib top": 50, underarm: 380, shoulder: 580, "bind-off": 580 },
      neck: expect.closeTo(429.03, 1),
    });
    expect({ part, outlinePath }).toEqual({ part: "front", outlinePath: ["pieces", "sleeve", "shape"] });
  });

  it("takes from the size what is not written, and what is written instead of it", () => {
    const taken = pieceOf("{ like: straight sleeve, size: woman M, ease: 5 cm }").outline;
    expect(taken).toEqual([
      { heightMm: 0, widthMm: 330 },
      { heightMm: 430, widthMm: 330 },
    ]);
    const written = pieceOf("{ like: straight sleeve, size: woman M, ease: 5 cm, upper arm: 30 cm }").outline;
    expect(written[0]).toEqual({ heightMm: 0, widthMm: 350 });
  });

  it("takes an ease by the name of a fit: 2 to 4 in more than the chest, 3 in the middle", () => {
    const wide = pieceOf("{ like: scarf, width: 1 cm, border: 0 cm }").outline[0];
    expect(wide).toMatchObject({ widthMm: 10 });
    const { outline } = pieceOf("{ like: body back, size: man S, ease: standard, rib: 0 cm }");
    expect(outline[0]).toEqual({ heightMm: 0, widthMm: (887.5 + 3 * 25.4) / 2 });
  });

  it("is bound off, curved and straight at a set-in armhole, the curve less than a quarter stitch off", () => {
    const { outline } = pieceOf(`{ ${FRONT}, armhole: set-in }`);
    expect(outline.slice(0, 3)).toEqual([
      { heightMm: 0, widthMm: 500 },
      { heightMm: 380, widthMm: 500 },
      { heightMm: 380, widthMm: 460 },
    ]);
    expect(outline.slice(-2)).toEqual(
      [
        { heightMm: 380 + 200 / 3, widthMm: 380 },
        { heightMm: 580, widthMm: 380 },
      ].map((station) => ({ ...station, heightMm: expect.closeTo(station.heightMm, 5) })),
    );
    expect(outline.length).toBeGreaterThan(6);
  });

  it("may have marks and a neck of its own beside the shape's", () => {
    const { garment } = readGarment(
      withPiece(
        `{ shape: { ${FRONT} }, marks: { waist: 20 cm, underarm: 37 cm }, neck: [{ height: 50 cm, width: 10 cm }] }`,
      ),
      "sleeve.yaml",
    );
    const piece = garment!.pieces[0]!;
    const marks = new Map(piece.marks.map(({ name, heightMm }) => [name, heightMm]));
    expect([marks.get("waist"), marks.get("underarm"), marks.get("neck")]).toEqual([200, 370, 500]);
    expect(piece.neck).toEqual([{ heightMm: 500, widthMm: 100 }]);
  });
});

describe("what a shape was made from", () => {
  it("is told: the size with its ranges, what is uncertain, the fit, and each assumption", () => {
    expect(notesOf("{ like: body front, size: woman S, ease: standard, armhole: set-in }")).toEqual([
      expect.stringMatching(/^from-assumption: length 57.3 cm: .*no published source$/),
      expect.stringMatching(/^from-size: woman S: .*chest 83.5 cm \(the middle of 81 to 86 cm\).*council/i),
      expect.stringMatching(/^uncertain-size: the cross back of woman S is uncertain/),
      expect.stringMatching(/^from-assumption: standard fit: 7.6 cm \(the middle of 5.1 to 10.2 cm\)/),
    ]);
    expect(notesOf("{ like: tapered sleeve, size: child 6, ease: 4 cm }")).toEqual([
      expect.stringMatching(/^from-assumption: cuff 14.2 cm: the tables have no wrist/),
      expect.stringMatching(/^from-size: child 6: .*upper arm 20.3 cm/),
    ]);
  });

  it("says so where no ease is written, and nothing where all is written", () => {
    expect(notesOf("{ like: body back, size: man S, rib: 0 cm, neck width: 18 cm }")).toContainEqual(
      expect.stringMatching(/^no-ease: /),
    );
    expect(notesOf(`{ ${FRONT} }`)).toEqual([]);
  });
});

describe("a mistake in a shape", () => {
  const mistakes: readonly (readonly [
    shape: string,
    code: string,
    found: string | undefined,
    right: string,
  ])[] = [
    ["{ like: §body frnt }", "unknown-shape", '"body frnt"', "body front (the nearest known name)"],
    ["{ like: §poncho }", "unknown-shape", '"poncho"', "one of body front, body back"],
    ["§[body front]", "wrong-type", "a list of 1", "like: body front"],
    ["{ like: body front, §cheste: 90 cm }", "unknown-key", "cheste", "chest (the nearest known key)"],
    [
      "{ like: straight sleeve, size: woman M, §cuff: 20 cm }",
      "unknown-key",
      "cuff",
      "one of like, size, upper arm",
    ],
    ["{ like: body front, size: §womn M }", "unknown-size", '"womn M"', "woman M (the nearest known name)"],
    ["{ like: body front, size: §38 }", "unknown-size", "38", "one of baby 3 months"],
    ["{ like: body front, size: woman M, armhole: §setin }", "wrong-word", '"setin"', "set-in"],
    ["{ like: body front, size: woman M, neck: §v }", "wrong-word", '"v"', "V"],
    [
      "{ like: body front, size: woman M, ease: §standart }",
      "wrong-word",
      '"standart"',
      "standard (the nearest",
    ],
    ["{ like: body front, size: woman M, ease: §5 }", "missing-unit", "5", "5 cm"],
    ["{ like: scarf, width: §0 cm }", "zero-size", '"0 cm"', "from 0.1 cm"],
    ["{ like: scarf, length: §-5 cm }", "negative-size", '"-5 cm"', "from 0.1 cm"],
    ["{ like: hat, head: 56 cm, ease: §-2 m }", "absurd-size", '"-2 m"', "from -100 cm"],
    [
      `{ ${FRONT}, armhole: set-in, shoulders: §55 cm }`,
      "shape-impossible",
      "55 cm beside 50 cm",
      "smaller cross back",
    ],
    [`{ ${FRONT}, neck width: §49 cm }`, "shape-impossible", "50.8 cm beside 50 cm", "smaller neck width"],
    [`{ ${FRONT}, rib: §40 cm }`, "shape-impossible", "40 cm beside 38 cm", "less rib"],
    [`{ ${FRONT}, neck depth: §2 cm }`, "neck-too-shallow", "2 cm", "neck depth: "],
    [
      `{ ${FRONT}, neck: V, neck depth: §60 cm }`,
      "shape-impossible",
      "neck depth 60 cm, length 58 cm",
      "less than the length",
    ],
    [
      "{ like: tapered sleeve, size: woman M, ease: 5 cm, rib: §42 cm }",
      "shape-impossible",
      "42 cm beside 39.4 cm",
      "less rib",
    ],
    [
      "{ like: set-in sleeve, size: woman M, ease: 5 cm, sleeve width: §70 cm }",
      "shape-impossible",
      "armhole edge 20.5 cm, cap edge from 36.2 cm to 44 cm",
      "a sleeve width that goes with the armhole",
    ],
    [
      "{ like: hat, head: 56 cm, crown: §30 cm }",
      "shape-impossible",
      "34.5 cm beside 22.4 cm",
      "less rib or crown",
    ],
    ["{ like: straight sleeve, size: child 2, ease: §-30 cm }", "shape-impossible", "-12.2 cm", "larger"],
  ];

  it.each(mistakes)("in %s is %s", (shape, code, found, right) => {
    const { text, place } = marked(withShape(shape));
    const { garment, diagnostics } = readGarment(text, "sleeve.yaml");
    expect(garment).toBeUndefined();
    const errors = diagnostics.filter(({ severity }) => severity === "error");
    expect(errors).toMatchObject([{ code, place }]);
    expect(errors[0]?.found).toBe(found);
    expect(errors[0]?.expected).toContain(right);
  });

  const missing: readonly (readonly [shape: string, message: RegExp, right: string])[] = [
    ["{ size: woman M }", /the key like is missing/, "body front"],
    [
      "{ like: body front, length: 50 cm }",
      /a body front needs its chest and armhole depth$/,
      "or a size: size: woman M",
    ],
    [
      "{ like: body front, chest: 90 cm, length: 50 cm }",
      /its armhole depth: from the/,
      "armhole depth: 20 cm, or what it measures",
    ],
    [
      "{ like: tapered sleeve, size: woman 3X, ease: 5 cm }",
      /needs its upper arm and arm length to underarm; not all was seen in the table for woman 3X/,
      "arm length to underarm: 20 cm, or what it measures",
    ],
    ["{ like: hat }", /a hat needs its head: round the head/, "head: 20 cm, or what it measures"],
    [
      "{ like: sock leg, size: woman M, ankle: 22 cm, length: 20 cm }",
      /needs its calf/,
      "calf: 20 cm, or what it measures",
    ],
    ["{ like: bag panel, width: 30 cm }", /needs its height/, "height: 20 cm, or what it measures"],
  ];

  it.each(missing)("in %s is a measurement that is missing", (shape, message, right) => {
    const { garment, diagnostics } = read(shape);
    expect(garment).toBeUndefined();
    expect(diagnostics).toHaveLength(1);
    expect(diagnostics[0]?.message).toMatch(message);
    expect(diagnostics[0]?.expected).toContain(right);
    expect(diagnostics[0]?.place?.line).toBe(7);
  });

  it("is an outline beside it", () => {
    const { text, place } = marked(
      withPiece(
        "{ shape: { like: scarf }, §outline: [{ height: 0 cm, width: 1 cm }, { height: 9 cm, width: 1 cm }] }",
      ),
    );
    expect(readGarment(text, "x.yaml").diagnostics).toMatchObject([{ code: "conflicting-keys", place }]);
  });

  it("does not hide that the gauge is wrong, and is not hidden by it", () => {
    const text = withShape("{ like: body front, size: woman Q }").replace("rows: 31", "rows: 31 cm");
    expect(
      readGarment(text, "x.yaml")
        .diagnostics.map(({ code }) => code)
        .sort(),
    ).toEqual(["unknown-size", "wrong-type"]);
  });

  it("of the whole piece against the bed is told at the shape", () => {
    const { text, place } = marked(withShape("§{ like: scarf, width: 2 m }"));
    const { garment, locate } = readGarment(text, "x.yaml");
    const [found] = examine(garment!);
    expect(found?.code).toBe("wider-than-bed");
    expect(locate(found!.path)).toEqual(place);
  });
});

describe("the built-in shapes", () => {
  it.each([...BUILT_IN_SHAPES])(
    "%s says what it is and what each measurement means",
    (_, { about, measurements }) => {
      expect(about).toMatch(/^[a-z].*[^.]$/);
      for (const { means } of Object.values(measurements)) expect(means).toMatch(/^[a-z].*[^.]$/);
    },
  );
});
