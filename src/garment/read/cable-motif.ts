import type { Anchor, CableMotif } from "../../motif/motif.ts";
import { keysOf } from "../keys.ts";
import { type Cursor, listAt, type Reading, report, tableAt, wordAt } from "./cursor.ts";
import { anchorAt, expressionAt } from "./expressions.ts";
import * as limits from "./limits.ts";
import type { MotifReading } from "./motif-reading.ts";
import { percentageAt, wholeAt } from "./numbers.ts";

type CableParts = Pick<CableMotif, "kind" | "cross" | "over" | "crossings" | "drawIn" | "limits">;

export function cableParts(motif: MotifReading): CableParts | undefined {
  const { reading, part, need } = motif;
  const crossCursor = need("cross", "the stitches left and right of the crossing: cross: [2, 2]");
  const crossingsCursor = need("crossings", "{ start: [offset, 0], repeat: [[offset, interval]] }");
  const overCursor = part("over");
  const drawInCursor = part("draw-in");
  const limitsCursor = part("limits");
  const cross = crossCursor && crossAt(motif, crossCursor);
  const crossings = crossingsCursor && crossingsAt(motif, crossingsCursor);
  const over = overCursor ? wordAt(reading, overCursor, "over", ["left", "right"]) : "left";
  const drawIn = drawInCursor ? percentageAt(reading, drawInCursor, "the draw-in", limits.drawIn) : 0;
  const warn = limitsCursor ? limitsAt(reading, limitsCursor) : {};
  if (!cross || !crossings || over === undefined || drawIn === undefined) return undefined;
  return { kind: "cable", cross, over, crossings, drawIn, limits: warn };
}

function crossAt({ reading, quantities }: MotifReading, cursor: Cursor): CableMotif["cross"] | undefined {
  const items = listAt(reading, cursor, "cross", "[2, 2]");
  if (!items) return undefined;
  const [leftCursor, rightCursor] = items;
  if (!leftCursor || !rightCursor || items.length !== 2)
    return report(reading, cursor, {
      code: "wrong-type",
      message: "cross has two numbers: the stitches on the left and on the right that change places",
      expected: "[2, 2]",
    });
  const left = expressionAt(reading, leftCursor, "the stitches on the left", quantities);
  const right = expressionAt(reading, rightCursor, "the stitches on the right", quantities);
  return left && right && [left, right];
}

function crossingsAt(
  { reading, quantities }: MotifReading,
  cursor: Cursor,
): CableMotif["crossings"] | undefined {
  const example = "{ start: [offset, 0], repeat: [[offset, interval]] }";
  const table = tableAt(reading, cursor, "the crossings", keysOf("crossings"), example);
  const startCursor = table?.need("start", example);
  const repeatCursor = table?.need("repeat", example);
  const leadInCursor = table?.at("lead-in");
  const anchors = (inner: Cursor | undefined) => {
    if (!inner) return [];
    const read = listAt(reading, inner, "a list of crossings", "[[middle, row]]")?.map((item) =>
      crossingAt(reading, item, "a crossing", quantities),
    );
    return read?.every((one) => one !== undefined) ? read : undefined;
  };
  const start = startCursor && crossingAt(reading, startCursor, "the first crossing", quantities);
  const [leadIn, repeat] = [anchors(leadInCursor), anchors(repeatCursor)];
  if (repeatCursor && repeat?.length === 0)
    return report(reading, repeatCursor, {
      code: "empty-range",
      message: "a cable crosses at least once in a repeat",
      expected: "[[offset, interval]]",
    });
  return start && leadIn && repeat && { start, leadIn, repeat };
}

/** `[middle, row]`, or `[middle, row, { over: right }]`. */
function crossingAt(
  reading: Reading,
  cursor: Cursor,
  what: string,
  quantities: ReadonlySet<string>,
): Anchor | undefined {
  const read = anchorAt(reading, cursor, what, quantities);
  if (!read?.more) return read?.anchor;
  const table = tableAt(reading, read.more, what, keysOf("crossing"), "{ over: right }");
  const overCursor = table?.at("over");
  const over = overCursor && wordAt(reading, overCursor, "over", ["left", "right"]);
  if (!table || (overCursor && !over)) return undefined;
  return { ...read.anchor, ...(over && { over }) };
}

function limitsAt(reading: Reading, cursor: Cursor): CableMotif["limits"] {
  const table = tableAt(reading, cursor, "the limits", keysOf("limits"), "{ stitches: 6, rows: 4 }");
  const limit = (key: "stitches" | "rows"): number | undefined => {
    const inner = table?.at(key);
    return inner && wholeAt(reading, inner, `the limit of ${key}`, limits.fromOne);
  };
  const [stitches, rows] = [limit("stitches"), limit("rows")];
  return { ...(stitches !== undefined && { stitches }), ...(rows !== undefined && { rows }) };
}
