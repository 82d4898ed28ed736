import type { Key } from "ink";

/** Names of the keys in what ink hears at once: several when they come faster than they are read, or are pasted. */
export function keysFrom(input: string, key: Key): readonly string[] {
  if (key.ctrl) return input.length === 1 ? [`ctrl-${input}`] : [];
  const named = namedKey(key);
  if (named !== undefined) return [named];
  return [...input].flatMap(keyOfCharacter);
}

function namedKey(key: Key): string | undefined {
  if (key.upArrow) return "up";
  if (key.downArrow) return "down";
  if (key.leftArrow) return "left";
  if (key.rightArrow) return "right";
  if (key.pageUp) return "pageup";
  if (key.pageDown) return "pagedown";
  if (key.home) return "home";
  if (key.end) return "end";
  if (key.return) return "enter";
  if (key.escape) return "escape";
  if (key.tab) return key.shift ? "shift-tab" : "tab";
  // Most terminals send DEL for the key that erases backward, which ink calls delete.
  return key.backspace || key.delete ? "backspace" : undefined;
}

function keyOfCharacter(character: string): readonly string[] {
  switch (character) {
    case " ":
      return ["space"];
    case "\r":
    case "\n":
      return ["enter"];
    case "\t":
      return ["tab"];
    case "\u007f":
    case "\b":
      return ["backspace"];
    default:
      return controlKey(character) ?? (/\p{C}/u.test(character) ? [] : [character]);
  }
}

/** Ctrl with a letter, as a terminal sends it (ASCII): the letter's code less 96. */
function controlKey(character: string): readonly string[] | undefined {
  const code = character.charCodeAt(0);
  return code >= 1 && code <= 26 ? [`ctrl-${String.fromCharCode(code + 96)}`] : undefined;
}
