import type { Anchor, Blocks, Cable, CableMotif } from "../../motif/motif.ts";
import { keysOf } from "../keys.ts";
import { type Cursor, listAt, type Reading, report, type Table, tableAt, wordAt } from "./cursor.ts";
import { anchorAt, expressionAt } from "./expressions.ts";
import * as limits from "./limits.ts";
import type { MotifReading } from "./motif-reading.ts";
import { percentageAt, wholeAt } from "./numbers.ts";

type CableParts = Pick<CableMotif, "kind" | "cables" | "ladders" | "drawIn" | "limits">;

const blocksExample = "{ start: [offset, 0], repeat: [[offset, interval]] }";

export function cableParts(motif: MotifReading): CableParts | undefined {
  const { reading, part } = motif;
  const drawInCursor = part("draw-in");
  const limitsCursor = part("limits");
  const laddersCursor = part("ladders");
  const cables = cablesAt(motif);
  const drawIn = drawInCursor ? percentageAt(reading, drawInCursor, "the draw-in", limits.drawIn) : 0;
  const warn = limitsCursor ? limitsAt(reading, limitsCursor) : {};
  const ladders = laddersCursor ? laddersAt(motif, laddersCursor) : [];
  if (!cables || !ladders || drawIn === undefined) return undefined;
  return { kind: "cable", cables, ladders, drawIn, limits: warn };
}

/** One cable under `crossings`, or several by name under `cables`; what the knitter wrote stands for what it is like. */
function cablesAt(motif: MotifReading): readonly Cable[] | undefined {
  const { reading, own, part, need } = motif;
  const [ownCables, ownCrossings] = [own.at("cables"), own.at("crossings")];
  if (ownCables && ownCrossings)
    return report(reading, ownCrossings, {
      code: "conflicting-keys",
      message: "a motif has either cables, by name, or the crossings of one",
      expected: "one of the two",
      ...(ownCrossings.keyPlace && { place: ownCrossings.keyPlace }),
    });
  const several = ownCrossings ? undefined : part("cables");
  if (several) return namedCables(motif, several);
  const crossCursor = need("cross", "the stitches left and right of the crossing: cross: [2, 2]");
  const crossingsCursor = need("crossings", blocksExample);
  const overCursor = part("over");
  const cross = crossCursor && crossAt(motif, crossCursor);
  const table =
    crossingsCursor && tableAt(reading, crossingsCursor, "the crossings", keysOf("crossings"), blocksExample);
  const blocks = table && blocksAt(motif, table);
  const over = overCursor ? overAt(reading, overCursor) : "left";
  return cross && blocks && over && [{ name: "crossing", cross, over, ...blocks }];
}

/** What a cable does not say of itself, the motif says for all of them. */
function namedCables(motif: MotifReading, cursor: Cursor): readonly Cable[] | undefined {
  const { reading, part } = motif;
  const example = "left: { over: left, start: [-4, 0], repeat: [[-4, interval]] }";
  const table = tableAt(reading, cursor, "the cables", undefined, example);
  const names = table?.keys() ?? [];
  if (table && names.length === 0)
    return report(reading, cursor, {
      code: "empty-range",
      message: `the motif ${motif.name} has no cable`,
      expected: example,
    });
  const cables = names.map((name): Cable | undefined => {
    const own = tableAt(reading, table!.at(name)!, `the cable ${name}`, keysOf("one cable"), example);
    if (!own) return undefined;
    const crossCursor = own.at("cross") ?? part("cross") ?? own.need("cross", "cross: [2, 2]");
    const overCursor = own.at("over") ?? part("over");
    const cross = crossCursor && crossAt(motif, crossCursor);
    const over = overCursor ? overAt(reading, overCursor) : "left";
    const blocks = blocksAt(motif, own);
    return cross && over && blocks && { name, cross, over, ...blocks };
  });
  return table && cables.every((cable) => cable !== undefined) ? cables : undefined;
}

const overAt = (reading: Reading, cursor: Cursor): Cable["over"] | undefined =>
  wordAt(reading, cursor, "over", ["left", "right"]);

function crossAt({ reading, quantities }: MotifReading, cursor: Cursor): Cable["cross"] | undefined {
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

function blocksAt({ reading, quantities }: MotifReading, table: Table): Blocks | undefined {
  const startCursor = table.need("start", blocksExample);
  const repeatCursor = table.need("repeat", blocksExample);
  const leadInCursor = table.at("lead-in");
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
  const over = overCursor && overAt(reading, overCursor);
  if (!table || (overCursor && !over)) return undefined;
  return { ...read.anchor, ...(over && { over }) };
}

function laddersAt({ reading, quantities }: MotifReading, cursor: Cursor): CableMotif["ladders"] | undefined {
  const read = listAt(reading, cursor, "the ladders", "[-5, 5]")?.map((item) =>
    expressionAt(reading, item, "a needle out of work", quantities),
  );
  return read?.every((one) => one !== undefined) ? read : undefined;
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
