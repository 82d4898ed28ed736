import { describe, expect, test } from "vitest";
import type { WorkLine } from "../../../../src/sheet/document/document.ts";
import { lineHeight } from "../../../../src/sheet/pdf/pen.ts";
import { beforeRows, rowsHead, stepParts } from "../../../../src/sheet/pdf/work-pdf.ts";
import { tinyBlock } from "../support/tiny-document.ts";
import { type Mark, recordingPen, roundedMarks } from "./support/recording-pen.ts";

const { pen, drawn } = recordingPen();
const place = { left: 100, width: 300 };

const textsIn = (marks: readonly Mark[]): string[] =>
  marks.flatMap((mark) => ("text" in mark ? mark.text : []));
const boxesIn = (marks: readonly Mark[]): Mark[] => marks.filter((mark) => "box" in mark);
const textIn = (marks: readonly Mark[], words: string): Mark =>
  marks.find((mark) => "text" in mark && mark.text === words)!;

describe("what stands above a block's rows", () => {
  // 6 points of white, a line of 1.3 * 15, 2 points of white.
  test("is at least its heading", () => {
    const parts = beforeRows(pen, tinyBlock(), place);
    expect(parts.map(({ height }) => height)).toEqual([6 + lineHeight * 15 + 2]);
    expect(drawn(parts[0]!, 30)).toEqual([
      { text: "Rows", left: 100, top: 36, width: 300, size: 15, bold: true },
    ]);
  });

  test("is a heading with the first paragraph, the others by themselves", () => {
    const parts = beforeRows(
      pen,
      tinyBlock({
        title: "First half",
        before: [
          { kind: "paragraph", text: "one" },
          { kind: "paragraph", text: "two" },
        ],
      }),
      place,
    );
    expect(parts.map((part) => textsIn(drawn(part)))).toEqual([["First half", "one"], ["two"]]);
  });

  test("is the shaping too, its head with the first of it, each passage after a dash and indented by 12", () => {
    const parts = beforeRows(pen, tinyBlock({ shaping: ["decrease 1", "bind off 4"] }), place);
    expect(parts.map((part) => textsIn(drawn(part)))).toEqual([
      ["Rows", "Shaping, which also stands at its rows:", "-", "decrease 1"],
      ["-", "bind off 4"],
    ]);
    const text = { size: 13.5, bold: false };
    expect(drawn(parts[1]!, 40)).toEqual([
      { text: "-", left: 102, top: 40, ...text },
      { text: "bind off 4", left: 112, width: 288, top: 40, ...text },
    ]);
    expect(parts[1]!.height).toBe(lineHeight * 13.5);
    expect(textIn(drawn(parts[0]!), "Shaping, which also stands at its rows:")).toEqual({
      text: "Shaping, which also stands at its rows:",
      left: 100,
      width: 300,
      top: 6 + lineHeight * 15 + 2,
      ...text,
    });
  });
});

test("the head of the rows names the three columns above a rule", () => {
  const head = rowsHead(pen, "What to do: scarf", place);
  expect(head.height).toBe(lineHeight * 10 + 4);
  const text = { top: 20, size: 10, bold: true };
  expect(drawn(head, 20)).toEqual([
    { text: "Done", left: 100, ...text },
    { text: "Row", left: 130, ...text },
    { text: "What to do: scarf", left: 202, ...text },
    { rule: 1.2, left: 100, width: 300, top: 33 },
  ]);
});

const doLine = (changes: Partial<Extract<WorkLine, { kind: "do" }>> = {}): WorkLine => ({
  kind: "do",
  row: 22,
  carriage: "left",
  phrases: ["increase 1"],
  running: [],
  ...changes,
});
const knitLine = (rows: number, toRow: number): WorkLine => ({
  kind: "knit",
  rows,
  toRow,
  carriage: "right",
});

describe("a row at which something is done", () => {
  // Two points of white, then a box of 18 and the row's number of 20 beside the phrase; number and carriage take
  // 1.3 * (20 + 10) = 39, the phrase 1.3 * 13.5 = 17.55 of it.
  test("has its box, its number and its carriage beside the first phrase, and a rule below all of them", () => {
    const [part, ...others] = stepParts(pen, [doLine()], place);
    expect(others).toEqual([]);
    expect(roundedMarks(drawn(part!, 50))).toEqual([
      { box: 18, left: 100, top: 55 },
      { text: "22", left: 130, top: 51, size: 20, bold: true },
      { text: "carriage left", left: 130, top: 74, size: 10, bold: false },
      { text: "increase 1", left: 202, width: 198, top: 52, size: 13.5, bold: false },
      { rule: 0.5, left: 100, width: 300, top: 91 },
    ]);
    expect(part!.height).toBeCloseTo(2 + 39 + 4);
  });

  // Two phrases take 35.1, where they stand in the motif 1.3 * 11 = 14.3: 49.4, more than the row's number.
  test("has its other phrases and where it is in the motif below, then two points of white", () => {
    const [part] = stepParts(pen, [doLine({ phrases: ["one", "two"], running: ["repeat 1 of 2"] })], place);
    const marks = roundedMarks(drawn(part!));
    expect(textsIn(marks)).toEqual(["22", "carriage left", "one", "two", "repeat 1 of 2"]);
    const words = { left: 202, width: 198, bold: false };
    expect(textIn(marks, "two")).toEqual({ text: "two", top: 2 + 17.55, size: 13.5, ...words });
    expect(textIn(marks, "repeat 1 of 2")).toEqual({
      text: "repeat 1 of 2",
      top: 2 + 35.1,
      size: 11,
      ...words,
    });
    expect(part!.height).toBeCloseTo(2 + 49.4 + 2 + 4);
  });

  test("falls apart phrase by phrase where a page is too short for it", () => {
    const [part] = stepParts(pen, [doLine({ phrases: ["one", "two"], running: ["three"] })], place);
    expect(part!.split!.map((one) => textsIn(drawn(one)))).toEqual([
      [],
      ["22", "carriage left", "one"],
      ["two"],
      ["three"],
      [],
      [],
    ]);
  });
});

describe("rows knitted plain", () => {
  test("fall apart line by line where a page is too short for them, the words beside the first boxes", () => {
    const words = "knit 30 rows, to row 30, carriage right";
    const width = 6.75 * words.length + 7 + 135;
    const [part] = stepParts(pen, [knitLine(30, 30)], { left: 100, width });
    const [, rows] = part!.split!;
    expect(rows!.split!.map((line) => textsIn(drawn(line)))).toEqual([
      [words, "10"],
      ["20", "30"],
    ]);
  });

  test("stay in one part with what is done after them, one rule below both", () => {
    const parts = stepParts(
      pen,
      [doLine({ row: 0 }), knitLine(1, 1), doLine({ row: 1 }), knitLine(2, 3)],
      place,
    );
    expect(parts.map((part) => textsIn(drawn(part)).filter((text) => /knit|^\d+$/.test(text)))).toEqual([
      ["0"],
      ["knit 1 row, to row 1, carriage right", "1", "1"],
      ["knit 2 rows, to row 3, carriage right", "3"],
    ]);
    expect(drawn(parts[1]!).filter((mark) => "rule" in mark)).toHaveLength(1);
  });

  // The words are 37 letters of 6.75 wide, 249.75; 7 points on begin boxes of 10 every 12.5, a label of letters of 5 after
  // them, and 7 points on the next group.
  test("have a box for each row, in groups that their last row's number ends", () => {
    const wide = { left: 100, width: 600 };
    const [part] = stepParts(pen, [knitLine(5, 13)], wide);
    const marks = roundedMarks(drawn(part!, 8));
    const words = "knit 5 rows, to row 13, carriage right";
    const first = 100 + 6.75 * words.length + 7;
    const second = first + 2 * 12.5 + 2 * 5 + 7;
    expect(marks).toEqual([
      { text: words, left: 100, top: 10, size: 13.5, bold: false },
      { box: 10, left: first, top: 13 },
      { box: 10, left: first + 12.5, top: 13 },
      { text: "10", left: first + 25, top: 11, size: 10, bold: false },
      { box: 10, left: second, top: 13 },
      { box: 10, left: second + 12.5, top: 13 },
      { box: 10, left: second + 25, top: 13 },
      { text: "13", left: second + 37.5, top: 11, size: 10, bold: false },
      { rule: 0.5, left: 100, width: 600, top: roundedTo(10 + 19.55) },
    ]);
    expect(part!.height).toBeCloseTo(2 + 19.55 + 4);
  });

  // A group of ten takes 125 points and its number 10 more: the words and one of them 256.5 + 7 + 135.
  test("go on below, a line of 1.3 * 13.5 + 2 points lower, where a group would go beyond the place", () => {
    const words = "knit 20 rows, to row 20, carriage right";
    const width = 6.75 * words.length + 7 + 135;
    const tops = (wide: number): [number, number][] =>
      boxesIn(roundedMarks(drawn(stepParts(pen, [knitLine(20, 20)], { left: 100, width: wide })[0]!))).map(
        ({ left, top }) => [left, top],
      );
    const eachTen = (places: readonly (readonly [number, number])[]) => [places[0], places[10]];
    expect(eachTen(tops(width))).toEqual([
      [100 + width - 135, 5],
      [100, roundedTo(5 + 19.55)],
    ]);
    expect(eachTen(tops(width - 0.5))).toEqual([
      [100, roundedTo(5 + 19.55)],
      [100 + 135 + 7, roundedTo(5 + 19.55)],
    ]);
    const [part] = stepParts(pen, [knitLine(20, 20)], { left: 100, width });
    expect(part!.height).toBeCloseTo(2 + 2 * 19.55 + 4);
    expect(textIn(roundedMarks(drawn(part!)), "20")).toMatchObject({
      left: 225,
      top: roundedTo(2 + 19.55 + 1),
    });
  });
});

const roundedTo = (value: number): number => Math.round(value * 1000) / 1000;
