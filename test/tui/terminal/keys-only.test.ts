import { expect, test } from "vitest";
import { createKeyFilter } from "../../../tui/terminal/keys-only.ts";

test.each([
  ["keys", "j\u001b[A\u001b[1;5C\u001b[5~\u001b[6;2~\u001b[Z\u001b[200~paste\u001b[201~\u001bOP\u001b"],
  ["text", "5 cm é 🧶"],
])("%s are passed on as they are", (_, text) => {
  expect(createKeyFilter()(text)).toBe(text);
});

test.each([
  ["the cursor's place", "\u001b[24;80R"],
  ["what the terminal is", "\u001b[?1;2c"],
  ["that the window came to the front", "\u001b[I"],
  ["a mouse's move", "\u001b[<35;10;10M"],
  ["Ctrl-F1", "\u001b[1;5P"],
  ["a key that nobody has", "\u001b[99;5h"],
  ["a key of a keypad with Ctrl", "\u001bO5x"],
])("%s is no key", (_, sequence) => {
  expect(createKeyFilter()(`a${sequence}b`)).toBe("ab");
});

test("a sequence that comes in two parts is taken as one", () => {
  const keys = createKeyFilter();
  expect(["a\u001b[24;8", "0Rb", "\u001b[1;", "5C", "\u001b", "[A"].map(keys).join("")).toBe(
    "ab\u001b[1;5C\u001b[A",
  );
});
