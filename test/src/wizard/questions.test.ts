import { describe, expect, it } from "vitest";
import { type Answers, QUESTION_IDS, type QuestionId } from "../../../src/wizard/answers.ts";
import { QUESTIONS } from "../../../src/wizard/questions.ts";
import { answersWith } from "./support.ts";

const question = (id: QuestionId) => QUESTIONS.find((one) => one.id === id)!;

const cordSleeve = answersWith({});
const cordFront = answersWith({ piece: "front" });
const cableScarf = answersWith({ ornament: "cable", piece: "scarf" });

interface Row {
  readonly id: QuestionId;
  readonly answers?: Answers;
  /** What may be typed, and what is kept of it where that differs. */
  readonly right: readonly (string | readonly [string, string])[];
  /** What may not, and a part of what is said about it. */
  readonly wrong: readonly (readonly [typed: string, said: string])[];
}

const rows: readonly Row[] = [
  {
    id: "title",
    right: ["Ärmel: #1, [blue]", "28", ["  a  ", "a"]],
    wrong: [
      ["", "no name"],
      ["a\u0007b", "cannot be shown"],
      ["x".repeat(51), "at most 50"],
    ],
  },
  {
    id: "stitches",
    right: ["28", "28.5", [" 28 ", "28"]],
    wrong: [
      ["28,5", "28.5"],
      ["28 cm", "plain number"],
      ["-3", "below zero"],
      ["0", "is zero"],
      ["many", "plain number"],
      ["0x1c", "plain number"],
      ["5000", "beyond"],
    ],
  },
  {
    id: "rows",
    right: ["40", "39.5", "44 over 14.6 cm", [" 44 rows over 14.6 cm", "44 over 14.6 cm"], "200 over 60 cm"],
    wrong: [
      ["14.2", "14 or 14.5"],
      ["44 over 14.6", "14.6 cm"],
      ["44 over 2 mm", "44 rows were counted over it"],
      ["44.2 over 14.6 cm", "44 or 44.5"],
      ["400", "from 5.6 to 140"],
      ["2", "from 5.6 to 140"],
    ],
  },
  {
    id: "over",
    right: ["10 cm", "4 in", "100 mm", "3/2 in"],
    wrong: [
      ["10", "10 cm"],
      ["10 yd", "not a unit"],
      ['4"', "4 in"],
      ["10,5 cm", "10.5 cm"],
      ["1 mm", "28 stitches"],
      ["9 m", "28 stitches"],
    ],
  },
  {
    id: "needles",
    right: ["200", "10", "151"],
    wrong: [
      ["9", "from 10 to 600"],
      ["99.5", "99 or 100"],
      ["6 mm", "plain number"],
    ],
  },
  {
    id: "pitch",
    right: ["4.5 mm", "9 mm"],
    wrong: [
      ["4.5", '"right":"4.5 mm"'],
      ["45", "from 1 mm to 30 mm"],
      ["0", "too small"],
      ["9 cm", "from 0.1 cm to 3 cm"],
    ],
  },
  {
    id: "ornament",
    right: ["cord", "cable", ["CORD", "cord"], ["cab", "cable"]],
    wrong: [
      ["c", "cord"],
      ["kord", "cord"],
      ["lace", "cord or cable"],
    ],
  },
  {
    id: "cord needles",
    right: ["3", "5"],
    wrong: [
      ["12", "from 2 to 6"],
      ["three", "plain number"],
    ],
  },
  {
    id: "cord stitches",
    right: ["25", "25.5"],
    wrong: [
      ["0", "is zero"],
      ["25.3", "25 or 25.5"],
    ],
  },
  {
    id: "cord over",
    right: ["10 cm", "4 in"],
    wrong: [
      ["10", "unit"],
      ["1 mm", "25 stitches were counted over it"],
    ],
  },
  {
    id: "spread",
    right: ["2", "20"],
    wrong: [
      ["1", "from 2 to 20"],
      ["2.5", "2 or 3"],
    ],
  },
  {
    id: "cross",
    answers: cableScarf,
    right: ["1", "3"],
    wrong: [
      ["3x3", "plain number"],
      ["0", "is zero"],
    ],
  },
  {
    id: "draw-in",
    answers: cableScarf,
    right: ["0 %", "12.5%"],
    wrong: [
      ["15", "15 %"],
      ["95 %", "80 %"],
      ["-5 %", "below zero"],
    ],
  },
  {
    id: "interval",
    right: ["2", "40"],
    wrong: [
      ["1", "from 2 to 40"],
      ["4 rows", "plain number"],
    ],
  },
  { id: "piece", right: ["sleeve", "left: 1"], wrong: [[" ", "no name"]] },
  {
    id: "shape",
    right: ["straight", "tapered", ["n", "neck"]],
    wrong: [["round", "straight, tapered or neck"]],
  },
  {
    id: "width",
    right: ["22 cm", "8 in", "71.4 cm"],
    wrong: [
      ["72 cm", "200 needles make 71.4 cm of cloth at your gauge"],
      ["0", "from 0.8 cm to 71.4 cm"],
      ["-3 cm", "below zero"],
    ],
  },
  {
    id: "height",
    right: ["43 cm", "5 m"],
    wrong: [
      ["6 m", "to 5 m"],
      ["2 cm", "too small"],
    ],
  },
  { id: "top width", right: ["33 cm"], wrong: [["72 cm", "200 needles"]] },
  { id: "taper", right: ["40 cm", "43 cm"], wrong: [["44 cm", "the piece is 43 cm long"]] },
  {
    id: "neck depth",
    answers: cordFront,
    right: ["8 cm"],
    wrong: [
      ["58 cm", "the piece is 58 cm long"],
      ["1 mm", "too small"],
    ],
  },
  { id: "neck width", answers: cordFront, right: ["18 cm"], wrong: [["46 cm", "the piece is 46 cm wide"]] },
  {
    id: "hem",
    right: ["5 cm", ["0", "0 cm"], "0 mm"],
    wrong: [
      ["43 cm", "the piece ends at 43 cm"],
      ["5", "unit"],
    ],
  },
  {
    id: "from",
    right: ["cast-on", ["Hem", "hem top"], "12 cm", ["5 cm", "hem top"], ["0", "cast-on"]],
    wrong: [
      ["hem tip", "hem top"],
      ["elbow", "a height such as"],
      ["43 cm", "too large"],
      ["12", "unit"],
    ],
  },
  {
    id: "to",
    right: ["taper top", "bind-off", "30 cm", ["40 cm", "taper top"]],
    wrong: [
      ["hem top", "no mark"],
      ["5 cm", "too small"],
    ],
  },
  {
    id: "to",
    answers: cordFront,
    right: ["neck", "40 cm"],
    wrong: [
      ["bind-off", "neck"],
      ["58 cm", "too large"],
    ],
  },
  {
    id: "bottom",
    right: ["0", "12"],
    wrong: [
      ["-1", "below zero"],
      ["1 cm", "plain number"],
      ["501", "from 0 to 500"],
    ],
  },
  { id: "top", right: ["0", "12"], wrong: [["x", "plain number"]] },
  { id: "side", right: ["0", "5"], wrong: [["101", "from 0 to 100"]] },
  {
    id: "change",
    right: ["1 cm", ["0", "0 cm"]],
    wrong: [
      ["1", "unit"],
      ["20 cm", "to 10.7 cm"],
    ],
  },
  {
    id: "yarn",
    right: [
      "not known",
      "370",
      ["370 tex", "370"],
      "50 g = 135 m",
      ["50 g 135 m", "50 g = 135 m"],
      ["135 m / 50 g", "50 g = 135 m"],
    ],
    wrong: [
      ["blue wool", "plain number"],
      ["0", "is zero"],
      ["50 g = 135", "unit"],
      ["50 = 135 m", "unit"],
      ["9 kg = 0.1 m", "thick"],
    ],
  },
];

describe("the questions", () => {
  it("are those that there are answers for, in their order", () => {
    expect(QUESTIONS.map(({ id }) => id)).toEqual(QUESTION_IDS);
    expect(new Set(rows.map(({ id }) => id))).toEqual(new Set(QUESTION_IDS));
  });

  it.each(rows)("$id takes what is right", ({ id, answers = cordSleeve, right }) => {
    for (const typed of right) {
      const [text, kept] = typeof typed === "string" ? [typed, typed] : typed;
      expect(question(id).parse(text, answers)).toEqual({ answer: kept });
    }
  });

  it("note what looks like a slip, and take it", () => {
    const noted = (id: QuestionId, text: string, answers: Answers): unknown =>
      question(id).parse(text, answers);
    expect(noted("piece", "sleve", {})).toEqual({
      answer: "sleve",
      note: "Did you mean sleeve? It is called sleve now.",
    });
    expect(noted("piece", "left sleeve", {})).toEqual({ answer: "left sleeve" });
    expect(noted("piece", "scarf", {})).toEqual({ answer: "scarf" });
    const few = answersWith({ "cord stitches": "4" });
    expect(noted("cord over", "14 cm", few)).toMatchObject({
      answer: "14 cm",
      note: expect.stringContaining("35 mm long then, and a stitch of the cloth 3.6 mm wide") as string,
    });
    expect(noted("cord over", "2 cm", few)).toEqual({ answer: "2 cm" });
  });

  it.each(rows)("$id says what is wrong", ({ id, answers = cordSleeve, wrong }) => {
    for (const [typed, said] of wrong) {
      const parsed = question(id).parse(typed, answers);
      expect(JSON.stringify(parsed)).toContain("problem");
      expect(JSON.stringify(parsed)).toContain(said);
    }
  });

  it.each(QUESTIONS)("$id explains its term in one line, and says more in one", ({ explain, more, ask }) => {
    expect(explain.length).toBeLessThanOrEqual(76);
    expect(more.length).toBeLessThanOrEqual(76);
    expect(ask(cordSleeve).length).toBeLessThanOrEqual(69);
    expect(explain).toMatch(/\.$/);
  });

  it("suggests heights in the unit of the swatch", () => {
    const inInches = answersWith({ over: "4 in" });
    expect([inInches.width, inInches.height, inInches.hem]).toEqual(["8.5 in", "17 in", "2 in"]);
  });

  it("suggests a shape by the piece's name, and a pitch by the bed's needles", () => {
    expect(answersWith({ piece: "left sleeve" }).shape).toBe("tapered");
    expect(answersWith({ piece: "Front" }).shape).toBe("neck");
    expect(answersWith({ piece: "shawl" }).shape).toBe("straight");
    expect(answersWith({ needles: "110" }).pitch).toBe("9 mm");
  });

  it("asks about a cord or about a cable, and about a taper or a neck, only where there is one", () => {
    expect(Object.keys(cordSleeve)).not.toContain("cross");
    expect(Object.keys(cordSleeve)).not.toContain("neck depth");
    expect(Object.keys(cableScarf)).not.toContain("cord needles");
    expect(Object.keys(cableScarf)).not.toContain("taper");
  });
});
