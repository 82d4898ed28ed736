import type { GroundGauge } from "../garment/garment.ts";
import { counted, inCentimetres } from "./words.ts";

/** "22 stitches and 31 rows over 10 cm", each with its own length where they were counted over two. */
export function groundWords({ stitches, rows, overMm, rowsCounted }: GroundGauge): string {
  const across = counted(stitches, "stitch", "stitches");
  return rowsCounted
    ? `${across} over ${inCentimetres(overMm)} and ${counted(rowsCounted.rows, "row")} over ${inCentimetres(rowsCounted.overMm)}`
    : `${across} and ${counted(rows, "row")} over ${inCentimetres(overMm)}`;
}
