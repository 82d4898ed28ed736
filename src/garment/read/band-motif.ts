import type { BandMotif } from "../../motif/motif.ts";
import { type Cursor, listAt, report } from "./cursor.ts";
import { constant, expressionAt } from "./expressions.ts";
import * as limits from "./limits.ts";
import type { MotifReading } from "./motif-reading.ts";
import { wholeAt } from "./numbers.ts";

type BandParts = Pick<BandMotif, "kind" | "stitches" | "edge" | "card" | "colours">;

export function bandParts(motif: MotifReading): BandParts | undefined {
  const { reading, part, need, quantities, name } = motif;
  const stitchesCursor = need("stitches", "the stitches of one repeat, such as stitches: 12");
  const edgeCursor = part("edge");
  const cardCursor = part("card");
  const coloursCursor = part("colours");
  const stitches =
    stitchesCursor && expressionAt(reading, stitchesCursor, "the stitches of a repeat", quantities);
  const edge = edgeCursor ? edgeAt(motif, edgeCursor) : noEdge(motif);
  const card = cardCursor && wholeAt(reading, cardCursor, "the card's width", limits.cardStitches);
  const colours = coloursCursor
    ? wholeAt(reading, coloursCursor, `the colours of ${name}`, limits.colours)
    : 1;
  if (!stitches || !edge || colours === undefined || (cardCursor && card === undefined)) return undefined;
  return { kind: "band", stitches, edge, ...(card !== undefined && { card }), colours };
}

const noEdge = ({ own }: MotifReading): BandMotif["edge"] => {
  const none = constant(0, [...own.cursor.path, "edge"]);
  return [none, none];
};

function edgeAt({ reading, quantities }: MotifReading, cursor: Cursor): BandMotif["edge"] | undefined {
  const example = "[1, 1]: the stitches at the left end and at the right end";
  const items = listAt(reading, cursor, "the edge", example);
  if (!items) return undefined;
  const [leftCursor, rightCursor] = items;
  if (!leftCursor || !rightCursor || items.length !== 2)
    return report(reading, cursor, {
      code: "wrong-type",
      message: "the edge has two numbers, one for each end of a row",
      expected: example,
    });
  const left = expressionAt(reading, leftCursor, "the edge stitches at the left", quantities);
  const right = expressionAt(reading, rightCursor, "the edge stitches at the right", quantities);
  return left && right && [left, right];
}
