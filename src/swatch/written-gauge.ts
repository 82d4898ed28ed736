import { EditError } from "../edit/edit-error.ts";
import type { EditTable } from "../edit/edit-value.ts";
import { setValue } from "../edit/set-value.ts";
import { parseText } from "../edit/source-text.ts";
import { valueAt } from "../edit/values.ts";
import { gaugeWithin } from "../garment/read/limits.ts";
import { roundTo, roundUpTo } from "../report/rounding.ts";
import type { Pooled } from "./pool.ts";
import type { CordReading, GroundReading, SwatchGauge } from "./swatch-gauge.ts";

/** The length that counts are written over in a garment file. */
const overMm = 100;
const over = "10 cm";

/** Two decimals over 10 cm are far finer than any swatch is known. */
const countOver10 = ({ perMm }: Pooled): number => roundTo(perMm * overMm, 2);

/**
 * How far off counts may be as a garment file says it: the widest of them, with what writing two decimals loses, rounded
 * up to a tenth of a percent.
 *
 * @throws EditError where they are further off than a garment file may say
 */
function writtenWithin(counts: readonly Pooled[]): string {
  const within = Math.max(...counts.map(withinAsWritten));
  if (roundUpTo(within, 3) > gaugeWithin.most)
    throw new EditError(
      `a gauge that may be off by ${roundUpTo(within * 100, 0)} % is none to write into a file`,
    );
  return `${roundUpTo(within * 100, 1)} %`;
}

const withinAsWritten = (one: Pooled): number =>
  one.within + Math.abs(countOver10(one) / (one.perMm * overMm) - 1);

/** The ground's gauge as a garment file has it, which knows one `within` for stitches and rows. */
const writtenGround = ({ stitches, rows }: GroundReading): EditTable => ({
  stitches: countOver10(stitches),
  rows: countOver10(rows),
  over,
  within: writtenWithin([stitches, rows]),
});

/** The cord's gauge as a garment file has it; `needles` only where they were said. */
const writtenCord = ({ stitches, needles }: CordReading): EditTable => ({
  ...(needles !== undefined && { needles }),
  stitches: countOver10(stitches),
  over,
  within: writtenWithin([stitches]),
});

/**
 * The text of a garment file with the gauge written into it; what the gauge does not say (a cord's thickness, comments,
 * the order of keys) stays.
 *
 * @throws EditError where the text cannot be changed there without changing something else
 */
export function withGauge(text: string, { ground, cord }: SwatchGauge): string {
  const withGround = ground ? groundInto(text, ground) : text;
  return cord ? withKeys(withGround, ["gauge", "cord"], writtenCord(cord)) : withGround;
}

/** Stitches and rows are told for one length, so a length for the rows alone that is written already becomes the same. */
function groundInto(text: string, ground: GroundReading): string {
  const path = ["gauge", "ground"];
  const written = valueAt(parseText(text).values, path);
  const apart = written instanceof Map && written.has("rows over");
  return withKeys(text, path, { ...writtenGround(ground), ...(apart && { "rows over": over }) });
}

const withKeys = (text: string, path: readonly string[], table: EditTable): string =>
  Object.entries(table).reduce((now, [key, value]) => setValue(now, [...path, key], value), text);
