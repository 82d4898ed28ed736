import type { Side } from "../../garment/garment.ts";
import type { Span } from "../scene/cloth.ts";
import type { ShapingEvent } from "../scene/shaping.ts";
import { sideInSight } from "../view.ts";
import { element, group, type Markup, type Pixel, pointList } from "./element.ts";
import { ink } from "./ink.ts";
import type { Paper } from "./paper.ts";
import { label, textWidth } from "./text.ts";

/** Increases and decreases as arrowheads at the edge; cast-ons and bind-offs as bars along their needles. */
export const shapingMarkup = (paper: Paper): Markup =>
  group(
    { class: "shaping" },
    paper.scene.shaping.flatMap((event) => eventMarkup(paper, event)),
  );

function eventMarkup(paper: Paper, event: ShapingEvent): readonly Markup[] {
  switch (event.kind) {
    case "increase":
    case "decrease":
      return [arrowAt(paper, event)];
    case "cast-on":
    case "bind-off":
      return barAt(paper, event);
  }
}

/** Needles come or go where the cloth ends: beside its new edge, on the side where nothing is knitted. */
function arrowAt(paper: Paper, event: ShapingEvent): Markup {
  const { cell } = paper;
  const towards = sideInSight(event.side!, paper.sight) === "left" ? -1 : 1;
  const grows = event.kind === "increase";
  const edge = outerEnd(paper, event, towards);
  const size = arrowPixels(paper);
  // Half a row up: the row that shows the change is the next one.
  const at = { x: edge.x + towards * (0.3 * cell.width + size), y: edge.y - cell.height / 2 };
  const named = { class: event.kind, "data-row": event.row, "data-side": event.side! };
  return arrowhead(at, grows ? towards : -towards, size, grows, named);
}

const arrowPixels = ({ cell }: Paper): number => Math.max(1.8, 0.36 * Math.min(cell.width, cell.height));

/** The end of the needles concerned that lies away from the cloth. */
function outerEnd(paper: Paper, event: ShapingEvent, towards: number): Pixel {
  const ends = [paper.boundary(event.from, event.row), paper.boundary(event.to, event.row)];
  return ends.reduce((best, one) => ((one.x - best.x) * towards > 0 ? one : best));
}

/** Filled where a needle is added, empty where one is taken away. */
export function arrowhead(
  { x, y }: Pixel,
  towards: number,
  size: number,
  filled: boolean,
  named: Record<string, string | number> = {},
): Markup {
  const points = [
    { x: x - towards * size, y: y - size },
    { x: x + towards * size, y },
    { x: x - towards * size, y: y + size },
  ];
  return element("polygon", {
    ...named,
    points: pointList(points),
    fill: filled ? ink.black : ink.white,
    stroke: ink.black,
    "stroke-width": 0.9,
  });
}

function barAt(paper: Paper, event: ShapingEvent): readonly Markup[] {
  const ends = [paper.boundary(event.from, event.row), paper.boundary(event.to, event.row)];
  const [left, right] = [Math.min(ends[0]!.x, ends[1]!.x), Math.max(ends[0]!.x, ends[1]!.x)];
  const { y } = ends[0]!;
  const named = { class: event.kind, "data-row": event.row };
  const bar = event.kind === "cast-on" ? castOnBar(left, right, y, named) : bindOffBar(left, right, y, named);
  const whole = event.side === undefined && event.edge === "outer";
  if (whole) return bar;
  const above = y - 0.75 * paper.text;
  const text = label(
    String(event.needles),
    { x: (left + right) / 2, y: above },
    {
      size: paper.text,
      anchor: "middle",
      bold: true,
      halo: true,
      class: "shaping-count",
    },
  );
  return [...bar, text];
}

/** Two thin lines: a new edge. */
export const castOnBar = (
  left: number,
  right: number,
  y: number,
  named: Record<string, string | number> = {},
): readonly Markup[] => {
  const line = { x1: left, x2: right, y1: y, y2: y };
  return [
    element("line", { ...named, ...line, stroke: ink.black, "stroke-width": 5 }),
    element("line", { ...line, stroke: ink.white, "stroke-width": 2.2 }),
  ];
};

/** One thick line: a closed edge. */
export const bindOffBar = (
  left: number,
  right: number,
  y: number,
  named: Record<string, string | number> = {},
): readonly Markup[] => [
  element("line", { ...named, x1: left, x2: right, y1: y, y2: y, stroke: ink.black, "stroke-width": 4 }),
];

/** Which half above a neck is knitted first. */
export function halvesMarkup(paper: Paper): Markup {
  const { scene, boundary, text } = paper;
  const { neck } = scene;
  if (!neck) return group({}, []);
  const words = (half: Side): string => (half === neck.firstHalf ? "first half" : "second half");
  return group(
    { class: "halves" },
    (["left", "right"] as const).flatMap((half) => {
      const place = roomInHalf(paper, half, textWidth(words(half), text));
      if (!place) return [];
      const { x, y } = boundary((place.from + place.to) / 2, place.row);
      return [label(words(half), { x, y: y + 1.4 * text }, { size: text, anchor: "middle", halo: true })];
    }),
  );
}

/** The highest row above the neck in which a half is so many pixels wide, or its top where it never is. */
function roomInHalf(
  { scene, cell }: Paper,
  half: Side,
  widthPx: number,
): (Span & { readonly row: number }) | undefined {
  const rows = scene.cells.flatMap((spans, index) => {
    const [left, right] = spans;
    return left && right ? [{ ...(half === "left" ? left : right), row: index + 1 }] : [];
  });
  return rows.findLast(({ from, to }) => (to - from) * cell.width >= widthPx) ?? rows.at(-1);
}
