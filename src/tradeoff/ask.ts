import { nearest } from "../diagnostics/nearest.ts";
import { quoted } from "../diagnostics/shown.ts";
import type { Garment } from "../garment/garment.ts";
import { listed } from "../report/words.ts";
import type { TradeAsk } from "./trade.ts";
import { REST, type TradeTerm, tradeTerms } from "./trade-term.ts";

/** Why what was asked for cannot be traded, in a knitter's words. */
export interface Refused {
  readonly refused: string;
}

/** Said so by knitters, and meant. */
const alsoCalled: Readonly<Record<string, string>> = { evenness: "balance" };

/** A word of the file that is near a term without being its name, for which it is offered. */
const related: Readonly<Record<string, string>> = { margins: "balance", margin: "balance" };

/**
 * Reads which terms are traded, and which are held.
 *
 * @param between names with commas between, such as "length, balance"
 * @param hold the same; undefined where nothing is held
 */
export function readAsk(garment: Garment, between: string, hold: string | undefined): TradeAsk | Refused {
  const all = tradeTerms(garment);
  const terms = readTerms(between, all);
  if (!Array.isArray(terms)) return terms as Refused;
  const held = hold === undefined ? [] : readTerms(hold, all);
  if (!Array.isArray(held)) return held as Refused;
  return refusalOf(terms, held, all) ?? { terms, held: held.filter(({ nothing }) => nothing === undefined) };
}

function readTerms(text: string, all: readonly TradeTerm[]): readonly TradeTerm[] | Refused {
  const names = text
    .split(",")
    .map((name) => name.trim())
    .filter((name) => name !== "");
  const terms: TradeTerm[] = [];
  for (const name of names) {
    const meant =
      all.find((term) => term.name === name) ?? all.find((term) => term.name === alsoCalled[name]);
    if (!meant) {
      const near =
        related[name.toLowerCase()] ??
        nearest(
          name,
          all.map((term) => term.name),
        );
      const hint = near === undefined ? "" : ` Did you mean ${explained(near)}?`;
      return { refused: `${quoted(name)} is no term of this file's cost.${hint}\n${termsInWords(all)}` };
    }
    terms.push(meant);
  }
  return terms;
}

function refusalOf(
  terms: readonly TradeTerm[],
  held: readonly TradeTerm[],
  all: readonly TradeTerm[],
): Refused | undefined {
  const names = terms.map(({ name }) => name);
  if (new Set(names).size < names.length)
    return { refused: "A term cannot be traded for itself: name two or three different ones." };
  if (terms.length < 2 || terms.length > 3)
    return { refused: `Name two terms, or three: --between length,balance\n${termsInWords(all)}` };
  const idle = terms.find(({ nothing }) => nothing !== undefined);
  if (idle)
    return { refused: `There is nothing to trade in ${idle.name}: ${idle.nothing}.\n${termsInWords(all)}` };
  const both = held.find((term) => terms.includes(term));
  if (both) return { refused: `${both.name} is traded, so it cannot be held as well.` };
  return undefined;
}

/** What a term's name does not tell by itself. */
const meanings: Readonly<Record<string, string>> = {
  balance: "how uneven the margins are",
  [REST]: "all others together, as weighed",
};

const explained = (name: string): string =>
  meanings[name] === undefined ? name : `${name} (${meanings[name]})`;

/** What the file has to trade, and what not. */
export function termsInWords(all: readonly TradeTerm[]): string {
  const can = all.filter(({ nothing }) => nothing === undefined).map(({ name }) => name);
  const idle = all.filter(({ nothing }) => nothing !== undefined);
  return [
    `This file can trade: ${listed(can.map(explained))}.`,
    ...idle.map(({ name, nothing }) => `Nothing to trade in ${name}: ${nothing}.`),
  ].join("\n");
}
