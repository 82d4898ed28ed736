import type { Scene } from "../scene.ts";
import type { Cell } from "./runs.ts";
import type { Window } from "./window.ts";

/** Terminal rows from one hanging to the next from which there is room to show them. */
const leastRows = 3;

/** Puts a ring at each hanging, and its count beside it where nothing else is drawn. */
export function pinsOn(grid: Cell[][], scene: Scene, view: Window): void {
  const rowsApart = scene.strands.flatMap(({ hangings }) =>
    hangings.slice(1).map(({ row }, index) => row - hangings[index]!.row),
  );
  if (Math.min(...rowsApart) * view.rowsPerRow < leastRows) return;
  const { across, down } = view.glyphs.dots;
  const at = (column: number, row: number): Cell | undefined => grid[row]?.[column];
  for (const { hangings, order } of scene.strands)
    hangings.forEach((hanging, index) => {
      const dot = view.toDot(hanging);
      const column = Math.floor(Math.round(dot.x) / across);
      const row = Math.floor(Math.round(dot.y) / down);
      if (!at(column, row)) return;
      grid[row]![column] = { character: "o", role: "strand", strand: order };
      if (hanging.count === 0) return;
      const text = String(hanging.count);
      const before = hangings[index - 1] ?? hanging;
      const away = Math.sign(dot.x - view.toDot(before).x) || 1;
      const start = away > 0 ? column + 1 : column - text.length;
      const cells = [...text].map((_, place) => at(start + place, row));
      if (!cells.every((cell) => cell && cell.role !== "strand" && cell.role !== "outline")) return;
      [...text].forEach((character, place) => {
        grid[row]![start + place] = { character, role: "strand", strand: order };
      });
    });
}
