import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { highsEngine } from "../../../solver/highs-engine.ts";
import { examine } from "../../../src/examine/examine.ts";
import { fitGarment } from "../../../src/fit/solve.ts";
import type { Garment } from "../../../src/garment/garment.ts";
import { readGarment } from "../../../src/garment/read-garment.ts";
import type { Answers } from "../../../src/wizard/answers.ts";
import { answersToGarment } from "../../../src/wizard/answers-to-garment.ts";
import { begun, type Conversation, currentQuestion, reply } from "../../../src/wizard/conversation.ts";
import { sketch } from "../../../src/wizard/sketch.ts";
import { soundGarment } from "../../support/run-garment.ts";
import { answersWith } from "./support.ts";

/** The garment, where there is no mistake in it, nor a warning. */
function read(text: string): Garment {
  const { garment, diagnostics } = readGarment(text, "garment");
  const found = [...diagnostics, ...(garment ? examine(garment) : [])];
  expect(found.map(({ message }) => message)).toEqual([]);
  return garment!;
}

const usual: readonly (readonly [string, Answers])[] = [
  ["a sleeve with a cord", {}],
  ["a front with a cord", { piece: "front" }],
  ["a scarf with a cord", { piece: "scarf" }],
  ["a sleeve with a cable", { ornament: "cable" }],
  ["a front with a cable", { ornament: "cable", piece: "front" }],
  ["a scarf with a cable that draws in", { ornament: "cable", piece: "scarf", "draw-in": "15 %" }],
  ["a piece without a hem, kept at its length", { hem: "0", change: "0", piece: "scarf" }],
  ["a coarse piece in inches", { stitches: "14", rows: "20", over: "4 in", needles: "110", piece: "scarf" }],
  ["a piece between heights of its own", { from: "12 cm", to: "36 cm", top: "0" }],
  ["a piece that slopes to its top", { taper: "43 cm" }],
];

describe("answersToGarment", () => {
  it.each(usual)("writes %s that reads and fits", async (_, answers) => {
    const text = answersToGarment(answersWith(answers));
    read(text);
    const result = await fitGarment(soundGarment(text), highsEngine, { rivals: 0 });
    expect(result.status).toBe("fits");
  });

  it("writes rows over a length of their own", () => {
    const garment = read(answersToGarment(answersWith({ rows: "44 over 14.6 cm", over: "14 cm" })));
    expect(garment.gauge.ground).toMatchObject({
      stitches: 28,
      overMm: 140,
      rowsCounted: { rows: 44, overMm: 146 },
    });
  });

  it("writes the yarn's tex, as it was said or by a ball's label, and nothing where it is not known", () => {
    const written = (yarn: string) => read(answersToGarment(answersWith({ yarn }))).yarn;
    expect(written("280")).toEqual({ ground: { tex: 280 } });
    expect(written("50 g = 135 m")).toEqual({ ground: { tex: 370 } });
    expect(answersToGarment(answersWith({}))).not.toContain("yarn");
  });

  it("says in the file what was answered", () => {
    const garment = read(
      answersToGarment(
        answersWith({
          title: "Sleeve: #1, [blue]",
          stitches: "22",
          rows: "31",
          needles: "150",
          "cord stitches": "19",
          piece: "left: sleeve",
          shape: "tapered",
          width: "20 cm",
          height: "36 cm",
          "top width": "31 cm",
          taper: "33 cm",
          hem: "4 cm",
          from: "hem top",
          to: "30 cm",
          bottom: "9",
          top: "0",
          side: "6",
          change: "5 mm",
        }),
      ),
    );
    expect(garment).toMatchObject({
      title: "Sleeve: #1, [blue]",
      bed: { needles: 150, pitchMm: 6.5 },
      gauge: {
        ground: { stitches: 22, rows: 31, overMm: 100 },
        cord: { needles: 3, stitches: 19, overMm: 100 },
      },
      pieces: [
        {
          name: "left: sleeve",
          outline: [
            { heightMm: 0, widthMm: 200 },
            { heightMm: 330, widthMm: 310 },
            { heightMm: 360, widthMm: 310 },
          ],
          growMm: 5,
          shrinkMm: 5,
        },
      ],
      placements: [
        {
          piece: "left: sleeve",
          from: "hem top",
          to: "motif end",
          margins: {
            bottom: { values: [0, 1, 2, 3, 4, 5, 6, 7, 8, 9] },
            top: { values: [0] },
            sides: { kind: "centred", least: 6 },
          },
        },
      ],
    });
    expect(garment.pieces[0]!.marks).toContainEqual({ name: "motif end", heightMm: 300 });
  });

  it("has a remark at every rule", () => {
    const text = answersToGarment(answersWith({ piece: "front" }));
    for (const key of [
      "outline",
      "neck",
      "marks",
      "grow",
      "shrink",
      "interval",
      "spread",
      "ease",
      "columns",
      "bottom",
      "top",
      "side",
    ])
      expect(text).toMatch(new RegExp(`^ +${key}:.* # .{5}`, "m"));
    for (const key of ["bed", "gauge", "format"]) expect(text).toMatch(new RegExp(`# [^\\n]+\\n${key}:`));
    expect(Math.max(...text.split("\n").map((line) => line.length))).toBeLessThanOrEqual(120);
  });
});

const scaled = (unit: string) =>
  fc
    .tuple(fc.integer({ min: 1, max: 999 }), fc.constantFrom(0.01, 0.1, 0.5, 1))
    .map(([n, by]) => `${Number((n * by).toFixed(2))} ${unit}`);

/** What a knitter may type anywhere; most of it is wrong at most questions. */
const typed = fc.oneof(
  fc.constantFrom(
    "",
    "0",
    "cable",
    "cord",
    "straight",
    "tapered",
    "neck",
    "front",
    "scarf",
    "bind-off",
    "cast-on",
    "hem",
    "taper",
  ),
  fc.integer({ min: 0, max: 60 }).map(String),
  fc.integer({ min: 0, max: 2500 }).map(String),
  fc.integer({ min: 1, max: 999 }).map((tenths) => String(tenths / 10)),
  scaled("cm"),
  scaled("mm"),
  scaled("in"),
  fc.integer({ min: 0, max: 90 }).map((percent) => `${percent} %`),
  fc
    .string({ unit: "grapheme", maxLength: 20 })
    .filter((text) => text.trim() !== "quit" && text.trim() !== "back"),
);

/** Types line after line until everything is answered; after some wrong lines at one question it takes what is suggested. */
function answeredBy(lines: readonly string[]): Answers {
  let conversation: Conversation = begun;
  let wrong = 0;
  let next = 0;
  while (currentQuestion(conversation)) {
    const line = wrong > 6 ? "" : (lines[next++ % lines.length] ?? "");
    const { conversation: after, outcome } = reply(conversation, line);
    if (line === "") expect(outcome.kind).toBe("accepted");
    wrong = outcome.kind === "accepted" ? 0 : wrong + 1;
    conversation = after;
  }
  return conversation.answers;
}

const runs = { numRuns: 400, seed: 20_240_612 };

describe("any answers that are taken", () => {
  it("make a garment that reads without a mistake, and a sketch in its room", () => {
    fc.assert(
      fc.property(fc.array(typed, { minLength: 60, maxLength: 200 }), (lines) => {
        const answers = answeredBy(lines);
        const { garment, diagnostics } = readGarment(answersToGarment(answers), "garment");
        const found = [...diagnostics, ...(garment ? examine(garment) : [])];
        expect(found.filter(({ severity }) => severity === "error").map(({ message }) => message)).toEqual(
          [],
        );
        const drawn = sketch(answers, { columns: 40, rows: 11 });
        expect(drawn.length).toBeLessThanOrEqual(12);
        expect(Math.max(...drawn.map((line) => line.indexOf("  ")))).toBeLessThanOrEqual(42);
      }),
      runs,
    );
  });
});
