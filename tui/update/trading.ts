import { isRefused } from "../../src/explore/edit.ts";
import { isHeld } from "../../src/explore/garment-rule.ts";
import { readSource } from "../../src/explore/read-source.ts";
import { startFrom } from "../../src/explore/rival-start.ts";
import { REST, tradeTerms } from "../../src/tradeoff/trade-term.ts";
import type { Next } from "../message.ts";
import type { TradeReport } from "../solver/trade-messages.ts";
import { type State, type TradeScreen, toTrade } from "../state.ts";
import { next, onScreen, refuse, within } from "./next.ts";
import { remembering } from "./remembering.ts";
import { changeOpen, openScreen } from "./under-help.ts";
import { changed } from "./versions.ts";

/** Opens the trade-off with the term suggested that the best fit gives up most in, against all else. */
export function openTrade(state: State): Next {
  const { garment } = state;
  const read = garment?.reading.garment;
  if (!garment || !read) return next(state);
  if (readSource(garment.version.text, garment.file, garment.beside).range)
    return refuse(state, "A trade-off is of one size by itself: evenrow tradeoff with --size finds it.");
  const terms = tradeTerms(read);
  const able = terms.filter(({ nothing }) => nothing === undefined).map(({ name }) => name);
  const costs = new Map<string, number>();
  for (const { term, cost } of garment.solving.shown?.fit.terms ?? [])
    costs.set(term, (costs.get(term) ?? 0) + cost);
  const [costliest] = [...able].sort((a, b) => (costs.get(b) ?? 0) - (costs.get(a) ?? 0));
  return next(
    onScreen(
      { ...state, message: undefined },
      {
        kind: "trade",
        terms,
        at: 0,
        traded: [],
        suggested: able.filter((name) => name === costliest || name === REST),
        held: [],
        point: 0,
      },
    ),
  );
}

const onTrade = (state: State, change: Partial<TradeScreen>): State =>
  state.screen.kind === "trade"
    ? onScreen({ ...state, message: undefined }, { ...state.screen, ...change })
    : state;

/** The term, or the point, above or below. */
export function movedInTrade(state: State, screen: TradeScreen, by: number): Next {
  const { found, terms, at, point } = screen;
  return next(
    found
      ? onTrade(state, { point: within(point + by, 0, Math.max(0, found.points.length - 1)) })
      : onTrade(state, { at: within(at + by, 0, terms.length - 1) }),
  );
}

/** Trades the chosen term, or no more. */
export const toggleTraded = (state: State): Next => toggled(state, "traded", "held");

/** Holds the chosen term to what the best fit gives up, or no more. */
export const toggleHeld = (state: State): Next => toggled(state, "held", "traded");

function toggled(state: State, one: "traded" | "held", other: "traded" | "held"): Next {
  const { screen } = state;
  if (screen.kind !== "trade") return next(state);
  const term = screen.terms[screen.at]!;
  if (term.nothing !== undefined)
    return refuse(state, `There is nothing to trade in ${term.name}: ${term.nothing}.`);
  const has = screen[one].includes(term.name);
  if (one === "traded" && !has && screen.traded.length === 3)
    return refuse(state, "Three terms are traded already; take one out first.");
  const without = (names: readonly string[]) => names.filter((name) => name !== term.name);
  const marked = has ? without(screen[one]) : [...screen[one], term.name];
  const inOrder = screen.terms.map(({ name }) => name).filter((name) => marked.includes(name));
  return next(onTrade(state, { [one]: inOrder, [other]: without(screen[other]) }));
}

/** Looks for the trade-off between the terms that are marked. */
export function findTrade(state: State): Next {
  const { screen, garment } = state;
  if (screen.kind !== "trade" || !garment) return next(state);
  if (screen.asked !== undefined) return refuse(state, "It is being sought already; Esc gives it up.");
  const traded = toTrade(screen);
  if (traded.length < 2) return refuse(state, "Mark two terms, or three, with Space.");
  const sequence = state.sequence + 1;
  return next(onTrade({ ...state, sequence }, { asked: sequence, point: 0 }), {
    kind: "trade",
    sequence,
    source: garment.version.text,
    name: garment.file,
    ...garment.beside,
    traded,
    held: screen.held,
  });
}

/** Goes back from the points to the terms. */
export function otherTerms(state: State): Next {
  if (state.screen.kind !== "trade") return next(state);
  const { found: _, ...rest } = state.screen;
  return next(onScreen({ ...state, message: undefined }, rest));
}

/**
 * What the trading thread tells, also while the help lies over the terms; what is not about the newest request is stale
 * and is dropped.
 */
export function heardTrade(state: State, { sequence, answer }: TradeReport): Next {
  const screen = openScreen(state, "trade");
  if (screen?.asked !== sequence) return next(state);
  const { asked: _, ...rest } = screen;
  if (answer.kind === "none")
    return refuse(changeOpen(state, rest), `There is no trade-off: ${answer.reason}.`);
  const { trade } = answer;
  if (trade.points.length === 0)
    return refuse(changeOpen(state, rest), "The time allowed was up before the first point was proven.");
  return next(changeOpen(state, { ...rest, found: trade, point: trade.bestAt ?? 0 }));
}

/** Esc: gives up what is sought, else leaves for the rules. */
export function leaveTrade(state: State, screen: TradeScreen): Next {
  const calm = { ...state, message: undefined };
  if (screen.asked === undefined) return next(onScreen(calm, { kind: "main" }));
  const { asked: _, ...rest } = screen;
  return next(onScreen(calm, rest), { kind: "give up trade" });
}

/** Makes the point's fit the one to go on from, as a rival is taken over. */
export function takePoint(state: State): Next {
  const { screen, garment } = state;
  if (screen.kind !== "trade" || !garment) return next(state);
  const point = screen.found?.points[screen.point];
  if (!screen.found || !point) return refuse(state, "There is no point here.");
  const { rules } = garment.reading;
  const change = startFrom(garment.version.text, rules, screen.found.best.fit, point.fit);
  const ids = rules.filter((rule) => !isHeld(rule)).map(({ id }) => id);
  return changed(state, change, isRefused(change) ? undefined : remembering(garment, ids));
}
