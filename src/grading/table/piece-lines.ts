import { needleCount } from "../../cloth/bed.ts";
import { needlesAt, rowOf } from "../../cloth/counted-piece.ts";
import { groundStitch } from "../../cloth/gauge.ts";
import { type Fit, pieceOf } from "../../fit/fit.ts";
import { line, type TableLine, unlessNone } from "./line.ts";

/** What a piece is begun with, and how long it comes. */
export function pieceLines(fits: readonly Fit[], name: string): readonly TableLine[] {
  const planned = ({ garment }: Fit): number => {
    const { outline } = garment.pieces.find((piece) => piece.name === name)!;
    return rowOf(outline.at(-1)!.heightMm, groundStitch(garment.gauge));
  };
  const change = (fit: Fit): number => pieceOf(fit, name).rows - planned(fit);
  return [
    ...line(fits, "needles to cast on", "needles", (fit) => needleCount(needlesAt(pieceOf(fit, name), 0))),
    ...line(fits, "rows", "rows", (fit) => pieceOf(fit, name).rows),
    ...unlessNone(line(fits, "change of length", "rows", change)).map((one) => ({ ...one, signed: true })),
  ];
}
