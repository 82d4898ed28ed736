import type { ByChoice, Chosen } from "./description.ts";

/** The words chosen, by key. */
export type Choices = ReadonlyMap<string, string>;

/** What holds under the words that were chosen; undefined where nothing does. */
export function chosen<Kind>(of: Chosen<Kind>, choices: Choices): Kind | undefined {
  if (!isByChoice(of)) return of;
  const word = choices.get(of.by);
  return (word === undefined ? undefined : of.when[word]) ?? of.else;
}

const isByChoice = <Kind>(of: Chosen<Kind>): of is ByChoice<Kind> =>
  typeof of === "object" && of !== null && "by" in of && "when" in of;
