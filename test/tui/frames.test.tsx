import { afterEach, describe, expect, test } from "vitest";
import { asciiGlyphs, unicodeGlyphs } from "../../tui/content/glyphs.ts";
import { line, plainText } from "../../tui/content/line.ts";
import { firstLines } from "../../tui/content/window.ts";
import type { Capabilities } from "../../tui/terminal/capabilities.ts";
import { sample, sampleNames } from "./support/driver.ts";
import { openScreen, type Screen } from "./support/screen.tsx";

const colourful: Capabilities = { glyphs: unicodeGlyphs, colour: true, form: "screen" };
const plain: Capabilities = { glyphs: asciiGlyphs, colour: false, form: "screen" };
const spoken: Capabilities = { glyphs: asciiGlyphs, colour: false, form: "spoken" };

const sizes = [
  [60, 20],
  [80, 24],
  [140, 45],
] as const;

let screen: Screen | undefined;
afterEach(() => screen?.close());

async function open(name: string, columns: number, rows: number, capabilities = colourful): Promise<Screen> {
  screen = openScreen(columns, rows, capabilities);
  await screen.tell({ kind: "opened", file: `${name}.yaml`, text: sample(name) });
  await screen.solve();
  return screen;
}

const holds = (on: Screen, text: string): boolean => on.lines().some((line) => line.includes(text));

describe.each(sizes)("at %i x %i", (columns, rows) => {
  test.each(sampleNames)("%s is drawn within the screen, with its rules, choices and cost", async (name) => {
    const on = await open(name, columns, rows);
    expect(on.lines()).toHaveLength(rows - 1);
    for (const line of on.lines()) expect([...line].length).toBeLessThanOrEqual(columns);
    expect(holds(on, "Rules")).toBe(true);
    expect(holds(on, "interval")).toBe(true);
    expect(holds(on, "q quit")).toBe(true);
    if (name === "too-narrow") {
      expect(holds(on, "Nothing fits")).toBe(true);
      return;
    }
    const { fit } = on.store.state().garment!.solving.shown!;
    expect(holds(on, `cost ${fit.cost.toFixed(3)}`)).toBe(true);
    expect(holds(on, "Choices")).toBe(true);
    expect(holds(on, `Cost ${fit.cost.toFixed(3)}`)).toBe(true);
    expect(holds(on, "Held back by")).toBe(true);
  });

  test("help, sheet, comparison and questions stay within the screen too", async () => {
    const on = await open("scarf", columns, rows);
    for (const keys of ["?", "v", "c", "q"]) {
      if (keys === "q") await on.send("l+");
      await on.send(keys);
      expect(on.lines(), keys).toHaveLength(rows - 1);
      for (const line of on.lines()) expect([...line].length, keys).toBeLessThanOrEqual(columns);
      await on.send("\u001b");
    }
  });
});

test("what is shown while the next fit is sought is marked as of before the change", async () => {
  const on = await open("sleeve", 100, 30);
  expect(holds(on, "before the change")).toBe(false);
  await on.send("jl+");
  expect(holds(on, "seeking the fit")).toBe(true);
  expect(holds(on, "Seeking the fit; what is shown is of before the change.")).toBe(true);
  expect(holds(on, "Choices before the change")).toBe(true);
  expect(holds(on, "Cost 1.637, before the change")).toBe(true);
  await on.solve();
  expect(holds(on, "before the change")).toBe(false);
});

test("a sign stands at the end of a rule that a step would move, and what is typed is seen", async () => {
  const on = await open("sleeve", 80, 24);
  await on.send("j");
  expect(on.lines().some((line) => line.replaceAll(/ +/g, " ").includes("▸ spread ▸ 2..9"))).toBe(true);
  await on.send("l");
  expect(on.lines().some((line) => line.replaceAll(/ +/g, " ").includes("▸ spread 2..9 ◂"))).toBe(true);
  await on.send("\r");
  await on.send("\u007f12");
  expect(holds(on, "2..12_")).toBe(true);
  await on.send("\r");
  expect(on.lines().some((line) => line.replaceAll(/ +/g, " ").includes("▸ spread 2..12 ◂"))).toBe(true);
});

test("a rule that allows one value says so, and is held only where it was held here", async () => {
  const on = await open("sleeve", 80, 24);
  const row = () =>
    on
      .lines()
      .find((line) => /interval .*4/.test(line))!
      .replaceAll(/ +/g, " ");
  await on.send(" ");
  expect(row()).toContain("▸ 4 ");
  expect(row()).toContain("held");
  const text = on.store.state().garment!.version.text;
  on.close();
  const alone = openScreen(80, 24, colourful);
  screen = alone;
  await alone.tell({ kind: "opened", file: "sleeve.yaml", text });
  await alone.solve();
  const line = alone
    .lines()
    .find((one) => /interval .*4/.test(one))!
    .replaceAll(/ +/g, " ");
  expect(line).toContain("▸ 4 only ");
  expect(line).not.toContain("held");
  await alone.send("l");
  expect(
    alone
      .lines()
      .find((one) => /interval .*4/.test(one))!
      .replaceAll(/ +/g, " "),
  ).toContain("4 only ◂");
});

test("what one step of a rule would change is told", async () => {
  const on = await open("front", 100, 30);
  await on.tell({
    kind: "step",
    sequence: on.store.state().sequence,
    outcome: {
      rule: "pieces.front.grow",
      end: "to",
      by: 1,
      title: "grow of front",
      allows: "up to 1.8 cm",
      fits: true,
      costChange: -0.5,
      differences: ["1 row longer"],
    },
  });
  expect(holds(on, "One step of grow of front: up to 1.8 cm: 0.50 less, 1 row longer.")).toBe(true);
});

test("a file with mistakes is shown with their places", async () => {
  screen = openScreen(80, 24, colourful);
  const text = sample("sleeve").replace("width: 20 cm", "width: 20");
  await screen.tell({ kind: "opened", file: "sleeve.yaml", text });
  expect(holds(screen, "The file has mistakes")).toBe(true);
  expect(holds(screen, "sleeve.yaml:14:32 error")).toBe(true);
});

test("without colours and UTF-8 there are neither in a frame", async () => {
  const on = await open("sleeve", 80, 24, plain);
  // biome-ignore lint/suspicious/noControlCharactersInRegex: styles begin with an escape.
  expect(on.styled()).not.toMatch(/\u001b\[(?:\d+;)*(?:3\d|4\d|9\d|10\d)m/);
  // biome-ignore lint/suspicious/noControlCharactersInRegex: all of ASCII.
  for (const line of on.lines()) expect(line).toMatch(/^[\x00-\x7f]*$/);
});

test("a screen reader is told the same facts, one a line", async () => {
  const on = await open("sleeve", 80, 24, spoken);
  for (const fact of [
    "Sleeve with a crossed cord, sleeve.yaml, saved: cost 1.637, proven best.",
    "Held back by ease: 1.637 percentage points off.",
    "Rule: spread of plait, allowed 2..9 needles, preferred 3, fit 3, weight 1.2.",
    "Rule: columns of plait on sleeve, allowed 1, fit 1, this one value only, weight 1.",
    "Looked at: Best fit: cost 1.637.",
    "Cost of ease: 1.637, 1.637 percentage points at weight 1.",
  ])
    expect(on.lines()).toContain(fact);
});

test("a fault in the screen's text never reaches the terminal as one of its own codes", async () => {
  screen = openScreen(80, 24, colourful);
  const text = sample("sleeve").replace("title: Sleeve with a crossed cord", 'title: "Sleeve\\e[2J\\u0007"');
  await screen.tell({ kind: "opened", file: "sleeve.yaml", text });
  // biome-ignore lint/suspicious/noControlCharactersInRegex: what must not be there.
  expect(screen.styled()).not.toMatch(/\u001b\[2J|\u0007/);
});

test("what has no room is marked where it is cut, and a long message takes a second line", async () => {
  const on = await open("hat", 80, 24);
  await on.send("\t");
  await on.send("j");
  await on.send("\r");
  expect(holds(on, "all that was chosen for it is held fast; let go of")).toBe(true);
  expect(holds(on, "what may move again")).toBe(true);
  expect(on.lines().some((line) => /interval 2 instead of 5, 5 more repeats,…/.test(line))).toBe(true);
  const small = [line("one"), line("two"), line("three")];
  expect(firstLines(small, 2, 20, "~").map(plainText)).toEqual(["one", "two ~"]);
  expect(firstLines(small, 2, 4, "~").map(plainText)).toEqual(["one", "two~"]);
  expect(firstLines(small, 2, 3, "~").map(plainText)).toEqual(["one", "tw~"]);
  expect(firstLines(small, 3, 3, "~")).toEqual(small);
});

test("where there is room, words are wrapped and a unit stands below its amount", async () => {
  const on = await open("scarf", 140, 45);
  expect(holds(on, "ease      2.125 = 1 x 2.125")).toBe(true);
  expect(on.lines().some((line) => /│ {7}percentage points *$/.test(line))).toBe(true);
  expect(on.lines().some((line) => line.trimEnd().endsWith("…"))).toBe(false);
});
