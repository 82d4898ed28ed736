import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { applyEvents } from "../../../src/work/events.ts";
import { currentPiece, newRecord, stepOf } from "../../../src/work/record.ts";
import { asciiGlyphs } from "../../../tui/content/glyphs.ts";
import { plainText } from "../../../tui/content/line.ts";
import { workFrame } from "../../../tui/work/content/frame.ts";
import { workSpokenLines } from "../../../tui/work/content/spoken.ts";
import { createFootSwitch } from "../../../tui/work/foot-switch.ts";
import { keyOf, stepKeyNamed } from "../../../tui/work/keypress.ts";
import { workKeys } from "../../../tui/work/keys.ts";
import type { WorkState } from "../../../tui/work/state.ts";
import { sleeveAndFront, workDriver } from "./support.ts";

const rowOf = ({ record }: WorkState): number => stepOf(currentPiece(record)).row;

describe("the screen at the machine", () => {
  test("counts a row for each key that goes on, and one back for each that goes back", () => {
    const work = workDriver();
    work.press("space", "enter", "right", "pagedown", "step", "backspace", "left");
    expect(rowOf(work.state())).toBe(3);
    work.press("pageup", "pageup", "pageup");
    expect(rowOf(work.state())).toBe(0);
    work.press("backspace");
    expect(work.state().message?.words).toBe("This is the piece's beginning.");
  });

  test("goes to a typed row only once that is said yes to", () => {
    const work = workDriver();
    work.press("1", "9", "backspace", "8", "enter");
    expect(work.state().screen).toEqual({ kind: "ask jump", row: 18, part: 1 });
    expect(work.events).toEqual([]);
    work.press("escape", "1", "8", "enter", "enter");
    expect(rowOf(work.state())).toBe(18);
    work.press("9", "9", "9", "enter");
    expect(work.state().message?.words).toBe("There is no row 999: sleeve has 112.");
    expect(rowOf(work.state())).toBe(18);
  });

  test("asks which half a row above a neck is of", () => {
    const work = workDriver({ record: { ...sleeveAndFront, piece: "front" } });
    const rows = currentPiece(work.state().record).sheet.rowsInAll;
    work.press(...String(rows), "enter", "tab", "y");
    expect(stepOf(currentPiece(work.state().record))).toMatchObject({ row: rows, part: 2 });
  });

  test("keeps notes, mistakes and the piece that is chosen", () => {
    const work = workDriver();
    work.press("space", "n", ..."L5", "space", "?", "q", "backspace", "enter", "x", "p", "j", "enter");
    expect(work.events).toEqual([
      { kind: "next" },
      { kind: "note", text: "L5 ?" },
      { kind: "mistake" },
      { kind: "choose", piece: "front" },
    ]);
  });

  test("rings only where something is to do, and only where that was asked for", () => {
    const work = workDriver({ bell: true });
    work.press(...Array<string>(5).fill("space"));
    expect(work.effects).toEqual(["bell"]);
    const silent = workDriver();
    silent.press(...Array<string>(5).fill("space"));
    expect(silent.effects).toEqual([]);
  });

  test("counts nothing while it looks on, and says how to go on", () => {
    const work = workDriver({ standing: "looking", screen: { kind: "ask held" } });
    work.press("l", "space", "n", "5", "x");
    expect(work.events).toEqual([]);
    expect(work.state().message?.words).toContain("t takes the work over");
    work.press("t");
    expect(work.effects).toEqual(["take over"]);
    const record = applyEvents(sleeveAndFront, [{ kind: "next" }]);
    work.send({ kind: "taken", record });
    work.press("space");
    expect(rowOf(work.state())).toBe(2);
  });

  test("takes a new sheet at once only where what is done is the same in it", () => {
    const keep = { kind: "follow", garmentText: "new", sheets: [] } as const;
    const take = { kind: "follow", garmentText: "newer", sheets: [] } as const;
    const change = (isSameSoFar: boolean): Partial<WorkState> => ({
      screen: { kind: "ask change" },
      change: { keep, take, differences: [{ piece: "sleeve", isSameSoFar, words: ["It differs."] }] },
    });
    const same = workDriver(change(true));
    same.press("n");
    expect(same.events).toEqual([take]);
    const other = workDriver(change(false));
    other.press("n");
    expect(other.events).toEqual([]);
    other.press("escape", "n", "y");
    expect(other.events).toEqual([take]);
    const own = workDriver(change(false));
    own.press("space", "g");
    expect(own.events).toEqual([keep]);
  });

  test("whatever is pressed, the record is what the events add up to", () => {
    const key = fc.constantFrom(...workKeys.flatMap(({ keys }) => keys), "a", "#");
    fc.assert(
      fc.property(fc.array(key, { maxLength: 80 }), (keys) => {
        const work = workDriver();
        work.press(...keys);
        expect(work.state().record).toEqual(applyEvents(sleeveAndFront, work.events));
      }),
      { seed: 20261125, numRuns: 200 },
    );
  });
});

describe("a foot switch", () => {
  test("that bounces or is held counts once, and counts again after a rest", () => {
    const counts = createFootSwitch(700);
    const presses = [0, 12, 500, 530, 560, 1100, 1900, 3000];
    expect(presses.filter(counts)).toEqual([0, 1900, 3000]);
  });

  test("may send any key that has a name", () => {
    expect(["F5", "page-down", "Space", "b", " ", "Enter"].map(stepKeyNamed)).toEqual([
      "f5",
      "pagedown",
      "space",
      "b",
      "space",
      "enter",
    ]);
    expect(["", "pedal", "f99"].map(stepKeyNamed)).toEqual([undefined, undefined, undefined]);
  });
});

test("keys have the names of the key table", () => {
  expect(keyOf("\r", { name: "return" })).toBe("enter");
  expect(keyOf(undefined, { name: "f5", sequence: "\u001b[15~" })).toBe("f5");
  expect(keyOf("X", { name: "x", sequence: "X" })).toBe("X");
  expect(keyOf("\u0003", { name: "c", ctrl: true })).toBe("ctrl-c");
  expect(keyOf("ü", { sequence: "ü" })).toBe("ü");
  expect(keyOf(undefined, { sequence: "\u001b[I" })).toBeUndefined();
});

test("of a piece that is knitted twice one step on from the end begins the second, and says so", () => {
  const [sleeve, front] = sleeveAndFront.pieces;
  const twice = newRecord({ pieces: [{ ...sleeve!.sheet, make: 2 }, front!.sheet] }, "text");
  const { state, press, events } = workDriver({ record: twice, bell: true });
  press("1", "1", "2", "enter", "enter");
  expect(workSpokenLines(state())[0]).toMatch(/^sleeve, 1 of 2: row 112 of 112/);
  press("space");
  expect(state().message?.words).toBe("sleeve, 2 of 2: this is its beginning.");
  expect(plainText(workFrame(state(), asciiGlyphs)[0]!)).toContain("sleeve, 2 of 2");
  press("backspace");
  expect(state().message?.words).toBe("sleeve, 1 of 2: this is its end.");
  press("space", "1", "1", "2", "enter", "enter", "space");
  expect(state().message?.words).toBe("sleeve, 2 of 2, is finished. p chooses another piece.");
  expect(applyEvents(twice, events)).toEqual(state().record);
});
