import type { Fit } from "../fit.ts";
import { type Breach, breach } from "./breach.ts";

/** No two placements of a piece on the same rows and needles. */
export function checkMeetings(fit: Fit): readonly Breach[] {
  return fit.placements.flatMap((one, index) =>
    fit.placements
      .slice(index + 1)
      .filter(
        (other) =>
          other.piece === one.piece &&
          one.firstRow <= other.lastRow &&
          other.firstRow <= one.lastRow &&
          one.panel.leftEdge < other.panel.rightEdge &&
          other.panel.leftEdge < one.panel.rightEdge,
      )
      .map((other) => breach(one.piece, `${one.motif} and ${other.motif} lie on the same needles and rows`)),
  );
}
