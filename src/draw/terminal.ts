import type { Scene } from "./scene.ts";
import { composeCells } from "./terminal/compose.ts";
import { glyphSets } from "./terminal/glyph-sets.ts";
import { pinsOn } from "./terminal/hangings.ts";
import { inksFor } from "./terminal/inks.ts";
import { bottomNames, gutterNumbers, markLabels } from "./terminal/labels.ts";
import { marginsOn } from "./terminal/margins.ts";
import type { Layers, Scroll, TerminalOptions } from "./terminal/options.ts";
import { type Run, runsOf, textOf } from "./terminal/runs.ts";
import { halvesOn, shapingOn } from "./terminal/shaping.ts";
import { windowFor } from "./terminal/window.ts";
import { sightOf } from "./view.ts";

export type { Role } from "./terminal/runs.ts";

export interface TerminalDrawing {
  /** As many lines as there are rows, each of at most so many columns. */
  readonly lines: readonly string[];
  /** The same lines cut where the role changes, so that a caller can colour them. */
  readonly runs: readonly (readonly Run[])[];
  /** The scroll that was used: one beyond the piece's end is held at the end. */
  readonly scroll: Scroll;
}

/** The layers of a screen, which tells shaping and margins in panes of their own. */
const ofScreen: Layers = {
  unreachable: true,
  panels: true,
  marks: true,
  motif: true,
  hangings: true,
  rowNumbers: true,
  needleNames: true,
  rowNumbersAtRight: false,
  shaping: false,
  margins: false,
};

/** The layers of a chart. */
export const everything: Layers = { ...ofScreen, rowNumbersAtRight: true, shaping: true, margins: true };

/**
 * A piece drawn to scale with characters, a terminal's cell taken to be twice as high as wide. Where two strands
 * cross, the one that lies under is broken beside the one over it, as far as the size of the drawing allows.
 */
export function drawInTerminal(scene: Scene, options: TerminalOptions): TerminalDrawing {
  const layers = { ...ofScreen, ...options.layers };
  const sight = sightOf(scene, options.view ?? "knitter");
  const glyphs = glyphSets[options.glyphs];
  const view = windowFor(scene, sight, glyphs, options, layers);
  const grid = composeCells(view, glyphs, inksFor(scene, sight, view, layers));
  if (layers.motif && layers.hangings) pinsOn(grid, scene, view);
  if (layers.shaping) {
    shapingOn(grid, scene, view);
    halvesOn(grid, scene, view);
  }
  if (layers.margins) marginsOn(grid, scene, view);
  const numbers = gutterNumbers(scene, view);
  const labels = layers.marks ? markLabels(scene, view, glyphs) : new Map<number, string>();
  const runs: Run[][] = grid.map((cells, row) => [
    ...asLabel(view.gutter, (numbers.get(row) ?? "").padStart(view.gutter - 1).padEnd(view.gutter)),
    ...runsOf(cells),
    ...asLabel(view.gutterRight, ` ${(numbers.get(row) ?? "").padStart(view.gutterRight - 1)}`),
    ...(labels.has(row) ? asLabel(view.labels, ` ${labels.get(row)!}`) : []),
  ]);
  if (view.names) runs.push([{ text: " ".repeat(view.gutter) + bottomNames(scene, view), role: "label" }]);
  while (runs.length < options.rows) runs.push([]);
  return { lines: runs.map(textOf), runs, scroll: view.scroll };
}

const asLabel = (columns: number, text: string): readonly Run[] =>
  columns > 0 ? [{ text, role: "label" }] : [];

/** How many lines a chart takes that is so many columns wide and shows the whole piece. */
export function rowsForWidth(
  scene: Scene,
  options: Pick<TerminalOptions, "columns" | "glyphs">,
  most: number,
): number {
  const sight = sightOf(scene, "knitter");
  const view = windowFor(scene, sight, glyphSets[options.glyphs], { ...options, rows: most }, everything);
  return view.rows + (view.names ? 1 : 0);
}
