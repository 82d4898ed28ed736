import type { CableCrossing } from "../scene/cables.ts";
import type { ClothPoint } from "../scene/place.ts";
import type { Scene } from "../scene.ts";
import { nearerGroup, type Sight } from "../view.ts";
import type { Layers } from "./options.ts";
import type { Role } from "./runs.ts";
import type { Dot, Window } from "./window.ts";

/** Dots of one kind, by cell; what is loud hides what is quiet in the same cell. */
export interface Ink {
  readonly role: Role;
  readonly strand?: number;
  readonly loud: boolean;
  /** Where it passes, as dots in order along its line; broken where it lies under another. */
  readonly dots: readonly PlacedDot[];
}

interface PlacedDot {
  readonly column: number;
  readonly row: number;
  readonly bit: number;
  /** The character for it where dots are whole cells. */
  readonly stroke: string;
}

/** Everything to draw, from what lies lowest to what lies on top. */
export function inksFor(scene: Scene, sight: Sight, view: Window, layers: Layers): readonly Ink[] {
  const closed = [...scene.outline, scene.outline[0]!];
  return [
    ...(layers.unreachable ? [unreachableInk(scene, view)] : []),
    ...(layers.panels ? panelInks(scene, view) : []),
    ...(layers.marks ? markInks(scene, view) : []),
    { role: "outline", loud: true, dots: placed(walk(closed, view), view) },
    ...(layers.motif
      ? [
          ...bandInks(scene, view),
          ...ladderInks(scene, view),
          ...strandInks(scene, view),
          ...cableInks(scene, sight, view),
        ]
      : []),
  ];
}

interface Breaking {
  readonly at: Dot;
  readonly radius: number;
}

function strandInks(scene: Scene, view: Window): readonly Ink[] {
  return scene.strands.map((strand, index): Ink => {
    const breaks = scene.crossings
      .filter(({ under }) => under === index)
      .map((crossing): Breaking => {
        const [from, to] = [strand.hangings[crossing.underFrom]!, strand.hangings[crossing.underFrom + 1]!];
        return { at: view.toDot(crossing), radius: breakRadius(view.toDot(from), view.toDot(to), view) };
      });
    return {
      role: "strand",
      strand: strand.order,
      loud: true,
      dots: placed(walk(strand.line, view), view, breaks),
    };
  });
}

/**
 * How much of a strand is left out where it passes under another: enough for the eye where it is long on the
 * drawing, nothing where it would vanish.
 */
function breakRadius(from: Dot, to: Dot, { glyphs }: Window): number {
  const length = dotDistance(from, to, glyphs.dots);
  return length < 4 ? 0 : Math.max(1.1, Math.min(length / 6, 4));
}

/** Distance in dots across; a dot may be higher than wide. */
const dotDistance = (one: Dot, other: Dot, dots: Window["glyphs"]["dots"]): number =>
  Math.hypot(one.x - other.x, ((one.y - other.y) * 2 * dots.across) / dots.down);

/** Both groups of each crossing, from half-way to the crossing below to half-way to the one above. */
function cableInks(scene: Scene, sight: Sight, view: Window): readonly Ink[] {
  return scene.cables.flatMap((cable): readonly Ink[] => {
    const near = nearerGroup(cable, sight);
    const lines = { left: groupLine(scene, cable, "left"), right: groupLine(scene, cable, "right") };
    const far = near === "left" ? "right" : "left";
    const [from, to] = [view.toDot(lines[far][0]), view.toDot(lines[far][1])];
    const breaks = [{ at: view.toDot(cable), radius: breakRadius(from, to, view) }];
    return [
      { role: "strand", strand: 1, loud: true, dots: placed(walk(lines[far], view), view, breaks) },
      { role: "strand", strand: 0, loud: true, dots: placed(walk(lines[near], view), view) },
    ];
  });
}

function groupLine(
  { stitch }: Scene,
  { from, to, row, halfRows, left, right }: CableCrossing,
  group: "left" | "right",
): readonly [ClothPoint, ClothPoint] {
  const half = (group === "left" ? left : right) / 2;
  const ends = [from + half, to - half];
  const [low, high] = group === "left" ? ends : ends.reverse();
  return [
    { xMm: low! * stitch.widthMm, yMm: (row - halfRows) * stitch.heightMm },
    { xMm: high! * stitch.widthMm, yMm: (row + halfRows) * stitch.heightMm },
  ];
}

/** A rung in every other row of dots of a needle out of work. */
const ladderInks = (scene: Scene, view: Window): readonly Ink[] =>
  scene.ladders.map(({ from, to, fromRow, toRow }): Ink => {
    const { widthMm, heightMm } = scene.stitch;
    const rails = [fromRow, toRow].map((row) => view.toDot({ xMm: from * widthMm, yMm: row * heightMm }));
    const [left, right] = [rails[0]!.x, view.toDot({ xMm: to * widthMm, yMm: 0 }).x];
    const [low, high] = [Math.round(rails[0]!.y), Math.round(rails[1]!.y)];
    const dots: Dot[] = [];
    for (let y = high; y <= low; y++)
      if (y % 2 === 0)
        for (let x = Math.round(Math.min(left, right)); x <= Math.round(Math.max(left, right)); x++)
          dots.push({ x, y });
    return { role: "mark", loud: true, dots: dots.flatMap((dot) => placedDot(dot, view, "=")) };
  });

/** The frames of a banded pattern's repeats. */
const bandInks = (scene: Scene, view: Window): readonly Ink[] =>
  scene.bands.flatMap(({ tiles, fromRow, toRow }) =>
    tiles.map(({ from, to }): Ink => {
      const { widthMm, heightMm } = scene.stitch;
      const corner = (boundary: number, row: number): ClothPoint => ({
        xMm: boundary * widthMm,
        yMm: row * heightMm,
      });
      const frame = [corner(from, fromRow), corner(to, fromRow), corner(to, toRow), corner(from, toRow)];
      return { role: "strand", strand: 0, loud: true, dots: placed(walk([...frame, frame[0]!], view), view) };
    }),
  );

/** Dashes from the piece's left edge towards the mark's name. */
const markInks = (scene: Scene, view: Window): readonly Ink[] =>
  scene.marks.map(({ row, yMm }): Ink => {
    const ends = scene.cells[Math.min(row, scene.rows - 1)]!.flatMap(({ from, to }) => [from, to]);
    const start = Math.min(
      ...ends.map((boundary) => view.toDot({ xMm: boundary * scene.stitch.widthMm, yMm }).x),
    );
    const y = Math.round(view.toDot({ xMm: 0, yMm }).y);
    const { across } = view.glyphs.dots;
    const dots: Dot[] = [];
    for (let x = Math.max(0, Math.round(start)); x < view.columns * across; x++)
      if (Math.floor(x / across) % 2 === 0) dots.push({ x, y });
    return { role: "mark", loud: false, dots: dots.flatMap((dot) => placedDot(dot, view, view.glyphs.mark)) };
  });

/** The sides of each panel, dotted. */
function panelInks(scene: Scene, view: Window): readonly Ink[] {
  const { stitch } = scene;
  return scene.fields.flatMap(({ panel, firstRow, lastRow }) =>
    [panel.from, panel.to].map((boundary): Ink => {
      const xMm = boundary * stitch.widthMm;
      const line = [firstRow, lastRow].map((row) => ({ xMm, yMm: row * stitch.heightMm }));
      const dots = walk(line, view).filter(({ y }) => y % (view.glyphs.dots.down === 1 ? 1 : 2) === 0);
      return {
        role: "panel",
        loud: false,
        dots: dots.flatMap((dot) => placedDot(dot, view, view.glyphs.panel)),
      };
    }),
  );
}

/** A dot in every other cell of the zone that no motif may reach. */
function unreachableInk(scene: Scene, view: Window): Ink {
  const { across, down } = view.glyphs.dots;
  const spans = new Map<number, { from: number; to: number }[]>();
  for (const { row, from, to } of scene.unreachable)
    spans.set(row, [...(spans.get(row) ?? []), { from, to }]);
  const dots: PlacedDot[] = [];
  for (let row = 0; row < view.rows; row++)
    for (let column = row % 2; column < view.columns; column += 2) {
      const dot = { x: column * across + (across - 1) / 2, y: row * down + (down - 1) / 2 };
      const { xMm, yMm } = view.toCloth(dot);
      const boundary = xMm / scene.stitch.widthMm;
      const here = spans.get(Math.floor(yMm / scene.stitch.heightMm) + 1);
      if (here?.some(({ from, to }) => from <= boundary && boundary <= to))
        dots.push({
          column,
          row,
          bit: view.glyphs.bit(across - 1, Math.floor(down / 2)),
          stroke: view.glyphs.unreachable,
        });
    }
  return { role: "unreachable", loud: false, dots };
}

/** Whole dots along a line, each once, in order. */
function walk(points: readonly ClothPoint[], view: Window): readonly Dot[] {
  const dots: Dot[] = [];
  const add = (x: number, y: number): void => {
    const last = dots.at(-1);
    if (last?.x !== x || last.y !== y) dots.push({ x, y });
  };
  points.slice(1).forEach((point, index) => {
    const [from, to] = [view.toDot(points[index]!), view.toDot(point)];
    const steps = Math.max(1, Math.ceil(Math.max(Math.abs(to.x - from.x), Math.abs(to.y - from.y))));
    for (let step = 0; step <= steps; step++)
      add(
        Math.round(from.x + ((to.x - from.x) * step) / steps),
        Math.round(from.y + ((to.y - from.y) * step) / steps),
      );
  });
  return dots;
}

function placed(dots: readonly Dot[], view: Window, breaks: readonly Breaking[] = []): readonly PlacedDot[] {
  return dots.flatMap((dot, index) => {
    const inView = placedDot(dot, view, strokeFor(dots[index - 1] ?? dot, dot, dots[index + 1] ?? dot));
    const broken =
      inView.length > 0 && breaks.some(({ at, radius }) => dotDistance(dot, at, view.glyphs.dots) < radius);
    return broken ? [] : inView;
  });
}

/** The character that runs from the dot before to the one after. */
function strokeFor(before: Dot, here: Dot, after: Dot): string {
  const across = after.x - before.x;
  const down = after.y - before.y;
  if (across === 0 && here.x !== before.x) return here.x > before.x ? ">" : "<";
  if (across === 0) return "|";
  if (down === 0) return "-";
  return across > 0 === down > 0 ? "\\" : "/";
}

function placedDot({ x, y }: Dot, view: Window, stroke: string): readonly PlacedDot[] {
  const { across, down } = view.glyphs.dots;
  const [column, row] = [Math.floor(x / across), Math.floor(y / down)];
  if (column < 0 || row < 0 || column >= view.columns || row >= view.rows) return [];
  return [{ column, row, bit: view.glyphs.bit(x - column * across, y - row * down), stroke }];
}
