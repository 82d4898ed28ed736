import { position } from "../../cloth/bed.ts";
import type { SceneHanging, SceneStrand } from "../scene/strands.ts";
import { cordPixels } from "./cord-width.ts";
import type { Markup } from "./element.ts";
import type { Paper } from "./paper.ts";
import { label } from "./text.ts";

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
    if (isCrowded(paper, hanging, away))
      return [label(text, { x, y: y + (last ? 1 : -1) * size }, { ...style, anchor: "middle" })];
    const outward = paper.sight.sign * away;
    const beside = cordPixels(paper) / 2 + 0.25 * paper.cell.width;
    const at = { x: x + outward * beside, y: y + (last ? 0.75 * size : 0) };
    return [label(text, at, { ...style, anchor: outward < 0 ? "end" : "start" })];
  });
}

/** Needles beside a hanging that its count takes. */
const needlesForCount = 2;

/** Whether another hanging of the same row stands where the count would. */
const isCrowded = ({ scene }: Paper, { needle, row }: SceneHanging, away: -1 | 1): boolean =>
  scene.strands.some(({ hangings }) =>
    hangings.some((other) => {
      const apart = away * (position(other.needle) - position(needle));
      return other.row === row && apart > 0 && apart <= needlesForCount;
    }),
  );

/** Usual text where there is room to the next hanging, and to the next column where there are several. */
function countSize({ scene, cell, text }: Paper, { hangings }: SceneStrand): number {
  const rows = Math.min(...hangings.slice(1).map(({ row }, index) => row - hangings[index]!.row));
  const several = scene.strands.some(({ column }) => column > 1);
  const room = several ? 0.95 * cell.height : 0.8 * rows * cell.height;
  return Math.min(text, Math.max(0.62 * text, room));
}

/** The side on which a hanging's count stands free: away from where the strand comes from and goes to. */
function awaySide(hangings: readonly SceneHanging[], index: number): -1 | 1 {
  const here = position(hangings[index]!.needle);
  const neighbours = [hangings[index - 1], hangings[index + 1]].filter((one) => one !== undefined);
  const pull = neighbours.reduce((sum, { needle }) => sum + position(needle) - here, 0);
  if (pull !== 0) return pull > 0 ? -1 : 1;
  return here < 0 ? -1 : 1;
}
