import { wrap } from "../../src/report/wrap.ts";
import type { KeyBinding } from "../keys.ts";
import { keyNames } from "./key-list.ts";
import { type Line, line } from "./line.ts";

/** Sections of a key table as a help screen shows them, each under its title, with so many columns for the keys. */
export const keyLines = (
  sections: readonly {
    readonly title: string;
    readonly bindings: readonly Pick<KeyBinding, "keys" | "words">[];
  }[],
  width: number,
  keyWidth: number,
): readonly Line[] =>
  sections.flatMap(({ title, bindings }) => [
    line(""),
    line(title, "strong"),
    ...bindings.flatMap((binding) =>
      wrap(`  ${keyNames(binding).padEnd(keyWidth)} ${binding.words}`, width, keyWidth + 3).map((text) =>
        line(text),
      ),
    ),
  ]);
