import { position } from "../../cloth/bed.ts";
import type { SceneHanging, SceneStrand } from "../scene/strands.ts";
import { cordPixels } from "./cord-width.ts";
import type { Markup } from "./element.ts";
import type { Paper } from "./paper.ts";
import { label, textWidth } from "./text.ts";

/** The count beside each hanging of a strand; a first hanging has none. */
export function countsOf(paper: Paper, strand: SceneStrand): readonly Markup[] {
  const size = countSize(paper, strand);
  return strand.hangings.flatMap((hanging, index) => {
    if (hanging.count === 0) return [];
    const { x, y } = paper.at(hanging);
    const away = awaySide(strand.hangings, index);
    // The last row may carry a bind-off, which is drawn along its line.
    const last = index === strand.hangings.length - 1;
    const style = { size, bold: true, halo: true, class: "count" };
    const text = String(hanging.count);
    if (isCrowded(paper, hanging, away, size))
      return [label(text, { x, y: y + (last ? 1 : -1) * size }, { ...style, anchor: "middle" })];
    const outward = paper.sight.sign * away;
    const before = strand.hangings[index - 1];
    const room = before ? paper.at(before).y - y - size : 0;
    const lower = last ? Math.max(0, Math.min(0.75 * size, room)) : 0;
    const at = { x: x + outward * besidePixels(paper), y: y + lower };
    return [label(text, at, { ...style, anchor: outward < 0 ? "end" : "start" })];
  });
}

/** From a hanging to the near end of its count. */
const besidePixels = (paper: Paper): number => cordPixels(paper) / 2 + 0.25 * paper.cell.width;

/** Whether another hanging of the same row stands where the count would, or its count would meet this one. */
function isCrowded(paper: Paper, { needle, row, count }: SceneHanging, away: -1 | 1, size: number): boolean {
  const room = (of: number): number => besidePixels(paper) + textWidth(String(of), size);
  return paper.scene.strands.some(({ hangings }) =>
    hangings.some((other) => {
      const apart = away * (position(other.needle) - position(needle)) * paper.cell.width;
      return other.row === row && apart > 0 && apart <= room(count) + room(other.count);
    }),
  );
}

/** Usual text where there is room to the next hanging, smaller where columns stand so close that counts would touch. */
function countSize(paper: Paper, { hangings }: SceneStrand): number {
  const { cell, text } = paper;
  const rows = Math.min(...hangings.slice(1).map(({ row }, index) => row - hangings[index]!.row));
  const usual = Math.min(text, Math.max(0.75 * text, 0.8 * rows * cell.height));
  const close = hangings.some(
    (hanging, index) => hanging.count > 0 && isCrowded(paper, hanging, awaySide(hangings, index), usual),
  );
  return close ? Math.min(text, Math.max(0.62 * text, 0.95 * cell.height)) : usual;
}

/** The side on which a hanging's count stands free: away from where the strand comes from and goes to. */
function awaySide(hangings: readonly SceneHanging[], index: number): -1 | 1 {
  const here = position(hangings[index]!.needle);
  const neighbours = [hangings[index - 1], hangings[index + 1]].filter((one) => one !== undefined);
  const pull = neighbours.reduce((sum, { needle }) => sum + position(needle) - here, 0);
  if (pull !== 0) return pull > 0 ? -1 : 1;
  return here < 0 ? -1 : 1;
}
