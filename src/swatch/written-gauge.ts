import { EditError } from "../edit/edit-error.ts";
import type { EditTable } from "../edit/edit-value.ts";
import { withRemark } from "../edit/remark.ts";
import { removeValue, setValue } from "../edit/set-value.ts";
import { gaugeWithin } from "../garment/read/limits.ts";
import { roundTo, roundUpTo } from "../report/rounding.ts";
import type { Pooled } from "./pool.ts";
import type { CordReading, GroundReading, SwatchGauge } from "./swatch-gauge.ts";

/**
 * How far off a count may be as a garment file says it: rounded up to a tenth of a percent.
 *
 * @throws EditError where it is further off than a garment file may say
 */
function writtenWithin({ within }: Pooled): string {
  if (roundUpTo(within, 3) > gaugeWithin.most)
    throw new EditError(
      `a gauge that may be off by ${roundUpTo(within * 100, 0)} % is none to write into a file`,
    );
  return `${roundUpTo(within * 100, 1)} %`;
}

/** All that was counted, and the length it was counted over; sums of decimals lose their last digits. */
const writtenCount = ({ counted }: Pooled): number => roundTo(counted.count, 6);
const writtenLength = ({ counted }: Pooled): string => `${roundTo(counted.mm / 10, 6)} cm`;

/** The ground's gauge as a garment file has it: what was counted, so that the file knows how large the swatch was. */
function writtenGround({ stitches, rows }: GroundReading): EditTable {
  const [across, up] = [writtenWithin(stitches), writtenWithin(rows)];
  return {
    stitches: writtenCount(stitches),
    rows: writtenCount(rows),
    over: writtenLength(stitches),
    ...(writtenLength(rows) !== writtenLength(stitches) && { "rows over": writtenLength(rows) }),
    within: across === up ? across : { stitches: across, rows: up },
  };
}

/** The cord's gauge as a garment file has it; `needles` only where they were said. */
const writtenCord = ({ stitches, needles }: CordReading): EditTable => ({
  ...(needles !== undefined && { needles }),
  stitches: writtenCount(stitches),
  over: writtenLength(stitches),
  within: writtenWithin(stitches),
});

/**
 * The text of a garment file with the gauge written into it, and a remark whether it was washed; what the gauge does not
 * say (a cord's thickness, comments, the order of keys) stays.
 *
 * @throws EditError where the text cannot be changed there without changing something else
 */
export function withGauge(text: string, { ground, cord }: SwatchGauge): string {
  const withGround = ground ? groundInto(text, ground) : text;
  return cord ? cordInto(withGround, cord) : withGround;
}

const groundPath = ["gauge", "ground"];
const cordPath = ["gauge", "cord"];

/** A length for the rows alone goes where these rows were counted over that of the stitches. */
function groundInto(text: string, ground: GroundReading): string {
  const table = writtenGround(ground);
  const set = withKeys(text, groundPath, table);
  const written = "rows over" in table ? set : removeValue(set, [...groundPath, "rows over"]);
  return washedOrNot(written, groundPath, ground.washed);
}

const cordInto = (text: string, cord: CordReading): string =>
  washedOrNot(withKeys(text, cordPath, writtenCord(cord)), cordPath, cord.washed);

const remarks = {
  washed: "Measured washed.",
  unwashed: "Measured unwashed: wash and rest it as the garment will be, and measure again.",
};

const washedOrNot = (text: string, path: readonly string[], washed: boolean): string =>
  withRemark(text, path, washed ? remarks.washed : remarks.unwashed, Object.values(remarks));

const withKeys = (text: string, path: readonly string[], table: EditTable): string =>
  Object.entries(table).reduce((now, [key, value]) => setValue(now, [...path, key], value), text);
