import { type Binding, panes } from "./binding.ts";
import { open } from "./unusable.ts";

/** Keys that ask why, and go along the answers. */
export const whyKeys = [
  {
    keys: ["w"],
    action: "why",
    words: "why nothing fits and the smallest changes that would let it; or which rules bind the fit",
    short: "why",
    places: panes,
    unusable: (state) =>
      open(state, ({ solving }) =>
        solving.underWay || solving.outcome.kind === "none yet"
          ? "The fit is still being sought; wait for it."
          : solving.outcome.kind === "fits" || solving.outcome.kind === "does not fit"
            ? undefined
            : "It is not known whether anything fits.",
      ),
  },
  { keys: ["up", "k"], action: "up", words: "the answer above", places: ["why"] },
  { keys: ["down", "j"], action: "down", words: "the answer below", short: "choose", places: ["why"] },
  {
    keys: ["enter"],
    action: "make change",
    words: "where nothing fits: make the change that is chosen; undo takes it back",
    short: "make it",
    places: ["why"],
    unusable: ({ screen }) =>
      screen.kind !== "why"
        ? undefined
        : screen.why?.status === "fits"
          ? "Something fits already; Esc goes back to the rules, where each can be pushed."
          : screen.why?.changes[screen.at]
            ? undefined
            : "There is no change here to make.",
  },
] as const satisfies readonly Binding[];
