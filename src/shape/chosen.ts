import type { Chosen } from "./description.ts";

/** The words chosen, by key. */
export type Choices = ReadonlyMap<string, string>;

/** What holds under the words that were chosen; undefined where nothing does. */
export function chosen<Kind>(of: Chosen<Kind>, choices: Choices): Kind | undefined {
  if (!isBranch(of)) return of;
  const word = choices.get(of.by);
  return (word === undefined ? undefined : of.when[word]) ?? of.else;
}

type Branch<Kind> = Extract<Chosen<Kind>, { readonly by: string; readonly when: unknown }>;

const isBranch = <Kind>(of: Chosen<Kind>): of is Branch<Kind> =>
  typeof of === "object" && of !== null && "by" in of && "when" in of;
