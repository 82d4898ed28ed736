import { stringify } from "yaml";
import { simplexEngine } from "../../solver/simplex-engine.ts";
import type { SizeRange } from "../../src/garment/garment.ts";
import { readGarment } from "../../src/garment/read-garment.ts";
import { fitRange, type RangeOptions } from "../../src/grading/fit-range.ts";
import type { RangeFits } from "../../src/grading/range-result.ts";

export interface StripWishes {
  /** Rows of each size's strip, at one millimetre a row. */
  readonly rows?: Readonly<Record<string, number>>;
  readonly share?: readonly string[];
  /** Laid over the file's top keys. */
  readonly more?: object;
  /** Laid over what is said of each size. */
  readonly sizes?: Readonly<Record<string, object>>;
}

/**
 * A strip in two sizes with a crossed cord; a stitch is 2 mm wide, a row 1 mm high, a cord stitch 1 mm long. Interval
 * 3 or 4 and spread 2, so that a repeat takes 6 rows or 8.
 */
export function stripFile({ rows = { S: 30, M: 33 }, share, more, sizes = {} }: StripWishes = {}): string {
  const outline = (height: number): object => ({
    outline: [
      { height: "0 mm", width: "40 mm" },
      { height: `${height} mm`, width: "40 mm" },
    ],
  });
  const names = Object.keys(rows);
  return stringify({
    format: "evenrow/1",
    title: "Strip",
    bed: { needles: 60 },
    gauge: {
      ground: { stitches: 50, rows: 100, over: "100 mm" },
      cord: { needles: 3, stitches: 100, over: "100 mm" },
    },
    pieces: { strip: outline(rows[names[0]!]!) },
    motifs: {
      plait: {
        like: "crossed cord",
        interval: { allow: [3, 4], prefer: 4 },
        spread: { allow: [2], prefer: 2 },
        ease: { from: "-30 %", to: "30 %", prefer: "0 %" },
      },
    },
    place: [{ motif: "plait", on: "strip", margins: { bottom: "0..1", top: "0..1", side: { least: 2 } } }],
    sizes: Object.fromEntries(
      names.map((name) => [name, { pieces: { strip: outline(rows[name]!) }, ...sizes[name] }]),
    ),
    ...(share && { share }),
    ...more,
  });
}

/** A file with sizes that must be sound: a mistake in it is a mistake of the test. */
export function rangeOf(text: string): SizeRange {
  const { range, diagnostics } = readGarment(text, "test.yaml");
  if (!range)
    throw new Error(diagnostics.map(({ message, path }) => `${path.join(".")}: ${message}`).join("\n"));
  return range;
}

/** What fits every size of a file. */
export async function fitsOf(text: string, options: RangeOptions = {}): Promise<RangeFits> {
  const result = await fitRange(rangeOf(text), simplexEngine, options);
  if (result.status !== "fits") throw new Error(result.status);
  return result;
}
