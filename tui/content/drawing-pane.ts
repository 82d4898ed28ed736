import type { Fit } from "../../src/fit/fit.ts";
import type { OpenGarment } from "../state.ts";
import type { Glyphs } from "./glyphs.ts";
import { type Line, line } from "./line.ts";
import { paneTitle } from "./pane-title.ts";

/** The piece drawn to scale with its motif. */
export function drawingPane(
  garment: OpenGarment,
  fit: Fit | undefined,
  width: number,
  height: number,
  glyphs: Glyphs,
): readonly Line[] {
  const { view, reading, solving } = garment;
  const piece = reading.garment?.placements[view.placement]?.piece ?? "";
  const zoom = view.zoom === 0 ? "" : `, ${2 ** view.zoom} times as large`;
  const stale = fit && !solving.current ? ", before the change" : "";
  return [
    paneTitle(`${piece}${zoom}${stale}`, view.pane === "drawing", width, glyphs),
    ...(fit ? drawn(fit, piece, width, height - 1) : [line("")]),
  ];
}

function drawn(fit: Fit, name: string, width: number, height: number): readonly Line[] {
  const piece = fit.pieces.find((one) => one.name === name);
  if (!piece) return [];
  const widest = Math.max(...piece.left) + Math.max(...piece.right);
  return Array.from({ length: height }, (_, index) => {
    const row = Math.round(((height - 1 - index) / (height - 1)) * piece.rows);
    const scale = (width - 2) / widest;
    const left = Math.round((Math.max(...piece.left) - piece.left[row]!) * scale);
    const right = Math.round((Math.max(...piece.left) + piece.right[row]!) * scale);
    return line(`${" ".repeat(left)}|${" ".repeat(Math.max(0, right - left - 1))}|`);
  });
}
