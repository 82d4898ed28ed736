import { describe, expect, test } from "vitest";
import { contentParts, headed, headingPart, sectionParts } from "../../../../src/sheet/pdf/content-pdf.ts";
import { space } from "../../../../src/sheet/pdf/flow.ts";
import { lineHeight } from "../../../../src/sheet/pdf/pen.ts";
import { recordingPen } from "./support/recording-pen.ts";

const { pen, drawn } = recordingPen();
const place = { left: 100, width: 300 };

const bold = (text: string, size: number, top: number, left = 100, width = 300) => ({
  text,
  left,
  top,
  width,
  size,
  bold: true,
});
const plain = (...given: Parameters<typeof bold>) => ({ ...bold(...given), bold: false });

describe("headings", () => {
  // The line is 1.3 * 18 = 23.4 high.
  test("stand above a rule of the whole width", () => {
    const heading = headingPart(pen, "Cord", place);
    expect(heading.height).toBeCloseTo(23.4 + 4 + 3);
    expect(drawn(heading, 50)).toEqual([
      bold("Cord", 18, 50),
      { rule: 1.5, left: 100, width: 300, top: 73.4 },
    ]);
  });

  test("stay with the first part below them, and with no more", () => {
    const [heading, first, second] = [space(10), space(20), space(30)];
    const parts = headed(heading, [first, second]);
    expect(parts.map(({ height }) => height)).toEqual([30, 30]);
    expect(parts[0]!.split).toEqual([heading, first]);
    expect(parts[1]).toBe(second);
    expect(headed(heading, [])).toEqual([heading]);
  });

  test("of a section stay with its first content, and the section ends with white", () => {
    const parts = sectionParts(
      pen,
      {
        title: "Cord",
        content: [
          { kind: "paragraph", text: "one" },
          { kind: "paragraph", text: "two" },
        ],
      },
      place,
    );
    expect(parts.map((part) => drawn(part).flatMap((mark) => ("text" in mark ? mark.text : [])))).toEqual([
      ["Cord", "one"],
      ["two"],
      [],
    ]);
    expect(parts[2]!.height).toBe(10);
  });
});

test("a paragraph is its text and some white", () => {
  const parts = contentParts(pen, { kind: "paragraph", text: "Knit a swatch." }, place);
  expect(parts).toHaveLength(1);
  expect(parts[0]!.height).toBeCloseTo(lineHeight * 13.5 + 5);
  expect(drawn(parts[0]!, 20)).toEqual([plain("Knit a swatch.", 13.5, 20)]);
});

// A bold letter of the recording pen is 0.75 * 13.5 = 10.125 wide.
describe("facts", () => {
  const factsOf = (width: number, ...names: readonly string[]) =>
    contentParts(
      pen,
      { kind: "facts", facts: names.map((name) => ({ name, value: "40" })) },
      { left: 100, width },
    );

  test("are a part each, and some white", () => {
    const parts = factsOf(300, "Rows", "Make");
    expect(parts.map(({ height }) => height)).toEqual([lineHeight * 13.5, lineHeight * 13.5, 5]);
  });

  // "Rows: " takes 6 letters, 60.75.
  test("have their value beside their name, a line that is broken under its beginning", () => {
    const [part] = factsOf(300, "Rows");
    expect(drawn(part!, 7)).toEqual([bold("Rows: ", 13.5, 7), plain("40", 13.5, 7, 160.75, 239.25)]);
    const [long] = contentParts(
      pen,
      { kind: "facts", facts: [{ name: "Rows", value: "x".repeat(40) }] },
      place,
    );
    // 40 letters of 6.75 are 270, two lines beside the name.
    expect(long!.height).toBe(2 * lineHeight * 13.5);
  });

  // A text of the recording pen falls in two.
  test("fall apart with the name beside the beginning of the value where a page is too short for them", () => {
    const [part] = factsOf(300, "Rows");
    expect(part!.split!.map((one) => drawn(one))).toEqual([
      [bold("Rows: ", 13.5, 0), plain("4", 13.5, 0, 160.75, 239.25)],
      [plain("0", 13.5, 0, 160.75, 239.25)],
    ]);
  });

  test("have it under their name where that takes more than a third of the width", () => {
    const third = 60.75;
    expect(drawn(factsOf(3 * third, "Rows")[0]!)).toEqual([
      bold("Rows: ", 13.5, 0, 100, 3 * third),
      plain("40", 13.5, 0, 100 + third, 2 * third),
    ]);
    const [part] = factsOf(3 * third - 1, "Rows");
    expect(part!.height).toBe(2 * lineHeight * 13.5);
    expect(drawn(part!)).toEqual([
      bold("Rows: ", 13.5, 0, 100, 3 * third - 1),
      plain("40", 13.5, lineHeight * 13.5, 114, 3 * third - 1 - 14),
    ]);
  });
});

// A bold letter is 0.75 * 12.5 = 9.375 wide, a line 1.3 * 12.5 = 16.25 high.
describe("a table", () => {
  const tableOf = (width: number) =>
    contentParts(
      pen,
      {
        kind: "table",
        caption: "Cord",
        head: ["Name", "To"],
        rows: [
          ["A", "abcdefgh"],
          ["Blue", "c"],
        ],
      },
      { left: 100, width },
    )[0]!;

  // The columns take 4 letters and 8 letters with a point to spare: 38.5 and 76; between them are 12.
  test("has its caption, then line by line its cells, as wide as they take, a rule under each line", () => {
    const line = (top: number) => ({ rule: 0.5, left: 100, width: 300, top });
    const [first, second] = [
      { left: 100, width: 38.5 },
      { left: 150.5, width: 76 },
    ];
    const cell = (text: string, top: number, at: typeof first, heavy: boolean) => ({
      text,
      top,
      ...at,
      size: 12.5,
      bold: heavy,
    });
    expect(drawn(tableOf(300))).toEqual([
      bold("Cord", 12.5, 0),
      cell("Name", 16.25, first, true),
      cell("To", 16.25, second, true),
      line(32.5),
      cell("A", 36.5, first, true),
      cell("abcdefgh", 36.5, second, false),
      line(52.75),
      cell("Blue", 56.75, first, true),
      cell("c", 56.75, second, false),
      line(73),
    ]);
    expect(tableOf(300).height).toBe(4 * 16.25 + 3 * 4 + 6);
  });

  test("lets a line fall apart into its cells where a page is too short for it", () => {
    const [, head] = tableOf(300).split!;
    expect(head!.split!.flatMap((cell) => drawn(cell)).map((mark) => "text" in mark && mark.text)).toEqual([
      "Name",
      "To",
    ]);
  });

  // 38.5 + 76 = 114.5 wanted; between the columns are 12, so 57.25 are half of what is wanted.
  test("has its columns as much narrower as it takes, each line as high as its highest cell", () => {
    const cells = drawn(tableOf(69.25)).filter(
      (mark) => "text" in mark && mark.size === 12.5 && mark.text !== "Cord",
    );
    const places = cells.map(({ left, ...mark }) => [left, "width" in mark && mark.width]);
    expect(new Set(places.map(String))).toEqual(new Set(["100,19.25", `${100 + 19.25 + 12},38`]));
    // "Name" takes two lines of 19.25, "abcdefgh" in regular letters of 6.25 two of 38, "Blue" two, in bold.
    expect(cells.map(({ top }) => top)).toEqual([16.25, 16.25, 52.75, 52.75, 89.25, 89.25]);
  });

  // Three columns of 38.5 and two gaps of 12 between them; of 115.5 there is room for a half.
  test("has a gap between each two of its columns", () => {
    const width = 115.5 / 2 + 2 * 12;
    const row = ["Name", "Name", "Name"];
    const [table] = contentParts(
      pen,
      { kind: "table", caption: "Cord", head: row, rows: [row] },
      { left: 100, width },
    );
    const names = drawn(table!).filter((mark) => "text" in mark && mark.text === "Name");
    expect(names.map(({ left }) => left)).toEqual([100, 131.25, 162.5, 100, 131.25, 162.5]);
  });

  test("is as wide as the place where its columns just fill it", () => {
    expect(drawn(tableOf(126.5))).toContainEqual({
      text: "abcdefgh",
      left: 150.5,
      top: 36.5,
      width: 76,
      size: 12.5,
      bold: false,
    });
  });
});
