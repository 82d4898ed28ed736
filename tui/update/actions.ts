import { moveEnd } from "../../src/explore/change-allows.ts";
import { movePreference, moveWeight } from "../../src/explore/change-preference.ts";
import { chosenFor } from "../../src/explore/chosen.ts";
import { isRefused } from "../../src/explore/edit.ts";
import { isHeld } from "../../src/explore/garment-rule.ts";
import { holdFast, letGo, together } from "../../src/explore/hold.ts";
import { startFrom } from "../../src/explore/rival-start.ts";
import type { Action } from "../keys.ts";
import type { Next } from "../message.ts";
import { heldHere, isChanged, type OpenGarment, type Pane, ruleAt, type State } from "../state.ts";
import { askWhy, leaveWhy, makeChange } from "./asking-why.ts";
import { down, left, right, toRule, up } from "./moves.ts";
import { next, onScreen, refuse, tell, withGarment, withView } from "./next.ts";
import { remembering } from "./remembering.ts";
import { pageRows, scrolled } from "./scrolling.ts";
import {
  findTrade,
  leaveTrade,
  openTrade,
  otherTerms,
  takePoint,
  toggleHeld,
  toggleTraded,
} from "./trading.ts";
import { acceptTyped, startTyping, typed } from "./typing.ts";
import { changed, redone, replaced, undone } from "./versions.ts";

/** What each action of the key table does. */
export const actions: Readonly<Record<Action, (state: State) => Next>> = {
  up,
  down,
  left,
  right,
  first: (state) => toRule(state, 0),
  last: (state) => toRule(state, (state.garment?.reading.rules.length ?? 1) - 1),
  "page up": (state) => scrolled(state, -pageRows(state)),
  "page down": (state) => scrolled(state, pageRows(state)),
  more: (state) => stepped(state, 1),
  less: (state) => stepped(state, -1),
  type: startTyping,
  accept: acceptTyped,
  erase: (state) => typed(state, (text) => [...text].slice(0, -1).join("")),
  "erase all": (state) => typed(state, () => ""),
  hold,
  "let all go": letAllGo,
  take,
  "next pane": (state) => paned(state, 1),
  "previous pane": (state) => paned(state, -1),
  compare: (state) =>
    next(onScreen(state, { kind: "compare", rival: Math.max(1, state.garment?.view.choice ?? 1) })),
  why: askWhy,
  "make change": makeChange,
  trade: openTrade,
  "trade term": toggleTraded,
  "hold term": toggleHeld,
  "find trade": findTrade,
  "other terms": otherTerms,
  "take point": takePoint,
  sheet: (state) => next(onScreen(state, { kind: "sheet", scroll: 0 })),
  "next placement": (state) =>
    next(
      withGarment(state, (garment) => {
        const placement = (garment.view.placement + 1) % (garment.reading.garment?.placements.length ?? 1);
        return { ...garment, view: { ...garment.view, placement, ...wholePiece } };
      }),
    ),
  "zoom in": (state) => zoomed(state, 1),
  "zoom out": (state) => zoomed(state, -1),
  undo: undone,
  redo: redone,
  find: (state) => next(onScreen(state, { kind: "finding", text: "", from: state.garment?.view.rule ?? 0 })),
  save: (state) => saving(state, "yes"),
  "end search": (state) =>
    next(tell(state, "Ending the search with the best so far."), {
      kind: "end search",
      sequence: state.garment?.solving.sequence ?? state.sequence,
    }),
  files: (state) =>
    state.garment && isChanged(state.garment)
      ? refuse(state, "There are changes that are not saved: save them (s) or undo them (u) first.")
      : next(onScreen({ ...state, garment: undefined }, { kind: "files" }), { kind: "list shelf" }),
  open: opened,
  "read again": (state) =>
    state.garment
      ? next(onScreen(state, { kind: "opening", file: state.garment.file }), {
          kind: "open",
          file: state.garment.file,
        })
      : next(state),
  "save and quit": (state) => saving(state, "then quit"),
  "quit unsaved": (state) =>
    next(state, ...(state.garment ? [{ kind: "forget kept", file: state.garment.file } as const] : []), {
      kind: "quit",
    }),
  "take unsaved": ({ screen, ...state }) =>
    screen.kind === "ask unsaved" && state.garment
      ? replaced(
          tell(
            onScreen({ ...state, screen }, { kind: "main" }),
            "Your changes are back; they are not saved yet.",
          ),
          screen.unsaved.text,
          state.garment.saved,
        )
      : next({ ...state, screen }),
  "drop unsaved": (state) =>
    next(
      tell(onScreen(state, screenOf(state)), "The changes were dropped."),
      ...(state.garment ? [{ kind: "forget kept", file: state.garment.file } as const] : []),
    ),
  "write mine": (state) =>
    state.screen.kind === "ask conflict"
      ? saving(onScreen(state, screenOf(state)), "yes", state.screen.theirs)
      : next(state),
  "take theirs": ({ screen, ...state }) =>
    screen.kind === "ask conflict"
      ? replaced(
          tell(
            onScreen({ ...state, screen }, { kind: "main" }),
            "This is what is on disk; undo (u) brings yours back.",
          ),
          screen.theirs,
          screen.theirs,
        )
      : next({ ...state, screen }),
  leave,
  help: (state) => next(onScreen(state, { kind: "help", scroll: 0, back: state.screen })),
  quit: (state) =>
    state.garment && isChanged(state.garment)
      ? next(onScreen(state, { kind: "ask quit" }))
      : next(state, { kind: "quit" }),
  suspend: (state) => next(state, { kind: "suspend" }),
  "quit at once": (state) => next(state, { kind: "quit" }),
};

/** Sixteen times as large: one needle is several dots wide then. */
const mostZoom = 4;

/** The middle of what is in view stays where it is. */
const zoomed = (state: State, by: 1 | -1): Next =>
  next(
    withView(state, ({ zoom, scroll }) => {
      const to = zoom + by;
      if (to > mostZoom) return {};
      if (to <= 0) return wholePiece;
      const times = 2 ** by;
      return {
        zoom: to,
        scroll: { across: Math.round(scroll.across * times), up: Math.round(scroll.up * times) },
      };
    }),
  );

const wholePiece = { zoom: 0, scroll: { across: 0, up: 0 } };

/** The value that a rule has in a fit of the text as it is now. */
const chosenNow = ({ solving }: OpenGarment, rule: Parameters<typeof chosenFor>[0]): number | undefined =>
  solving.current && solving.shown ? chosenFor(rule, solving.shown.fit) : undefined;

function stepped(state: State, by: 1 | -1): Next {
  const { garment } = state;
  const rule = garment && ruleAt(garment);
  if (!garment || !rule) return next(state);
  const { text } = garment.version;
  const chosen = chosenNow(garment, rule);
  switch (garment.view.field) {
    case "from":
    case "to":
      return changed(state, moveEnd(text, rule, garment.view.field, by, chosen));
    case "prefer":
      return changed(state, movePreference(text, rule, by, chosen));
    case "weight":
      return changed(state, moveWeight(rule, by));
  }
}

function hold(state: State): Next {
  const { garment } = state;
  const rule = garment && ruleAt(garment);
  if (!garment || !rule) return next(state);
  const { version, solving } = garment;
  if (isHeld(rule)) {
    const { [rule.id]: _, ...rest } = version.beforeHold;
    return changed(state, letGo(version.text, rule, version.beforeHold), rest);
  }
  if (solving.underWay && rule.allows.kind === "values")
    return refuse(state, "The fit is still being sought; then its value can be held fast.");
  const fit = solving.current ? solving.shown?.fit : undefined;
  return changed(state, holdFast(version.text, rule, fit), remembering(garment, [rule.id]));
}

function letAllGo(state: State): Next {
  const { garment } = state;
  if (!garment) return next(state);
  const { version } = garment;
  const held = heldHere(garment);
  if (held.length === 0) return refuse(state, "Nothing that was held fast here is so still.");
  const change = together(
    held.map((rule) => letGo(version.text, rule, version.beforeHold)),
    "All that was held fast here is let go",
  );
  return changed(state, change, {});
}

function take(state: State): Next {
  const { garment } = state;
  const shown = garment?.solving.shown;
  const choice = state.screen.kind === "compare" ? state.screen.rival : (garment?.view.choice ?? 0);
  const rival = shown?.rivals[choice - 1];
  if (!garment || !shown || !rival) return refuse(state, "There is no rival here.");
  const { rules } = garment.reading;
  const change = startFrom(garment.version.text, rules, shown.fit, rival);
  const ids = rules.filter((rule) => !isHeld(rule)).map(({ id }) => id);
  return changed(state, change, isRefused(change) ? undefined : remembering(garment, ids));
}

const panes: readonly Pane[] = ["rules", "choices", "drawing"];

const paned = (state: State, by: number): Next =>
  next(
    withView(state, ({ pane }) => ({
      pane: panes[(panes.indexOf(pane) + by + panes.length) % panes.length]!,
    })),
  );

/** @param base what the file must still read */
function saving(state: State, how: "yes" | "then quit", base?: string): Next {
  const { garment } = state;
  if (!garment) return next(state);
  const { file, version, saved } = garment;
  return next(
    withGarment(state, (one) => ({ ...one, saving: how })),
    { kind: "save", file, text: version.text, base: base ?? saved },
  );
}

function opened(state: State): Next {
  const entry = state.shelf.entries[state.shelf.at];
  if (!entry) return refuse(state, "There is nothing to open.");
  if (entry.kind === "new") return next(state, { kind: "new" });
  return next(onScreen(state, { kind: "opening", file: entry.file }), { kind: "open", file: entry.file });
}

/** The screen that the open garment belongs on. */
const screenOf = ({ garment }: State): State["screen"] => {
  if (!garment) return { kind: "files" };
  return garment.reading.garment ? { kind: "main" } : { kind: "mistakes", scroll: 0 };
};

function leave(state: State): Next {
  const { screen } = state;
  const calm = { ...state, message: undefined };
  switch (screen.kind) {
    case "help":
      return next(onScreen(calm, screen.back));
    case "trade":
      return leaveTrade(state, screen);
    case "why":
      return leaveWhy(state);
    case "finding":
      return next(withView(onScreen(calm, { kind: "main" }), () => ({ rule: screen.from })));
    case "main":
      return next(withView(calm, () => ({ pane: "rules", choice: 0 })));
    default:
      return next(onScreen(calm, screenOf(state)));
  }
}
