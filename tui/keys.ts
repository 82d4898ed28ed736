import type { Binding, Place } from "./keys/binding.ts";
import { mainScreenKeys } from "./keys/main-screen.ts";
import { otherScreenKeys } from "./keys/other-screens.ts";
import { tradeKeys } from "./keys/trade.ts";
import { whyKeys } from "./keys/why.ts";
import type { State } from "./state.ts";

const table = [...mainScreenKeys, ...tradeKeys, ...whyKeys, ...otherScreenKeys] as const;

export type Action = (typeof table)[number]["action"];

/** One line of the key table. */
export interface KeyBinding extends Binding {
  readonly action: Action;
}

export const keyTable: readonly KeyBinding[] = table;

/** What has the keys now. */
export function placeOf({ screen, garment }: State): Place {
  if (screen.kind === "trade") return screen.found ? "trade points" : "trade terms";
  if (screen.kind !== "main") return screen.kind;
  return garment?.view.pane ?? "rules";
}

/** The keys that are valid in a place, in the order of the table. */
export const bindingsAt = (place: Place): readonly KeyBinding[] =>
  keyTable.filter(({ places }) => places.includes(place));

export const bindingFor = (place: Place, key: string): KeyBinding | undefined =>
  bindingsAt(place).find(({ keys }) => keys.includes(key));

/** Where else a key means something, for one that means nothing here. */
export function elsewhere(key: string): KeyBinding | undefined {
  return keyTable.find(({ keys }) => keys.includes(key));
}
