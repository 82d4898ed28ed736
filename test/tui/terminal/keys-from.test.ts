import type { Key } from "ink";
import { expect, test } from "vitest";
import { keysFrom } from "../../../tui/terminal/keys-from.ts";

const none = { ctrl: false, shift: false } as Key;

test("keys that come together, because they were not read in time, are each heard", () => {
  expect(keysFrom("j+", none)).toEqual(["j", "+"]);
  expect(keysFrom("+\u0003", none)).toEqual(["+", "ctrl-c"]);
  expect(keysFrom("\u0012u \r", none)).toEqual(["ctrl-r", "u", "space", "enter"]);
  expect(keysFrom("\t\u007f\b", none)).toEqual(["tab", "backspace", "backspace"]);
});

test("what is no key is passed over", () => {
  expect(keysFrom("a\u0000\u001f\u0085b", none)).toEqual(["a", "b"]);
});

test("a key alone is named as the terminal UI's library reads it", () => {
  expect(keysFrom("c", { ...none, ctrl: true })).toEqual(["ctrl-c"]);
  expect(keysFrom("", { ...none, return: true })).toEqual(["enter"]);
});
