import { listed } from "../../../src/report/words.ts";
import { type WorkKey, workKeys, workPlaceNames } from "../keys.ts";

/** The keys of one part of the program, under one name. */
export interface WorkKeySection {
  readonly title: string;
  readonly bindings: readonly WorkKey[];
}

/** Every line of the key table once, under the places where it is valid. */
export function workKeySections(): readonly WorkKeySection[] {
  const sections = new Map<string, WorkKey[]>();
  for (const binding of workKeys) {
    const title = titleOf(binding);
    sections.set(title, [...(sections.get(title) ?? []), binding]);
  }
  return [...sections].map(([title, bindings]) => ({ title, bindings }));
}

const all = Object.keys(workPlaceNames).length;

function titleOf({ places }: WorkKey): string {
  if (places.length === all) return "Everywhere";
  const [first, ...rest] = places.map((place) => workPlaceNames[place]);
  return listed([first!, ...rest.map((name) => name[0]!.toLowerCase() + name.slice(1))]);
}
