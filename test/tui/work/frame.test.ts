import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { applyEvents } from "../../../src/work/events.ts";
import { asciiGlyphs, unicodeGlyphs } from "../../../tui/content/glyphs.ts";
import { sectionsMarkdown } from "../../../tui/content/key-list.ts";
import { lineWidth, plainText } from "../../../tui/content/line.ts";
import { workFrame } from "../../../tui/work/content/frame.ts";
import { workKeySections } from "../../../tui/work/content/key-sections.ts";
import { largeText } from "../../../tui/work/content/large.ts";
import { workSpokenLines } from "../../../tui/work/content/spoken.ts";
import { workKeys } from "../../../tui/work/keys.ts";
import type { WorkScreen } from "../../../tui/work/state.ts";
import { frameSvg } from "../../support/frame-svg.ts";
import { sleeveAndFront, workDriver } from "./support.ts";

const at = (row: number) => applyEvents(sleeveAndFront, [{ kind: "jump", row, part: 1 }]);

const screens: readonly WorkScreen[] = [
  { kind: "main" },
  { kind: "number", text: "18" },
  { kind: "ask jump", row: 18, part: 1 },
  { kind: "note", text: "a note" },
  { kind: "pieces", at: 1 },
  { kind: "help", scroll: 3 },
  { kind: "marks", scroll: 0 },
  { kind: "ask held" },
];

const sizes = [
  [20, 5],
  [40, 12],
  [60, 20],
  [80, 24],
  [140, 45],
] as const;

describe.each(sizes)("at %i x %i", (columns, rows) => {
  test.each([
    ["blocks", unicodeGlyphs],
    ["ASCII", asciiGlyphs],
  ] as const)("everything stays within the screen, in %s", (name, glyphs) => {
    for (const screen of screens)
      for (const row of [0, 18, 23, 27, 112]) {
        const { state } = workDriver({ terminal: { columns, rows }, screen, record: at(row) });
        const frame = workFrame(state(), glyphs);
        expect(frame).toHaveLength(rows - 1);
        for (const one of frame) {
          expect(lineWidth(one)).toBeLessThanOrEqual(columns);
          if (name === "ASCII") expect(plainText(one)).toMatch(/^[\x20-\x7e]*$/);
        }
      }
  });

  test("the row is always said in plain figures, with the piece", () => {
    const { state } = workDriver({ terminal: { columns, rows }, record: at(18) });
    const text = workFrame(state(), unicodeGlyphs).map(plainText).join("\n");
    expect(text).toContain(columns < 26 ? "row 18 of" : "row 18 of 112");
    expect(text).toContain("sleeve");
  });
});

test("at 80 x 24 what to do, what comes next and how much is left stand beside the number", () => {
  const { state } = workDriver({ record: at(27) });
  const text = workFrame(state(), unicodeGlyphs).map(plainText).join("\n");
  for (const words of [
    "left: count 3, hang both legs on L3; right: count 3, hang both legs on R3",
    "Next in 3 rows, at row 30 (carriage right): increase 1 stitch at each side",
    "85 rows left",
    "carriage at the left",
    "every row shown is kept",
  ])
    expect(text).toContain(words);
});

test.each([
  [80, 24],
  [100, 30],
  [140, 45],
] as const)("at %i x %i both arms of a hanging stand in large letters", (columns, rows) => {
  const { state } = workDriver({ terminal: { columns, rows }, record: at(27) });
  const text = workFrame(state(), unicodeGlyphs).map((one) => plainText(one).trimEnd());
  for (const arm of ["left 3 on L3", "right 3 on R3"]) {
    const large = largeText([arm], columns, 4, unicodeGlyphs)!.map(plainText);
    expect(text.join("\n")).toContain(large.join("\n"));
  }
  expect(text.join("\n")).toContain(
    "left: count 3, hang both legs on L3; right: count 3, hang both legs on R3",
  );
});

test("the question before a jump speaks of halves only where the row has two", () => {
  const { state } = workDriver({ screen: { kind: "ask jump", row: 18, part: 1 } });
  const text = workFrame(state(), unicodeGlyphs).map(plainText).join("\n");
  expect(text).toContain("Go from");
  expect(text).not.toContain("half");
});

test("the carriage's side is also a place on the screen", () => {
  const trackOf = (row: number): string => {
    const { state } = workDriver({ record: at(row) });
    return workFrame(state(), asciiGlyphs)
      .map(plainText)
      .find((text) => text.includes("[#]"))!;
  };
  expect(trackOf(27).startsWith("[#]")).toBe(true);
  expect(trackOf(28).endsWith("[#]")).toBe(true);
});

test("large letters take the largest size that fits, and none where a letter is not drawn", () => {
  const widest = (width: number, height: number) =>
    Math.max(...(largeText(["18"], width, height, unicodeGlyphs) ?? []).map(lineWidth));
  expect(widest(80, 14)).toBeGreaterThan(widest(80, 7));
  expect(widest(80, 7)).toBeGreaterThan(widest(80, 4));
  expect(largeText(["18"], 80, 3, unicodeGlyphs)).toBeUndefined();
  expect(largeText(["ü"], 80, 40, unicodeGlyphs)).toBeUndefined();
});

test("a screen reader is told the same as lines", () => {
  const { state } = workDriver({ record: at(18) });
  expect(workSpokenLines(state()).slice(0, 3)).toEqual([
    "sleeve: row 18 of 112, carriage at the right, 94 rows left.",
    "Now: knit 4 rows, to row 22.",
    "Then: increase 1 stitch at each side.",
  ]);
});

test("the key table is what the README and the help hold", () => {
  const sections = workKeySections();
  expect(readFileSync("README.md", "utf8")).toContain(sectionsMarkdown(sections));
  expect(sections.flatMap(({ bindings }) => bindings)).toHaveLength(workKeys.length);
});

test("the README's picture is what the screen shows", async () => {
  const { state } = workDriver({ record: at(23), file: "sleeve.yaml" });
  const title = "The screen of work with the sample sleeve at row 23";
  await expect(frameSvg(workFrame(state(), unicodeGlyphs), 80, title)).toMatchFileSnapshot(
    "../../../samples/pictures/work-sleeve.svg",
  );
});
