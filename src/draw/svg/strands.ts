import { position } from "../../cloth/bed.ts";
import type { SceneHanging, SceneStrand, StrandCrossing } from "../scene/strands.ts";
import { element, group, type Markup, type Pixel, pointList, rounded } from "./element.ts";
import { ink } from "./ink.ts";
import type { Paper } from "./paper.ts";
import { label } from "./text.ts";

/** How wide a cord is drawn, as a share of a stitch's width; a thicker one would hide the cells it is hung on. */
const widest = 0.8;
const narrowest = 0.4;
/** Below this a strand's shade could no longer be seen between its rims. */
const leastPixels = 3.6;

export function cordPixels({ scene, cell }: Paper): number {
  const { widthMm } = scene.stitch;
  const share = (scene.gauge.cord?.thicknessMm ?? 0.6 * widthMm) / widthMm;
  return Math.max(leastPixels, Math.max(narrowest, Math.min(widest, share)) * cell.width);
}

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
      scene.strands.flatMap((strand) => counts(paper, strand)),
    ),
  ];
}

const rim = 1;

const nameOf = ({ placement, column, name }: SceneStrand): string => `${placement}/${column}/${name}`;

function strandLines(paper: Paper, strand: SceneStrand): readonly Markup[] {
  const points = pointList(strand.hangings.map(paper.at));
  const width = cordPixels(paper);
  return tube({ points, "stroke-linejoin": "round", fill: "none" }, "polyline", width, strand.order, {
    class: "strand",
    "data-strand": nameOf(strand),
  });
}

/** A tube seen from above: a dark rim, a light core, and for every third strand and later a line along its middle. */
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
    ...(order >= 2
      ? [element(element_, { ...shape, stroke: ink.black, "stroke-width": 0.8, "stroke-dasharray": "3 2" })]
      : []),
  ];
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

export const pinPixels = (paper: Paper): number =>
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

function counts(paper: Paper, strand: SceneStrand): readonly Markup[] {
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
