import { changesToJson, findingsOf } from "./why-json.ts";
import { leftOutWords, type PlacedWhyRange } from "./why-range-text.ts";

/**
 * All sizes in the format of one, `evenrow-why/1`: what was found of each is in `sizes`. Where each fits by itself, but not
 * all together, `changes` says what not to share.
 */
export function whyRangeToJson(why: PlacedWhyRange, source: string): object {
  const { status, complete, sizes } = why;
  const head = { format: "evenrow-why/1", status, complete, conflict: [] };
  const found = sizes.map(({ size, why: one }) => ({
    size,
    status: one.status,
    complete: one.complete,
    ...findingsOf(one, source),
  }));
  if (why.status === "fits") return { ...head, changes: [], sizes: found, not_asked: why.others };
  const { misfits, freeing, clash } = why.result;
  const changes = why.leftOut.map((one) => ({ ...one, words: leftOutWords(one) }));
  return { ...head, misfits, freeing, clash, changes: changesToJson(changes, source), sizes: found };
}
