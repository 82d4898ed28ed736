import type { Scene } from "../scene.ts";
import type { Window } from "./window.ts";

/** The terminal row in which a height of so many knitted rows lies, if it is in view. */
export function terminalRow(row: number, scene: Scene, view: Window): number | undefined {
  const { y } = view.toDot({ xMm: 0, yMm: row * scene.stitch.heightMm });
  const at = Math.floor(Math.round(y) / view.glyphs.dots.down);
  return at >= 0 && at < view.rows ? at : undefined;
}

/** The terminal column in which a boundary between needles lies; it may be out of view. */
export function terminalColumn(boundary: number, scene: Scene, view: Window): number {
  const { x } = view.toDot({ xMm: boundary * scene.stitch.widthMm, yMm: 0 });
  return Math.floor(Math.round(x) / view.glyphs.dots.across);
}
