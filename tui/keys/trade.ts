import { type Binding, panes } from "./binding.ts";
import { open } from "./unusable.ts";

/** Keys that open a trade-off, choose its terms, and go along its points. */
export const tradeKeys = [
  {
    keys: ["t"],
    action: "trade",
    words: "trade two or three terms of the cost for each other",
    short: "trade-off",
    places: panes,
    unusable: (state) =>
      open(state, ({ solving }) =>
        solving.shown && solving.current
          ? undefined
          : solving.underWay
            ? "The fit is still being sought; wait for it."
            : "Nothing fits, so there is nothing to trade.",
      ),
  },
  { keys: ["up", "k"], action: "up", words: "the term above", places: ["trade terms"] },
  { keys: ["down", "j"], action: "down", words: "the term below", short: "term", places: ["trade terms"] },
  {
    keys: ["space"],
    action: "trade term",
    words: "trade the term, or not",
    short: "trade it",
    places: ["trade terms"],
  },
  {
    keys: ["="],
    action: "hold term",
    words: "give up no more of the term than the best fit does, or let it be",
    short: "no more of it",
    places: ["trade terms"],
  },
  {
    keys: ["enter"],
    action: "find trade",
    words: "find every best compromise between the terms that are traded",
    short: "find",
    places: ["trade terms"],
  },
  { keys: ["up", "k"], action: "up", words: "the point above", places: ["trade points"] },
  {
    keys: ["down", "j"],
    action: "down",
    words: "the point below; the drawing shows its fit",
    short: "point",
    places: ["trade points"],
  },
  {
    keys: ["enter"],
    action: "take point",
    words: "take the point's fit as the new start: all that was chosen for it is held fast",
    short: "take",
    places: ["trade points"],
  },
  {
    keys: ["t"],
    action: "other terms",
    words: "trade other terms",
    short: "other terms",
    places: ["trade points"],
  },
] as const satisfies readonly Binding[];
