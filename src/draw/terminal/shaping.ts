import type { ShapingEvent } from "../scene/shaping.ts";
import type { Scene } from "../scene.ts";
import { sideInSight } from "../view.ts";
import { terminalColumn, terminalRow } from "./place.ts";
import type { Cell } from "./runs.ts";
import type { Window } from "./window.ts";
import { writeOn } from "./writing.ts";

/**
 * "+1" and "-1" beside the edge where stitches come and go, just inside of it; steps that share a terminal row stand
 * one after another. Casting on and binding off a whole block is told by its marks.
 */
export function shapingOn(grid: Cell[][], scene: Scene, view: Window): void {
  for (const events of besideOneAnother(scene, view)) {
    const words = events.map(stepWords).join("");
    const [first] = events;
    // The row that shows the change is the next one.
    const row = terminalRow(first!.row + 0.5, scene, view);
    if (row === undefined) continue;
    if (first!.side === undefined) writeAbove(grid, row, middleOf(first!, scene, view), words);
    else writeBeside(grid, row, edgeColumn(events.at(-1)!, scene, view), inward(first!, view), words);
  }
}

/** Which half above a neck is knitted first, below the end of each. */
export function halvesOn(grid: Cell[][], scene: Scene, view: Window): void {
  const [left, right] = scene.cells.at(-1) ?? [];
  const top = terminalRow(scene.rows, scene, view);
  if (!scene.neck || !left || !right || top === undefined) return;
  for (const [half, { from, to }] of [["left", left] as const, ["right", right] as const]) {
    const words = half === scene.neck.firstHalf ? "first half" : "second half";
    const start = terminalColumn((from + to) / 2, scene, view) - Math.floor(words.length / 2);
    for (let row = top + 1; row <= top + furthestDown; row++) if (writeOn(grid, row, start, words)) break;
  }
}

/** Terminal rows below the end of a half in which there may be room for its name. */
const furthestDown = 4;

const stepWords = ({ kind, needles }: ShapingEvent): string =>
  `${kind === "increase" || kind === "cast-on" ? "+" : "-"}${needles}`;

/** Shaping at an edge or at the bottom of a neck, together with what happens at the same edge in the same terminal row. */
function besideOneAnother(scene: Scene, view: Window): readonly (readonly ShapingEvent[])[] {
  const together = new Map<string, ShapingEvent[]>();
  for (const event of scene.shaping) {
    if (event.side === undefined && event.edge === "outer") continue;
    const key = [event.edge, event.side, terminalRow(event.row + 0.5, scene, view)].join();
    together.set(key, [...(together.get(key) ?? []), event]);
  }
  return [...together.values()];
}

/** Towards the cloth from its end at the event's side. */
const inward = ({ side }: ShapingEvent, view: Window): 1 | -1 =>
  sideInSight(side!, view.sight) === "left" ? 1 : -1;

/** The column of the edge once the event is done. */
function edgeColumn(event: ShapingEvent, scene: Scene, view: Window): number {
  const grows = event.kind === "increase" || event.kind === "cast-on";
  const outer = event.side === "left" ? event.from : event.to;
  const inner = event.side === "left" ? event.to : event.from;
  return terminalColumn(grows ? outer : inner, scene, view);
}

/** The stairs of an edge take a few columns; further in there is room unless the cloth is very narrow. */
const furthestIn = 12;

function writeBeside(grid: Cell[][], row: number, edge: number, towards: 1 | -1, words: string): void {
  for (let away = 1; away <= furthestIn; away++) {
    const start = towards === 1 ? edge + away : edge - away - words.length + 1;
    if (writeOn(grid, row, start, words)) return;
  }
}

const middleOf = ({ from, to }: ShapingEvent, scene: Scene, view: Window): number =>
  terminalColumn((from + to) / 2, scene, view);

function writeAbove(grid: Cell[][], row: number, middle: number, words: string): void {
  const start = middle - Math.floor(words.length / 2);
  for (const at of [row, row - 1]) if (writeOn(grid, at, start, words)) return;
}
