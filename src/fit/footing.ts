import type { CountedSection } from "../cord/cord.ts";
import type { Reach, Trace } from "../motif/trace.ts";

/** What of a look a layout depends on: looks with the same footing can lie in the same layouts. */
export interface Footing {
  readonly leadRows: number;
  readonly repeatRows: number;
  readonly reach: Reach;
  /** Stitches that one column of the motif crosses, and so draws in. */
  readonly crossedStitches: number;
  /** Tells looks apart that could lie alike, where a motif that is begun can go on with one and not with the other. */
  readonly goingOn?: string;
  /** One of the looks that stand on it, where what is measured of a layout depends on how its cord is counted. */
  readonly counted?: CountedSection["look"];
}

export const footingOf = (trace: Trace): Footing => ({
  leadRows: trace.leadRows,
  repeatRows: trace.repeatRows,
  reach: trace.reach,
  crossedStitches: trace.cables.reduce((sum, { left, right }) => sum + left + right, 0),
});

export const footingKey = ({
  leadRows,
  repeatRows,
  reach,
  crossedStitches,
  goingOn = "",
}: Footing): string => {
  const edge = reach.edge ? ` edge ${reach.edge.left}|${reach.edge.right}` : "";
  return `${leadRows}+${repeatRows}n ${reach.left}|${reach.right}${edge} x${crossedStitches}${goingOn}`;
};
