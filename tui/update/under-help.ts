import type { Screen, State } from "../state.ts";
import { onScreen } from "./next.ts";

/** The screen of a kind, whether it has the keys or waits under the help; an answer is taken in either way. */
export function openScreen<Kind extends Screen["kind"]>(
  { screen }: State,
  kind: Kind,
): Extract<Screen, { kind: Kind }> | undefined {
  const open = screen.kind === "help" && kind !== "help" ? screen.back : screen;
  return open.kind === kind ? (open as Extract<Screen, { kind: Kind }>) : undefined;
}

/** Puts another state of a screen where that screen is: with the keys, or under the help. */
export const changeOpen = (state: State, open: Screen): State =>
  onScreen(state, state.screen.kind === "help" ? { ...state.screen, back: open } : open);
