import type { Next } from "../message.ts";
import type { State } from "../state.ts";
import { next, onScreen } from "./next.ts";

/** Lines of a page, for keys that go by pages. */
export const pageRows = ({ terminal }: State): number => Math.max(1, terminal.rows - 6);

/** Scrolls the text that fills the screen; the view stops at its end. */
export const scrolled = (state: State, by: number): Next => {
  const { screen } = state;
  if (screen.kind !== "mistakes" && screen.kind !== "help" && screen.kind !== "sheet") return next(state);
  return next(onScreen(state, { ...screen, scroll: Math.max(0, screen.scroll + by) }));
};
