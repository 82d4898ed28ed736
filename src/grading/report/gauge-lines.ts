import { gaugeRange } from "../../cloth/gauge-range.ts";
import { gaugeOff } from "../../cloth/gauge-uncertainty.ts";
import { centimetres } from "../../report/gauge-range-text.ts";
import { offWords } from "../../report/steady-words.ts";
import { wrap } from "../../report/wrap.ts";
import { rangesOf } from "../../steady/ranges.ts";
import type { FittedSize } from "../range-result.ts";
import { printedTexts } from "../table/line.ts";

/**
 * How long each piece may come out over all that the swatch leaves open, a line each and as patterns print it; the rest
 * is told of one size.
 */
export function gaugeLines(sizes: readonly FittedSize[], width: number): readonly string[] {
  const { pieces, gauge } = sizes[0]!.fit.garment;
  const ranges = sizes.map(({ fit }) => rangesOf(fit, gaugeRange(gauge)).pieces);
  return [
    ...wrap(
      `If the gauge is off by ${offWords(gaugeOff(gauge))} (--size tells of widths and ease too)`,
      width,
      4,
    ),
    ...pieces.flatMap(({ name }) => {
      const lengths = ranges.map((ofSize) => {
        const found = ofSize.find((piece) => piece.name === name);
        return found ? centimetres(found.lengthMm).replace(/ cm$/, "") : "-";
      });
      return wrap(`  ${name}, length in cm: ${printedTexts(lengths)}`, width, 4);
    }),
  ];
}
