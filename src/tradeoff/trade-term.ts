import { groundStitch, wholeWithin } from "../cloth/gauge.ts";
import { placedMotifs } from "../fit/enumerate.ts";
import type { Term } from "../fit/terms.ts";
import type { Preference } from "../garment/allowed.ts";
import type { Garment } from "../garment/garment.ts";
import { weightOf } from "../garment/weights.ts";

/** A term of the cost by its name, or all other terms taken together as they are weighed. */
export interface TradeTerm {
  readonly name: string;
  /** What its amounts are counted in; undefined for the rest, which is a cost. */
  readonly unit?: string;
  /** In words, why nothing of this garment can give anything up in it; absent where something can. */
  readonly nothing?: string;
}

/** What is left over of what is on hand. */
export const WASTE = "waste";

/** All terms that are not named, as weighed in the cost. */
export const REST = "rest";

const noPreference = "no `prefer` is stated for it, so it costs nothing";

/** The terms that a garment's cost may have, in the order of the look first; the rest comes last. */
export function tradeTerms(garment: Garment): readonly TradeTerm[] {
  const terms = [
    lengthTerm(garment),
    { name: "balance", unit: "rows" },
    easeTerm(garment),
    ...quantityTerms(garment),
    ...placementTerms(garment),
    wasteTerm(garment),
    { name: REST },
  ];
  // A motif may call a quantity of its own as a term that every garment has: their amounts add up.
  const byName = new Map<string, TradeTerm>();
  for (const term of terms) {
    const known = byName.get(term.name);
    if (!known || (known.nothing !== undefined && term.nothing === undefined)) byName.set(term.name, term);
  }
  return [...byName.values()];
}

function lengthTerm(garment: Garment): TradeTerm {
  const { heightMm } = groundStitch(garment.gauge);
  const changes = garment.pieces.some(
    ({ name, growMm, shrinkMm }) =>
      garment.placements.some(({ piece }) => piece === name) &&
      wholeWithin(Math.max(growMm, shrinkMm) / heightMm) > 0,
  );
  return {
    name: "length",
    unit: "rows",
    ...(!changes && { nothing: "no piece with a motif may `grow` or `shrink` by a whole row" }),
  };
}

function easeTerm(garment: Garment): TradeTerm {
  const cords = placedMotifs(garment).filter((motif) => motif.kind === "cord");
  const nothing =
    cords.length === 0
      ? "no motif is made of cord"
      : cords.every(({ ease }) => ease.prefer === undefined)
        ? noPreference
        : undefined;
  return { name: "ease", unit: "percentage points", ...(nothing !== undefined && { nothing }) };
}

function wasteTerm({ onHand, weights }: Garment): TradeTerm {
  const nothing = !onHand?.leastWaste
    ? "least waste of what is on hand is not asked for"
    : weightOf(weights, WASTE) === 0
      ? "it weighs nothing"
      : undefined;
  return { name: WASTE, unit: "% left over", ...(nothing !== undefined && { nothing }) };
}

const quantityTerms = (garment: Garment): readonly TradeTerm[] =>
  placedMotifs(garment).flatMap(({ quantities }) =>
    quantities.map((quantity): TradeTerm => preferredTerm(quantity.name, quantity.unit, [quantity])),
  );

const placementTerms = ({ placements }: Garment): readonly TradeTerm[] => [
  preferredTerm(
    "repeats",
    "repeats",
    placements.map(({ repeats }) => repeats),
  ),
  preferredTerm(
    "columns",
    "columns",
    placements.map(({ columns }) => columns),
  ),
  preferredTerm(
    "gap",
    "needles",
    placements.map(({ gap }) => gap),
  ),
];

function preferredTerm(name: string, unit: string, preferences: readonly Preference[]): TradeTerm {
  const nothing = preferences.every(({ prefer }) => prefer === undefined) ? noPreference : undefined;
  return { name, unit, ...(nothing !== undefined && { nothing }) };
}

/** How much of a term some terms of a cost are; `named` are all terms that are not the rest. */
export const amountOf = (
  { name, unit }: TradeTerm,
  terms: readonly Term[],
  named: ReadonlySet<string>,
): number =>
  terms.reduce(
    (sum, { term, amount, cost }) =>
      unit === undefined ? sum + (named.has(term) ? 0 : cost) : sum + (term === name ? amount : 0),
    0,
  );
