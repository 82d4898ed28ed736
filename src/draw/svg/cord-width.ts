import type { Paper } from "./paper.ts";

/** How wide a cord is drawn, as a share of a stitch's width; a thicker one would hide the cells it is hung on. */
const widest = 0.8;
const narrowest = 0.4;
/** Below this a strand's shade could no longer be seen between its rims. */
const leastPixels = 3.6;

export function cordPixels({ scene, cell }: Paper): number {
  const { widthMm } = scene.stitch;
  const share = (scene.gauge.cord?.thicknessMm ?? 0.6 * widthMm) / widthMm;
  return Math.max(leastPixels, Math.max(narrowest, Math.min(widest, share)) * cell.width);
}
