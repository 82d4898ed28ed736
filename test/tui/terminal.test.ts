import type { Key } from "ink";
import { describe, expect, test } from "vitest";
import { capabilitiesOf } from "../../tui/terminal/capabilities.ts";
import { createFrameWriter, createLineWriter } from "../../tui/terminal/frame-writer.ts";
import { keysFrom } from "../../tui/terminal/keys-from.ts";

const key = (pressed: Partial<Key> = {}): Key => ({ ...({} as Key), ...pressed });
const size = () => ({ columns: 20, rows: 5 });

describe("keys", () => {
  test("letters that arrive together are keys one after the other, and what is no letter is left out", () => {
    expect(keysFrom("j+ \r\t\u007fä\u0000", key())).toEqual([
      "j",
      "+",
      "space",
      "enter",
      "tab",
      "backspace",
      "ä",
    ]);
  });

  test("keys with names of their own", () => {
    expect(keysFrom("", key({ upArrow: true }))).toEqual(["up"]);
    expect(keysFrom("", key({ escape: true, meta: true }))).toEqual(["escape"]);
    expect(keysFrom("", key({ tab: true, shift: true }))).toEqual(["shift-tab"]);
    expect(keysFrom("", key({ delete: true }))).toEqual(["backspace"]);
    expect(keysFrom("r", key({ ctrl: true }))).toEqual(["ctrl-r"]);
  });
});

describe("frames", () => {
  test("only rows that changed are drawn, each at its place, and all of them once they were forgotten", () => {
    const written: string[] = [];
    const writer = createFrameWriter((text) => written.push(text), size);
    writer.stdout.write("one\ntwo\nthree");
    writer.stdout.write("one\n2\nthree");
    writer.stdout.write("one\n2\nthree");
    expect(written).toHaveLength(2);
    expect(written[1]).toContain("\u001b[2;1H2\u001b[0m\u001b[K");
    expect(written[1]).not.toContain("three");
    writer.stdout.write("one");
    expect(written[2]).toContain("\u001b[2;1H\u001b[0m\u001b[K\u001b[3;1H");
    writer.forget();
    writer.stdout.write("one");
    expect(written[3]).toContain("\u001b[1;1Hone");
  });

  test("never more rows than the terminal has", () => {
    const written: string[] = [];
    createFrameWriter((text) => written.push(text), size).stdout.write("1\n2\n3\n4\n5\n6");
    expect(written.join("")).not.toContain("\u001b[6;1H");
  });

  test("lines are only added, and only those that are new, without escapes and within the width", () => {
    const written: string[] = [];
    const writer = createLineWriter((text) => written.push(text), size);
    writer.stdout.write("a\nb");
    writer.stdout.write("a\nc");
    writer.stdout.write("a\nc");
    writer.stdout.write("a\nb\na line that is longer than twenty");
    expect(written).toEqual(["a\nb\n\n", "c\n\n", "b\na line that is\n  longer than twenty\n\n"]);
  });
});

describe("what a terminal can show", () => {
  test.each([
    [{ LANG: "de_DE.UTF-8" }, "braille", true, "screen"],
    [{ LANG: "C.utf8", NO_COLOR: "1" }, "braille", false, "screen"],
    [{ LANG: "C.utf8", NO_COLOR: "" }, "braille", true, "screen"],
    [{ LANG: "de_DE.UTF-8", LC_ALL: "C" }, "ascii", true, "screen"],
    [{}, "ascii", true, "screen"],
    [{ LANG: "C.UTF-8", TERM: "dumb" }, "ascii", false, "plain"],
    [{ LANG: "C.UTF-8", INK_SCREEN_READER: "true" }, "braille", true, "spoken"],
  ])("%j", (environment, drawing, colour, form) => {
    expect(capabilitiesOf(environment, true)).toMatchObject({ glyphs: { drawing }, colour, form });
  });
});
