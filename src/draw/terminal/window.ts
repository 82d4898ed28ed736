import stringWidth from "string-width";
import { printable } from "../../diagnostics/shown.ts";
import type { ClothPoint } from "../scene/place.ts";
import type { Scene } from "../scene.ts";
import type { Sight } from "../view.ts";
import type { Glyphs } from "./glyph-sets.ts";
import type { Layers, Scroll, TerminalOptions } from "./options.ts";

/** The part of a terminal that is drawn on, and how cloth comes to lie on its dots. */
export interface Window {
  /** Cells drawn on. */
  readonly columns: number;
  readonly rows: number;
  /** Columns left of them for row numbers. */
  readonly gutter: number;
  /** Columns right of them for row numbers. */
  readonly gutterRight: number;
  /** Columns right of those for the names of marks. */
  readonly labels: number;
  /** Whether needle names stand below. */
  readonly names: boolean;
  readonly glyphs: Glyphs;
  readonly sight: Sight;
  readonly scroll: Scroll;
  readonly toDot: (point: ClothPoint) => Dot;
  readonly toCloth: (dot: Dot) => ClothPoint;
  /** Terminal rows for one knitted row. */
  readonly rowsPerRow: number;
  /** Columns for one needle. */
  readonly columnsPerNeedle: number;
}

/** A place counted in dots from the top left; whole numbers are the middles of dots. */
export interface Dot {
  readonly x: number;
  readonly y: number;
}

/** A terminal's cell is about twice as high as it is wide. */
const cellHeight = 2;

const leastColumnsWithLabels = 40;
const leastColumnsWithNumbers = 24;
const leastRowsWithNames = 8;

export function windowFor(
  scene: Scene,
  sight: Sight,
  glyphs: Glyphs,
  options: TerminalOptions,
  layers: Layers,
): Window {
  const { columns, zoom = 1 } = options;
  const numbers = String(scene.rows).length + 2;
  const gutter = layers.rowNumbers && columns >= leastColumnsWithNumbers ? numbers : 0;
  const gutterRight = layers.rowNumbersAtRight && columns >= leastColumnsWithLabels ? numbers : 0;
  const labels = layers.marks && columns >= leastColumnsWithLabels ? labelColumns(scene, columns) : 0;
  const names = layers.needleNames && options.rows >= leastRowsWithNames;
  const room = {
    across: Math.max(1, columns - gutter - gutterRight - labels) * glyphs.dots.across,
    down: Math.max(1, options.rows - (names ? 1 : 0)) * glyphs.dots.down,
  };
  const { widthMm, heightMm } = scene.stitch;
  const [left, right] = sightedEdges(scene, sight);
  const [wide, high] = [(right - left) * widthMm, scene.rows * heightMm];
  const dotShape = (cellHeight * glyphs.dots.across) / glyphs.dots.down;
  const acrossMm =
    Math.max(wide / Math.max(1, room.across - 1), high / dotShape / Math.max(1, room.down - 1)) / zoom;
  const downMm = acrossMm * dotShape;
  const cellsFor = (lengthMm: number, dotMm: number, dots: number): number =>
    Math.ceil((lengthMm / dotMm + 1) / dots - 1e-9);
  const drawn = {
    columns: Math.min(room.across / glyphs.dots.across, cellsFor(wide, acrossMm, glyphs.dots.across)),
    rows: Math.min(room.down / glyphs.dots.down, cellsFor(high, downMm, glyphs.dots.down)),
  };
  const view = {
    wide: (drawn.columns * glyphs.dots.across - 1) * acrossMm,
    high: (drawn.rows * glyphs.dots.down - 1) * downMm,
  };
  const across = heldWithin((options.scroll?.across ?? 0) * view.wide, (wide - view.wide) / 2);
  const up = heldWithin((options.scroll?.up ?? 0) * view.high, (high - view.high) / 2);
  const leftMm = ((left + right) / 2) * widthMm + across - view.wide / 2;
  // What is left over where the piece is not as high as whole cells lies above it.
  const topMm = view.high >= high ? view.high : high / 2 + up + view.high / 2;
  return {
    ...drawn,
    gutter,
    gutterRight,
    labels,
    names,
    glyphs,
    sight,
    scroll: { across: across / view.wide, up: view.high === 0 ? 0 : up / view.high },
    toDot: ({ xMm, yMm }) => ({ x: (sight.sign * xMm - leftMm) / acrossMm, y: (topMm - yMm) / downMm }),
    toCloth: ({ x, y }) => ({ xMm: sight.sign * (leftMm + x * acrossMm), yMm: topMm - y * downMm }),
    rowsPerRow: heightMm / downMm / glyphs.dots.down,
    columnsPerNeedle: widthMm / acrossMm / glyphs.dots.across,
  };
}

function sightedEdges({ widest }: Scene, { mirrored }: Sight): readonly [left: number, right: number] {
  return mirrored ? [-widest.to, -widest.from] : [widest.from, widest.to];
}

const heldWithin = (value: number, most: number): number =>
  most <= 0 ? 0 : Math.max(-most, Math.min(most, value));

/** At most a third of the width goes to names. */
const labelColumns = ({ marks }: Scene, columns: number): number =>
  Math.min(
    1 + Math.max(0, ...marks.map(({ name }) => stringWidth(printable(name)))),
    Math.floor(columns / 3),
  );
