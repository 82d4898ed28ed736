import type { Anchor, CordMotif, EaseLimits, Strand } from "../../motif/motif.ts";
import { keysOf } from "../keys.ts";
import { type Cursor, knownNameAt, listAt, type Reading, report, tableAt } from "./cursor.ts";
import { eachAt, nextAt } from "./each-strand.ts";
import { anchorAt, expressionAt } from "./expressions.ts";
import * as limits from "./limits.ts";
import type { MotifReading } from "./motif-reading.ts";
import { inPercent, percentageAt, wholeAt } from "./numbers.ts";

/** Where a cord neither puckers the ground nor stands off in loops; common practice, no published source. */
const usualEase: EaseLimits = { from: -0.05, to: 0.15, prefer: 0.02 };

/** Spare cord where the motif does not say; common practice, no published source. */
const usualReserve = 0.15;

/** Cord stitches between two marker threads where the motif does not say; common practice, no published source. */
const usualMarkerEvery = 10;

type CordParts = Pick<
  CordMotif,
  "kind" | "strands" | "folded" | "order" | "ease" | "reserve" | "markerEvery"
>;

export function cordParts(motif: MotifReading): CordParts | undefined {
  const { reading, part, need, name } = motif;
  const strandsCursor = need("strands", "left: { start: [-1, 0], repeat: [[...]] }");
  const table =
    strandsCursor && tableAt(reading, strandsCursor, "the strands", undefined, "left: { start: [-1, 0] }");
  const names = table?.keys() ?? [];
  if (table && names.length === 0)
    report(reading, table.cursor, {
      code: "empty-range",
      message: `the motif ${name} has no strand`,
      expected: "at least one strand",
    });
  const strands = names.map((one) => strandAt(motif, table!.at(one)!, one, names));
  const foldedCursor = part("folded");
  const orderCursor = part("order");
  const easeCursor = part("ease");
  const reserveCursor = part("reserve");
  const folded = foldedCursor ? foldedAt(reading, foldedCursor, names) : [];
  const order = orderCursor ? orderAt(reading, orderCursor, names) : names;
  const ease = easeCursor ? easeAt(reading, easeCursor) : usualEase;
  const reserve = reserveCursor
    ? (percentageAt(reading, reserveCursor, "the reserve", limits.reserve) ?? usualReserve)
    : usualReserve;
  const markerCursor = part("marker");
  const markerEvery = markerCursor
    ? (wholeAt(reading, markerCursor, "the cord stitches from marker to marker", limits.markerEvery) ??
      usualMarkerEvery)
    : usualMarkerEvery;
  if (names.length === 0 || !folded || !order || !ease) return undefined;
  if (!strands.every((strand) => strand !== undefined)) return undefined;
  return { kind: "cord", strands, folded, order, ease, reserve, markerEvery };
}

function strandAt(
  { reading, quantities }: MotifReading,
  cursor: Cursor,
  name: string,
  names: readonly string[],
): Strand | undefined {
  const example = "{ start: [-1, 0], lead-in: [[-spread, interval]], repeat: [[spread, interval]] }";
  const table = tableAt(reading, cursor, `the strand ${name}`, keysOf("strand"), example);
  const startCursor = table?.need("start", "the needle and row of the first hanging: start: [-1, 0]");
  const repeatCursor = table?.need("repeat", "the hangings of one repeat: repeat: [[spread, interval]]");
  const leadInCursor = table?.at("lead-in");
  const eachCursor = table?.at("each");
  const nextCursor = table?.at("next");
  const each = eachCursor && eachAt(reading, eachCursor, quantities);
  const known = each ? new Set([...quantities, each.index]) : quantities;
  const anchors = (inner: Cursor | undefined): Strand["repeat"] | undefined => {
    if (!inner) return [];
    const items = listAt(reading, inner, "a list of hangings", "[[needle, row], [needle, row]]");
    const read = items?.map((item) => hangingAt(reading, item, "a hanging", known));
    return read?.every((one) => one !== undefined) ? read : undefined;
  };
  const start = startCursor && hangingAt(reading, startCursor, "the first hanging", known);
  const leadIn = anchors(leadInCursor);
  const repeat = anchors(repeatCursor);
  const next = nextCursor && nextAt(reading, nextCursor, { names, each, known });
  if (start?.count)
    return report(reading, startCursor!, {
      code: "misplaced-count",
      message: `the strand ${name} cannot be counted before it hangs anywhere`,
      expected: "a count on a later hanging",
    });
  if (repeatCursor && repeat?.length === 0)
    return report(reading, repeatCursor, {
      code: "empty-range",
      message: `the strand ${name} is hung nowhere in the repeat`,
      expected: "[[needle, row], ...]",
    });
  if ((eachCursor && !each) || (nextCursor && !next)) return undefined;
  return (
    start && leadIn && repeat && { name, start, leadIn, repeat, ...(each && { each }), ...(next && { next }) }
  );
}

/** `[needle, row]`, or `[needle, row, { count: 10, turn: 1 }]`. */
function hangingAt(
  reading: Reading,
  cursor: Cursor,
  what: string,
  quantities: ReadonlySet<string>,
): Anchor | undefined {
  const read = anchorAt(reading, cursor, what, quantities);
  if (!read?.more) return read?.anchor;
  const table = tableAt(reading, read.more, what, keysOf("hanging"), "{ count: 10 } or { turn: 1 }");
  if (!table) return undefined;
  const sum = (key: "count" | "turn", of: string) => {
    const inner = table.at(key);
    return { asked: inner !== undefined, value: inner && expressionAt(reading, inner, of, quantities) };
  };
  const [count, turn] = [sum("count", "the count of a loop"), sum("turn", "the turn in the row")];
  if ((count.asked && !count.value) || (turn.asked && !turn.value)) return undefined;
  return {
    ...read.anchor,
    ...(count.value && { count: count.value }),
    ...(turn.value && { turn: turn.value }),
  };
}

/** One pair of strands, or a list of pairs. */
function foldedAt(
  reading: Reading,
  cursor: Cursor,
  names: readonly string[],
): CordMotif["folded"] | undefined {
  const example = "[left, right], or [[a, b], [c, d]]";
  const items = listAt(reading, cursor, "folded", example);
  if (!items) return undefined;
  const pairs = items.some(({ written }) => written.kind === "list")
    ? items
    : items.length > 0
      ? [cursor]
      : [];
  const seen = new Set<string>();
  const read = pairs.map((pair): readonly [string, string] | undefined => {
    const arms = listAt(reading, pair, "a folded cord", example) ?? [];
    if (arms.length !== 2)
      return report(reading, pair, {
        code: "wrong-type",
        message: "a folded cord has two arms",
        expected: example,
      });
    const [one, other] = arms.map((arm) => knownNameAt(reading, arm, "strand", "unknown-strand", names));
    if (one === undefined || other === undefined) return undefined;
    if (one === other || seen.has(one) || seen.has(other))
      return report(reading, pair, {
        code: "repeated-name",
        message: "a strand is an arm of one cord only",
        expected: "each strand once",
      });
    seen.add(one).add(other);
    return [one, other];
  });
  return read.every((pair) => pair !== undefined) ? read : undefined;
}

function orderAt(reading: Reading, cursor: Cursor, names: readonly string[]): readonly string[] | undefined {
  const items = listAt(reading, cursor, "the order of work", `[${names.join(", ")}]`);
  const order = items?.map((item) => knownNameAt(reading, item, "strand", "unknown-strand", names));
  if (!order?.every((name) => name !== undefined)) return undefined;
  if (new Set(order).size !== order.length)
    return report(reading, cursor, {
      code: "repeated-name",
      message: "the order of work names a strand twice",
      expected: `each once: [${names.join(", ")}]`,
    });
  if (order.length !== names.length)
    return report(reading, cursor, {
      code: "missing-name",
      message: "the order of work names every strand",
      expected: `[${names.join(", ")}]`,
    });
  return order;
}

function easeAt(reading: Reading, cursor: Cursor): EaseLimits | undefined {
  const example = "{ from: -5 %, to: 15 %, prefer: 2 % }";
  const table = tableAt(reading, cursor, "the ease", keysOf("ease"), example);
  if (!table) return undefined;
  const limit = (key: "from" | "to" | "prefer"): number | undefined => {
    const inner = table.at(key);
    return inner ? percentageAt(reading, inner, `the ease's ${key}`, limits.ease) : usualEase[key];
  };
  const [from, to, prefer] = [limit("from"), limit("to"), limit("prefer")];
  if (from === undefined || to === undefined || prefer === undefined) return undefined;
  if (from > to)
    return report(reading, cursor, {
      code: "reversed-range",
      message: "the ease starts above its end",
      found: `from ${inPercent(from)} to ${inPercent(to)}`,
      expected: `from: ${inPercent(to)}, to: ${inPercent(from)}`,
    });
  return { from, to, prefer };
}
