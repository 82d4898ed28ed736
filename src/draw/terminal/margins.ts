import type { Side } from "../../garment/garment.ts";
import { counted } from "../../report/words.ts";
import type { SceneField } from "../scene/fields.ts";
import type { Scene } from "../scene.ts";
import { sideInSight } from "../view.ts";
import { terminalColumn, terminalRow } from "./place.ts";
import type { Cell } from "./runs.ts";
import type { Window } from "./window.ts";
import { freeFrom, writeOn } from "./writing.ts";

/** Rows free below and above each motif, and needles free beside it as a line with two ends, where there is room. */
export function marginsOn(grid: Cell[][], scene: Scene, view: Window): void {
  for (const field of scene.fields) {
    rowsFree(grid, scene, view, field, field.fromRow, field.firstRow);
    rowsFree(grid, scene, view, field, field.lastRow, field.toRow);
    for (const side of ["left", "right"] as const) needlesFree(grid, scene, view, field, side);
  }
}

function rowsFree(
  grid: Cell[][],
  scene: Scene,
  view: Window,
  { panel }: SceneField,
  fromRow: number,
  toRow: number,
): void {
  const [row, below, above] = [(fromRow + toRow) / 2, fromRow, toRow].map((at) =>
    terminalRow(at, scene, view),
  );
  if (row === undefined || row === below || row === above) return;
  const words = `${counted(toRow - fromRow, "row")} free`;
  const middle = terminalColumn((panel.from + panel.to) / 2, scene, view);
  writeOn(grid, row, middle - Math.floor(words.length / 2), words);
}

function needlesFree(grid: Cell[][], scene: Scene, view: Window, field: SceneField, side: Side): void {
  const needles = field.margins[side];
  const row = terminalRow(Math.min(scene.rows, field.closest[side].row + 0.5), scene, view);
  if (needles <= 0 || row === undefined) return;
  const towards = sideInSight(side, view.sight) === "left" ? -1 : 1;
  const panelEnd = terminalColumn(field.closest[side].reach, scene, view);
  const start = panelEnd + towards;
  const room = freeFrom(grid, row, start, towards);
  const words = [` ${counted(needles, "needle")} `, ` ${needles} `, String(needles)].find(
    (one) => one.length + leastLine <= room,
  );
  if (words === undefined) return;
  const line = room - 2 - words.length;
  const before = Math.floor(line / 2);
  const written = `<${"-".repeat(before)}${words}${"-".repeat(line - before)}>`;
  writeOn(grid, row, towards === 1 ? start : start - room + 1, written);
}

/** An arrowhead and a dash at each end. */
const leastLine = 4;
