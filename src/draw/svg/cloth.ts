import type { Strip } from "../scene/fields.ts";
import { element, group, type Markup, nothing, pointList, rounded } from "./element.ts";
import { ink } from "./ink.ts";
import type { Paper } from "./paper.ts";

/** Lines closer than this run together and are left out. */
const leastCellPixels = 3.5;

/** The cells, the zone that no motif may reach, and the edge around all of them. */
export function clothMarkup(paper: Paper): Markup {
  const { scene, id } = paper;
  const outline = pointList(scene.outline.map(paper.at));
  return group({ class: "cloth" }, [
    element("clipPath", { id: `${id}-cloth` }, element("polygon", { points: outline })),
    element("polygon", { points: outline, fill: ink.white }),
    group({ "clip-path": `url(#${id}-cloth)` }, gridLines(paper)),
    unreachable(paper),
    element("polygon", {
      class: "outline",
      points: outline,
      fill: "none",
      stroke: ink.black,
      "stroke-width": 1.6,
    }),
  ]);
}

function gridLines({ scene, plot, cell, boundary }: Paper): readonly Markup[] {
  const single: string[] = [];
  const tenth: string[] = [];
  for (let needle = scene.widest.from; needle <= scene.widest.to; needle++) {
    const { x } = boundary(needle, 0);
    (needle % 10 === 0 ? tenth : single).push(`M${rounded(x)} ${rounded(plot.top)}V${rounded(plot.bottom)}`);
  }
  for (let row = 0; row <= scene.rows; row++) {
    const { y } = boundary(0, row);
    (row % 10 === 0 ? tenth : single).push(`M${rounded(plot.left)} ${rounded(y)}H${rounded(plot.right)}`);
  }
  const middle = boundary(0, 0).x;
  const close = Math.min(cell.width, cell.height) < leastCellPixels;
  return [
    close ? nothing : element("path", { d: single.join(""), stroke: ink.faint, "stroke-width": 0.5 }),
    element("path", { d: tenth.join(""), stroke: ink.tenth, "stroke-width": 0.7 }),
    element("path", {
      d: `M${rounded(middle)} ${rounded(plot.top)}V${rounded(plot.bottom)}`,
      stroke: ink.quiet,
      "stroke-width": 1.4,
    }),
  ];
}

function unreachable(paper: Paper): Markup {
  const { scene, id } = paper;
  if (scene.unreachable.length === 0) return nothing;
  const d = joined(scene.unreachable)
    .map(({ from, to, fromRow, toRow }) => {
      const [one, other] = [paper.boundary(from, toRow), paper.boundary(to, fromRow)];
      const [left, right] = [Math.min(one.x, other.x), Math.max(one.x, other.x)];
      return `M${rounded(left)} ${rounded(one.y)}H${rounded(right)}V${rounded(other.y)}H${rounded(left)}Z`;
    })
    .join("");
  return group({ class: "unreachable" }, [
    hatch(`${id}-hatch`),
    element("path", { d, fill: `url(#${id}-hatch)` }),
  ]);
}

export const hatch = (id: string): Markup =>
  element(
    "pattern",
    { id, width: 7, height: 7, patternUnits: "userSpaceOnUse", patternTransform: "rotate(45)" },
    element("line", { x1: 0, y1: 0, x2: 0, y2: 7, stroke: ink.shade, "stroke-width": 1.6 }),
  );

interface Block {
  readonly from: number;
  readonly to: number;
  readonly fromRow: number;
  toRow: number;
}

/** Strips that lie above one another with the same ends, as one. */
function joined(strips: readonly Strip[]): readonly Block[] {
  const open = new Map<string, Block>();
  const blocks: Block[] = [];
  for (const { from, to, row } of strips) {
    const key = `${from} ${to}`;
    const below = open.get(key);
    if (below?.toRow === row - 1) below.toRow = row;
    else {
      const block = { from, to, fromRow: row - 1, toRow: row };
      open.set(key, block);
      blocks.push(block);
    }
  }
  return blocks;
}
