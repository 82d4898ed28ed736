import { distance } from "fastest-levenshtein";

/** Names longer than this are compared no more: nobody mistypes them, and comparing takes time. */
const LONGEST_COMPARED = 60;

/** The part of a name's letters that may differ. Judgement: two in a word of five, three in one of eight. */
const CLOSE = 0.4;

/**
 * The known name that a misspelt one was most likely meant to be, if one is close: few letters differ, or two have
 * changed places; whatever its capitals, and with spaces, `-` and `_` taken for the same.
 */
export function nearest(name: string, known: Iterable<string>): string | undefined {
  if (name.length > LONGEST_COMPARED) return undefined;
  const plain = simplified(name);
  let best: string | undefined;
  let bestDistance = Number.POSITIVE_INFINITY;
  for (const candidate of known) {
    const letters = simplified(candidate);
    const apart = distance(plain, letters);
    const isClose =
      apart <= Math.max(plain.length, letters.length) * CLOSE ||
      (apart === 2 && sorted(plain) === sorted(letters));
    if (isClose && apart < bestDistance) {
      best = candidate;
      bestDistance = apart;
    }
  }
  return best;
}

const sorted = (name: string): string => [...name].sort().join("");

const simplified = (name: string): string => name.toLowerCase().replace(/[\s_-]+/g, "-");
