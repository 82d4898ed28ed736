import type { BlockTrace, CableTrace, Point, Trace } from "./trace.ts";

/**
 * A motif as a mirror shows it: needles negated, a cable's groups and which of them lies over changed about. Names,
 * rows, order of work and what lies over what stay.
 */
export const mirrored = (trace: Trace): Trace => ({
  ...trace,
  reach: { ...trace.reach, left: trace.reach.right, right: trace.reach.left },
  strands: trace.strands.map(mirroredBlocks),
  cables: trace.cables.map(mirroredCable),
  ladders: trace.ladders.map(({ needle, onto }) => ({ needle: 0 - needle, onto: 0 - onto })),
});

const mirroredCable = (cable: CableTrace): CableTrace => ({
  ...mirroredBlocks(cable),
  left: cable.right,
  right: cable.left,
});

function mirroredBlocks<Blocks extends BlockTrace>(blocks: Blocks): Blocks {
  return {
    ...blocks,
    start: mirroredPoint(blocks.start),
    leadIn: blocks.leadIn.map(mirroredPoint),
    repeat: blocks.repeat.map(mirroredPoint),
  };
}

// Taken from 0, because the middle of a crossing may stand at boundary 0, which has no other sign.
const mirroredPoint = ({ needle, over, ...point }: Point): Point => ({
  ...point,
  needle: 0 - needle,
  ...(over && { over: over === "left" ? "right" : "left" }),
});
