import { type FrontierOptions, frontier } from "../../solver/choice.ts";
import type { Engine } from "../../solver/program.ts";
import { WorkEnded, within } from "../fit/allowance.ts";
import type { Fit } from "../fit/fit.ts";
import { fitFrom, prepare } from "../fit/prepare.ts";
import { fitGarment } from "../fit/solve.ts";
import { timeLeft } from "../fit/time-left.ts";
import type { Garment } from "../garment/garment.ts";
import { type Bounds, inGrains, measuredProgram, measuresOf, wasteOfAll } from "./measured.ts";
import { amountOf, type TradeTerm } from "./trade-term.ts";

/** What is traded for what. */
export interface TradeAsk {
  /** Two or three. */
  readonly terms: readonly TradeTerm[];
  /** Terms of which nothing more is given up than the best fit does. */
  readonly held: readonly TradeTerm[];
}

/** What came of looking for the trade-off between some terms. */
export type TradeResult = TradeOff | NoTradeOff;

export interface TradeOff extends TradeAsk {
  readonly status: "traded";
  /** By rising amount of the first term. */
  readonly points: readonly TradePoint[];
  /** Whether it is certain that there are no more points. */
  readonly complete: boolean;
  /** The fit with the least weighted cost, which need not be a point, and what it gives up. */
  readonly best: TradePoint;
  /** Which of the points it is; undefined where a point gives up less of one term and no more of the others. */
  readonly bestAt?: number;
  readonly notes: readonly string[];
}

/** A fit of which no other gives up less of one term and no more of the others; the cheapest of those like it. */
export interface TradePoint {
  /** By term, in its unit; of the rest, its cost. */
  readonly amounts: readonly number[];
  readonly fit: Fit;
}

type NoTradeOff =
  | { readonly status: "does not fit"; readonly notes: readonly string[] }
  /** `reason` says in words what ended it before there was anything to show. */
  | { readonly status: "stopped"; readonly reason: string; readonly notes: readonly string[] };

/**
 * The exact trade-off between two or three terms of a garment's cost: every fit of which no other gives up less of one
 * and no more of the others. Each point is proven and passes the independent check.
 *
 * @throws RefusedFit where the check refuses a fit
 */
export async function tradeOff(
  garment: Garment,
  ask: TradeAsk,
  engine: Engine,
  options: FrontierOptions = {},
): Promise<TradeResult> {
  const left = timeLeft(options.timeLimitMs);
  const result = await fitGarment(garment, engine, { rivals: 0, ...left() });
  if (result.status !== "fits") return result;
  const pointOf = pointIn(ask);
  const best = pointOf(result.fit);
  try {
    const measured = [...ask.terms, ...ask.held];
    const named = namedIn(ask);
    const measures = measuresOf(measured, named);
    const prepared = within(left().timeLimitMs, () => prepare(garment, { fits: 1, measures }));
    if (!prepared) return { status: "does not fit", notes: result.notes };
    const bounds = boundsOf(ask, result.fit, wasteOfAll(prepared, measured, named));
    const { program, rows } = measuredProgram(prepared, measured, named, measures, bounds);
    const traded = rows.slice(0, ask.terms.length);
    const found = await frontier(program, traded, engine, { ...options, ...left() });
    const points = found.points.map(({ picks }) => pointOf(fitFrom(prepared, picks)));
    const bestAt = points.findIndex((point) => isBest(point, best));
    return {
      ...ask,
      status: "traded",
      points,
      complete: found.complete && result.proven,
      best,
      ...(bestAt >= 0 && { bestAt }),
      notes: [...new Set([...result.notes, ...(found.note === undefined ? [] : [found.note])])],
    };
  } catch (error) {
    if (error instanceof WorkEnded) return { status: "stopped", reason: error.message, notes: result.notes };
    throw error;
  }
}

const namedIn = ({ terms }: TradeAsk): ReadonlySet<string> => new Set(terms.map(({ name }) => name));

function pointIn(ask: TradeAsk): (fit: Fit) => TradePoint {
  const named = namedIn(ask);
  return (fit) => ({ amounts: ask.terms.map((term) => amountOf(term, fit.terms, named)), fit });
}

/**
 * What is held to what the best fit gives up; each part of a sum may have been rounded up by half a grain.
 *
 * @param untold what of each term the choices do not tell
 */
function boundsOf(ask: TradeAsk, best: Fit, untold: readonly number[]): Bounds {
  const named = namedIn(ask);
  const rounding = best.looks.length + best.placements.length;
  return [
    ...ask.terms.map(() => Number.POSITIVE_INFINITY),
    ...ask.held.map((term, index) => {
      const told = amountOf(term, best.terms, named) - untold[ask.terms.length + index]!;
      return inGrains(told) + rounding;
    }),
  ];
}

/** Several fits may cost the same; with the same amounts one of them is as good as another. */
const isBest = (point: TradePoint, best: TradePoint): boolean =>
  inGrains(point.fit.cost) === inGrains(best.fit.cost) &&
  point.amounts.every((amount, index) => inGrains(amount) === inGrains(best.amounts[index]!));
