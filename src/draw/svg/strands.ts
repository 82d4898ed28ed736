import type { SceneHanging, SceneStrand, StrandCrossing } from "../scene/strands.ts";
import { cordPixels } from "./cord-width.ts";
import { countsOf } from "./counts.ts";
import { element, group, type Markup, type Pixel, pointList, rounded } from "./element.ts";
import { ink } from "./ink.ts";
import type { Paper } from "./paper.ts";

/** Strands with what lies over drawn whole and what lies under broken beside it, then the hangings with their counts. */
export function strandsMarkup(paper: Paper): readonly Markup[] {
  const { scene } = paper;
  return [
    group(
      { class: "folds" },
      scene.strands.flatMap((strand, index) => foldOf(paper, strand, index)),
    ),
    group(
      { class: "strands" },
      scene.strands.flatMap((strand) => strandLines(paper, strand)),
    ),
    group(
      { class: "crossings" },
      scene.crossings.flatMap((crossing) => overAgain(paper, crossing)),
    ),
    group(
      { class: "hangings" },
      scene.strands.flatMap((strand) => strand.hangings.map((hanging) => pin(paper, strand, hanging))),
    ),
    group(
      { class: "counts" },
      scene.strands.flatMap((strand) => countsOf(paper, strand)),
    ),
  ];
}

const rim = 1;

const nameOf = ({ placement, column, name }: SceneStrand): string => `${placement}/${column}/${name}`;

function strandLines(paper: Paper, strand: SceneStrand): readonly Markup[] {
  const points = pointList(strand.line.map(paper.at));
  const width = cordPixels(paper);
  return tube({ points, "stroke-linejoin": "round", fill: "none" }, "polyline", width, strand.order, {
    class: "strand",
    "data-strand": nameOf(strand),
  });
}

/** A tube seen from above: a dark rim, a light or shaded core, and from the third strand on a line along its middle. */
export function tube(
  shape: Record<string, string | number>,
  element_: "polyline" | "line",
  width: number,
  order: number,
  named: Record<string, string> = {},
): readonly Markup[] {
  const core = order % 2 === 0 ? ink.white : ink.shade;
  return [
    element(element_, { ...named, ...shape, stroke: ink.black, "stroke-width": width }),
    element(element_, { ...shape, stroke: core, "stroke-width": Math.max(0.8, width - 2 * rim) }),
    ...middleLine(order).map((dashes) =>
      element(element_, { ...shape, stroke: ink.black, "stroke-width": 0.8, ...dashes }),
    ),
  ];
}

/** Two strands have none, the next two dashes, then dots, then a whole line; after eight the looks come round again. */
function middleLine(order: number): readonly Record<string, string>[] {
  const dashes = [undefined, "3 2", "0.8 2.4", ""][Math.floor(order / 2) % 4];
  if (dashes === undefined) return [];
  return [dashes === "" ? {} : { "stroke-dasharray": dashes }];
}

/** Two arms of one cord begin at its middle, which lies between their first needles. */
function foldOf(paper: Paper, strand: SceneStrand, index: number): readonly Markup[] {
  const other = strand.foldedWith === undefined ? undefined : paper.scene.strands[strand.foldedWith];
  if (!other || strand.foldedWith! < index) return [];
  const points = pointList([strand.hangings[0]!, other.hangings[0]!].map(paper.at));
  return tube({ points, fill: "none" }, "polyline", cordPixels(paper), strand.order);
}

/** White on both sides of a strand where it crosses over another, and the strand once more on top. */
function overAgain(paper: Paper, crossing: StrandCrossing): readonly Markup[] {
  const { scene } = paper;
  const over = scene.strands[crossing.over]!;
  const under = scene.strands[crossing.under]!;
  const middle = paper.at(crossing);
  const [from, to] = partOf(paper, over, crossing.overFrom);
  const along = unit(from, to);
  const across = unit(...partOf(paper, under, crossing.underFrom));
  const sine = Math.max(0.2, Math.abs(along.x * across.y - along.y * across.x));
  const width = cordPixels(paper);
  const reach = (width / 2 + gapPixels(width)) / sine;
  const before = Math.min(reach, distance(from, middle));
  const after = Math.min(reach, distance(middle, to));
  const shape = {
    x1: middle.x - before * along.x,
    y1: middle.y - before * along.y,
    x2: middle.x + after * along.x,
    y2: middle.y + after * along.y,
  };
  return [
    element("line", { ...shape, stroke: ink.white, "stroke-width": width + 2 * gapPixels(width) }),
    ...tube(longer(shape, along, 0.6), "line", width, over.order, {
      class: "over",
      "data-over": nameOf(over),
      "data-under": nameOf(under),
    }),
  ];
}

const gapPixels = (width: number): number => Math.max(1.2, 0.3 * width);

/** A little over both ends, so that no hair of white shows where the strand goes on. */
const longer = (
  { x1, y1, x2, y2 }: { x1: number; y1: number; x2: number; y2: number },
  along: Pixel,
  by: number,
) => ({ x1: x1 - by * along.x, y1: y1 - by * along.y, x2: x2 + by * along.x, y2: y2 + by * along.y });

const partOf = (paper: Paper, { hangings }: SceneStrand, from: number): [Pixel, Pixel] => [
  paper.at(hangings[from]!),
  paper.at(hangings[from + 1]!),
];

const distance = (one: Pixel, other: Pixel): number => Math.hypot(other.x - one.x, other.y - one.y);

function unit(from: Pixel, to: Pixel): Pixel {
  const length = distance(from, to) || 1;
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}

/** A dot where the strand is hung, a square where it ends. */
function pin(paper: Paper, strand: SceneStrand, hanging: SceneHanging): Markup {
  const { x, y } = paper.at(hanging);
  const size = pinPixels(paper);
  const named = { class: "hanging", "data-strand": nameOf(strand), "data-needle": hanging.needle };
  return hanging === strand.hangings.at(-1) ? square({ x, y }, size, named) : dot({ x, y }, size, named);
}

const pinPixels = (paper: Paper): number =>
  Math.max(1.5, Math.min(0.3 * Math.min(paper.cell.width, paper.cell.height), 0.36 * cordPixels(paper)));

export const dot = ({ x, y }: Pixel, size: number, named: Record<string, string | number> = {}): Markup =>
  element("circle", { ...named, cx: x, cy: y, r: size, fill: ink.black });

export const square = ({ x, y }: Pixel, size: number, named: Record<string, string | number> = {}): Markup =>
  element("rect", {
    ...named,
    x: rounded(x - 1.25 * size),
    y: rounded(y - 1.25 * size),
    width: 2.5 * size,
    height: 2.5 * size,
    fill: ink.black,
  });
