import { printable, shown } from "../../src/diagnostics/shown.ts";

const names: Readonly<Record<string, string>> = {
  up: "Up",
  down: "Down",
  left: "Left",
  right: "Right",
  home: "Home",
  end: "End",
  enter: "Enter",
  space: "Space",
  tab: "Tab",
  "shift-tab": "Shift-Tab",
  pageup: "Page Up",
  pagedown: "Page Down",
  backspace: "Backspace",
  escape: "Esc",
  step: "the step key",
  "ctrl-c": "Ctrl-C",
  "ctrl-r": "Ctrl-R",
  "ctrl-u": "Ctrl-U",
  "ctrl-z": "Ctrl-Z",
};

/** A key as it is printed on the keyboard; what is no key, such as a paste, made fit to print. */
export const keyName = (key: string): string => (Object.hasOwn(names, key) ? names[key]! : shown(key));

/** Keys that put a letter have that letter as their name, save for the space; what steers a terminal is no letter. */
export const isLetter = (key: string): boolean =>
  key === "space" || ([...key].length === 1 && printable(key) === key);
