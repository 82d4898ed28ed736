import { distance } from "fastest-levenshtein";

/** Names longer than this are compared no more: nobody mistypes them, and comparing takes time. */
const LONGEST_COMPARED = 60;

/**
 * The known name that a misspelt one was most likely meant to be, if one is close: at most one letter in three
 * different, whatever its capitals, and with spaces, `-` and `_` taken for the same.
 */
export function nearest(name: string, known: Iterable<string>): string | undefined {
  if (name.length > LONGEST_COMPARED) return undefined;
  const plain = simplified(name);
  let best: string | undefined;
  let bestDistance = Number.POSITIVE_INFINITY;
  for (const candidate of known) {
    const letters = simplified(candidate);
    const apart = distance(plain, letters);
    if (apart <= Math.max(plain.length, letters.length) / 3 && apart < bestDistance) {
      best = candidate;
      bestDistance = apart;
    }
  }
  return best;
}

const simplified = (name: string): string => name.toLowerCase().replace(/[\s_-]+/g, "-");
