import { fitShown, type OpenGarment, ruleAt, type State } from "../state.ts";

/** Why a key cannot be used now; undefined where it can. */
export const open = (state: State, why: (garment: OpenGarment) => string | undefined): string | undefined =>
  state.garment ? why(state.garment) : "There is no garment open.";

export const needsFit = (state: State): string | undefined =>
  open(state, (garment) => (fitShown(garment) ? undefined : "There is no fit to look at yet."));

const needsCurrentFit = (state: State): string | undefined =>
  open(state, ({ solving }) =>
    solving.shown && solving.current
      ? undefined
      : solving.underWay
        ? "The fit is still being sought; wait for it."
        : "Nothing fits, so there is nothing to take a value from.",
  );

export const needsRule = (state: State): string | undefined =>
  open(state, (garment) => (ruleAt(garment) ? undefined : "There is no rule here."));

export const needsRival = (state: State): string | undefined =>
  open(state, ({ solving, view }) =>
    !solving.shown || !solving.current
      ? needsCurrentFit(state)
      : view.choice === 0
        ? "This is the best fit already; choose one of its rivals below it."
        : undefined,
  );

export const needsOthers = (state: State): string | undefined =>
  open(state, ({ solving }) =>
    !solving.shown
      ? "There is no fit to compare."
      : solving.shown.rivals.length === 0
        ? "There is no rival to put beside the best fit."
        : undefined,
  );
