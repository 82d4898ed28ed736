import type { Place } from "../keys/binding.ts";
import { keyName } from "../keys/key-name.ts";
import { type KeyBinding, keyTable } from "../keys.ts";

/** What the documents and the help call the places where a key is valid. */
const placeNames: Readonly<Record<Place, string>> = {
  rules: "Rules",
  choices: "Choices",
  drawing: "Drawing",
  typing: "Typing a value",
  finding: "Finding a rule",
  files: "Choosing a garment",
  opening: "Opening a garment",
  mistakes: "A file with mistakes",
  help: "Help",
  sheet: "Sheet",
  compare: "Two fits side by side",
  "trade terms": "Choosing what to trade",
  "trade points": "Points of a trade-off",
  why: "Asking why",
  "ask quit": "Asked whether to leave",
  "ask unsaved": "Asked about changes of an earlier time",
  "ask conflict": "Asked about a file that changed on disk",
};

const panes: readonly Place[] = ["rules", "choices", "drawing"];

/** The keys of one part of the program, under one name. */
export interface KeySection {
  readonly title: string;
  readonly bindings: readonly KeyBinding[];
}

/** Every line of the key table once, under the places where it is valid; those of most use first. */
export function keySections(): readonly KeySection[] {
  const sections = new Map<string, KeyBinding[]>();
  for (const binding of keyTable) {
    const title = titleOf(binding.places);
    sections.set(title, [...(sections.get(title) ?? []), binding]);
  }
  return [...sections].map(([title, bindings]) => ({ title, bindings }));
}

function titleOf(places: readonly Place[]): string {
  if (panes.every((pane) => places.includes(pane))) return "Rules, choices and drawing";
  const names = places.map((place) => placeNames[place]);
  return names.length === 1
    ? names[0]!
    : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`.replace(/(?<=[ ,]) ?\p{Lu}/gu, (letter) =>
        letter.toLowerCase(),
      );
}

export const keyNames = ({ keys }: Pick<KeyBinding, "keys">): string => keys.map(keyName).join(", ");

/** The key table as the README holds it. */
export const keyListMarkdown = (): string => sectionsMarkdown(keySections());

/** Sections of any key table as the README holds them. */
export const sectionsMarkdown = (
  sections: readonly {
    readonly title: string;
    readonly bindings: readonly Pick<KeyBinding, "keys" | "words">[];
  }[],
): string =>
  [
    "| where | keys | what they do |",
    "| --- | --- | --- |",
    ...sections.flatMap(({ title, bindings }) =>
      bindings.map(
        (binding, index) =>
          `| ${index === 0 ? title : ""} | ${binding.keys.map((key) => `\`${keyName(key)}\``).join(" ")} | ${binding.words} |`,
      ),
    ),
  ].join("\n");
