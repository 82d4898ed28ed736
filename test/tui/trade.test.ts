import { describe, expect, test } from "vitest";
import { simplexEngine } from "../../solver/simplex-engine.ts";
import { tradeAnswer } from "../../src/explore/trade-answer.ts";
import { frame } from "../../tui/content/frame.ts";
import { asciiGlyphs, type Glyphs, unicodeGlyphs } from "../../tui/content/glyphs.ts";
import { lineWidth, plainText } from "../../tui/content/line.ts";
import { spokenLines } from "../../tui/content/spoken.ts";
import type { TradeScreen } from "../../tui/state.ts";
import { type Driver, opened } from "./support/driver.ts";

const screenOf = (program: Driver): TradeScreen => {
  const { screen } = program.state();
  if (screen.kind !== "trade") throw new Error(`the screen is ${screen.kind}`);
  return screen;
};

/** Answers the newest request for a trade-off as its thread would. */
async function trade(program: Driver): Promise<void> {
  const request = program.effects.findLast((effect) => effect.kind === "trade");
  if (request?.kind !== "trade") throw new Error("no trade-off was asked for");
  const { kind: _, sequence, ...question } = request;
  program.send({ kind: "traded", sequence, answer: await tradeAnswer(question, simplexEngine, 60_000) });
}

/** Marks the terms with these names, and no others. */
function mark(program: Driver, traded: readonly string[], held: readonly string[] = []): void {
  for (const [index, { name }] of screenOf(program).terms.entries()) {
    while (screenOf(program).at < index) program.press("down");
    while (screenOf(program).at > index) program.press("up");
    const { traded: now, held: nowHeld } = screenOf(program);
    if (now.includes(name) && !traded.includes(name)) program.press("space");
    if (nowHeld.includes(name) !== held.includes(name)) program.press("=");
  }
  for (const [index, { name }] of screenOf(program).terms.entries()) {
    while (screenOf(program).at > index) program.press("up");
    while (screenOf(program).at < index) program.press("down");
    if (traded.includes(name) && !screenOf(program).traded.includes(name)) program.press("space");
  }
}

async function traded(name: string, terms: readonly string[], held: readonly string[] = []): Promise<Driver> {
  const program = await opened(name);
  program.press("t");
  mark(program, terms, held);
  program.press("enter");
  await trade(program);
  return program;
}

const text = (program: Driver, glyphs: Glyphs = unicodeGlyphs): string =>
  frame(program.state(), glyphs).map(plainText).join("\n");

describe("choosing what to trade", () => {
  test("suggests the term in which the best fit gives up most against the rest, and needs two or three", async () => {
    const program = await opened("front");
    program.press("t");
    expect(screenOf(program)).toMatchObject({ traded: [], suggested: ["interval", "rest"] });
    expect(text(program)).toMatch(/\[\?\] interval +rows/);
    expect(spokenLines(program.state()).join(" ")).toContain("interval, suggested.");
    program.press("enter");
    expect(program.effects.at(-1)).toMatchObject({ kind: "trade", traded: ["interval", "rest"] });
    program.press("escape", "down", "down", "down", "space");
    expect(text(program)).not.toMatch(/\[\?\] (interval|rest)/);
    program.press("enter");
    expect(program.state().message?.words).toBe("Mark two terms, or three, with Space.");
    mark(program, ["length", "balance", "ease"], ["spread"]);
    expect(screenOf(program)).toMatchObject({ traded: ["length", "balance", "ease"], held: ["spread"] });
    program.press("down", "down");
    program.press("space");
    expect(program.state().message?.words).toContain("Three terms are traded already");
  });

  test("says why there is nothing to trade in a term", async () => {
    const program = await opened("sleeve");
    program.press("t", ...Array<string>(5).fill("down"), "space");
    expect(program.state().message?.words).toContain("nothing to trade in repeats: no `prefer` is stated");
  });

  test("asks for the garment as it is being pushed about, says that it works, and can be given up", async () => {
    const program = await opened("scarf");
    program.press("l", "+");
    await program.solve();
    program.press("t");
    mark(program, ["length", "balance"]);
    program.press("enter");
    expect(program.effects.at(-1)).toMatchObject({
      kind: "trade",
      source: program.text(),
      traded: ["length", "balance"],
      held: [],
    });
    expect(text(program)).toContain("Working ... Esc gives it up.");
    program.press("enter");
    expect(program.state().message?.words).toContain("being sought already");
    program.press("escape");
    expect(program.effects.at(-1)).toEqual({ kind: "give up trade" });
    await trade(program);
    expect(screenOf(program).found).toBeUndefined();
    program.press("escape");
    expect(program.state().screen.kind).toBe("main");
  });

  test("takes the answer in while the help lies over it", async () => {
    const program = await opened("scarf");
    program.press("t");
    mark(program, ["length", "balance"]);
    program.press("enter", "?");
    expect(program.state().screen.kind).toBe("help");
    await trade(program);
    expect(program.state().screen.kind).toBe("help");
    program.press("escape");
    expect(screenOf(program).found?.points.length).toBeGreaterThan(0);
    expect(screenOf(program).asked).toBeUndefined();
  });

  test("says what went wrong, and stays with the terms", async () => {
    const program = await opened("scarf");
    program.press("t", "enter");
    const { sequence } = program.state();
    program.send({ kind: "traded", sequence, answer: { kind: "none", reason: "the thread broke down" } });
    expect(program.state().message?.words).toBe("There is no trade-off: the thread broke down.");
    expect(screenOf(program).asked).toBeUndefined();
  });
});

describe("the points", () => {
  test("begin at the best fit; the list, the plot and the drawing follow the keys", async () => {
    const program = await traded("hat", ["ease", "interval"]);
    const { found, point } = screenOf(program);
    expect(found!.points.map(({ amounts: [, interval] }) => interval)).toEqual([4, 2, 1, 0]);
    expect(point).toBe(found!.bestAt);
    expect(text(program)).toContain("3: the best fit");
    program.press("up");
    expect(text(program)).toContain("2: interval 2 instead of 5");
    program.press(..."kkkk");
    expect(screenOf(program).point).toBe(0);
    program.press(..."jjjjjj");
    expect(screenOf(program).point).toBe(3);
    program.press("t");
    expect(text(program)).toContain("[x] ease");
  });

  test("say where nothing has to be traded", async () => {
    const program = await traded("child-pullover", ["balance", "interval"]);
    expect(text(program)).toContain("Nothing has to be traded");
    expect(text(program)).toMatch(/^ 1 +0 +0 /m);
    expect(spokenLines(program.state()).join("\n")).toContain("\nThe best fit: the least in all");
  });

  test("keep to the screen at any size, and are told in sentences", async () => {
    for (const terms of [
      ["ease", "interval"],
      ["ease", "interval", "rest"],
    ]) {
      const program = await traded("hat", terms);
      for (const [columns, rows] of [
        [60, 20],
        [80, 24],
        [140, 45],
      ] as const)
        for (const glyphs of [unicodeGlyphs, asciiGlyphs]) {
          program.send({ kind: "resized", columns, rows });
          const lines = frame(program.state(), glyphs);
          expect(lines).toHaveLength(rows - 1);
          for (const line of lines) expect(lineWidth(line)).toBe(columns);
          expect(text(program, glyphs)).toContain("3: the best fit");
        }
      const spoken = spokenLines(program.state()).join("\n");
      expect(spoken).toContain("Looked at: Point 3 of ");
      expect(spoken).toContain("ease 0.259 percentage points, interval 1 row");
    }
  });

  test.each([
    ["hat", ["ease", "interval"], []],
    ["child-pullover", ["length", "balance"], ["rest"]],
    ["scarf", ["length", "rest"], []],
    ["front", ["balance", "ease", "rest"], []],
  ])(
    "of %s are each taken over as one step that undo takes back, and then are the best fit",
    async (name, terms, held) => {
      const program = await traded(name, terms, held);
      const before = program.text();
      const count = screenOf(program).found!.points.length;
      for (let at = 0; at < count; at++) {
        if (at > 0) {
          program.press("t");
          mark(program, terms, held);
          program.press("enter");
          await trade(program);
        }
        program.press(...Array<string>(count).fill("up"), ...Array<string>(at).fill("down"));
        const { fit } = screenOf(program).found!.points[at]!;
        const isBest = screenOf(program).found!.bestAt === at;
        program.press("enter");
        expect(program.state().screen.kind, program.state().message?.words).toBe("main");
        await program.solve();
        const taken = program.garment().solving.shown!.fit;
        const told = ({ placements, looks }: typeof fit): unknown => [
          placements.map(({ repeats, columns, gap, change, margins }) => [
            repeats,
            columns,
            gap,
            change,
            margins,
          ]),
          looks.map(({ values, segments }) => [[...values], segments.map(({ pickup }) => pickup)]),
        ];
        expect(told(taken), `${at} of ${count}${isBest ? ", the best" : ""}`).toEqual(told(fit));
        program.press("u");
        await program.solve();
        expect(program.text()).toBe(before);
      }
    },
  );
});
