import type { Next } from "../message.ts";
import { type OpenGarment, ruleAt, type State } from "../state.ts";
import { movedInWhy } from "./asking-why.ts";
import { next, onScreen, refuse, withGarment, within, withView } from "./next.ts";
import { scrolled } from "./scrolling.ts";
import { movedInTrade } from "./trading.ts";

export const up = (state: State): Next => vertical(state, -1);
export const down = (state: State): Next => vertical(state, 1);
export const left = (state: State): Next => sideways(state, -1);
export const right = (state: State): Next => sideways(state, 1);

function vertical(state: State, by: 1 | -1): Next {
  const { screen, shelf } = state;
  switch (screen.kind) {
    case "files": {
      const at = within(shelf.at + by, 0, Math.max(0, shelf.entries.length - 1));
      return next({ ...state, shelf: { ...shelf, at }, message: undefined });
    }
    case "mistakes":
    case "help":
    case "sheet":
      return scrolled(state, by);
    case "compare": {
      const rivals = state.garment?.solving.shown?.rivals.length ?? 0;
      return next(onScreen(state, { ...screen, rival: within(screen.rival + by, 1, Math.max(1, rivals)) }));
    }
    case "trade":
      return movedInTrade(state, screen, by);
    case "why":
      return movedInWhy(state, screen, by);
    case "main":
      return inPane(state, by);
    default:
      return next(state);
  }
}

function inPane(state: State, by: 1 | -1): Next {
  const calm = { ...state, message: undefined };
  const { garment } = state;
  if (!garment) return next(calm);
  switch (garment.view.pane) {
    case "rules":
      return next(withGarment(calm, (one) => atRule(one, one.view.rule + by)));
    case "choices": {
      const most = garment.solving.shown?.rivals.length ?? 0;
      return next(withView(calm, ({ choice }) => ({ choice: within(choice + by, 0, most) })));
    }
    case "drawing":
      return scrolledDrawing(calm, { across: 0, up: -by });
  }
}

export const toRule = (state: State, rule: number): Next =>
  next(withGarment({ ...state, message: undefined }, (one) => atRule(one, rule)));

function atRule(garment: OpenGarment, rule: number): OpenGarment {
  const at = within(rule, 0, Math.max(0, garment.reading.rules.length - 1));
  const fields = garment.reading.rules[at]?.fields ?? [];
  const { field } = garment.view;
  return {
    ...garment,
    view: { ...garment.view, rule: at, field: fields.includes(field) ? field : (fields[0] ?? "from") },
  };
}

function sideways(state: State, by: 1 | -1): Next {
  const { garment, screen } = state;
  if (screen.kind === "compare") return vertical(state, by);
  const calm = { ...state, message: undefined };
  if (garment?.view.pane === "drawing") return scrolledDrawing(calm, { across: by, up: 0 });
  const fields = (garment && ruleAt(garment)?.fields) ?? [];
  const at = fields.indexOf(garment?.view.field ?? "from") + by;
  const field = fields[at];
  return field === undefined ? next(calm) : next(withView(calm, () => ({ field })));
}

/** Scrolling goes by eighths of what is in view, from the middle of the piece; without a zoom all of it is. */
function scrolledDrawing(state: State, by: { readonly across: number; readonly up: number }): Next {
  if (state.garment?.view.zoom === 0) return refuse(state, "The whole piece is in view; z draws it larger.");
  return next(
    withView(state, ({ scroll, zoom }) => {
      const most = 4 * (2 ** zoom - 1);
      return {
        scroll: {
          across: within(scroll.across + by.across, -most, most),
          up: within(scroll.up + by.up, -most, most),
        },
      };
    }),
  );
}
