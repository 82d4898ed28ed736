import type { Side } from "../../garment/garment.ts";
import type { CableCrossing } from "../scene/cables.ts";
import { nearerGroup } from "../view.ts";
import { element, group, type Markup, pointList } from "./element.ts";
import { ink } from "./ink.ts";
import type { Paper } from "./paper.ts";

/** Rows below and above its own over which a crossing is drawn. */
const rowsEachSide = 1.6;

/** Crossings as two bands that change places, the nearer one whole, with straight edges from one to the next. */
export function cablesMarkup(paper: Paper): readonly Markup[] {
  const { cables } = paper.scene;
  return [
    group(
      { class: "cable-edges" },
      cables.flatMap((cable) => edges(paper, cable)),
    ),
    group(
      { class: "cables" },
      cables.flatMap((cable) => bands(paper, cable)),
    ),
  ];
}

const reachOf = ({ halfRows }: CableCrossing): number => Math.min(rowsEachSide, halfRows);

/** The straight sides of the groups from a crossing up to the next on the same needles. */
function edges(paper: Paper, cable: CableCrossing): readonly Markup[] {
  const above = paper.scene.cables.filter(
    (one) => one.placement === cable.placement && one.column === cable.column && one.row > cable.row,
  );
  const next = above.find(({ from, to }) => from === cable.from && to === cable.to);
  if (!next) return [];
  const [low, high] = [cable.row + reachOf(cable), next.row - reachOf(next)];
  if (low >= high) return [];
  // Of groups that differ the seam lies elsewhere before a crossing than after the one below it.
  const seam = cable.left === cable.right ? [cable.from + cable.right] : [];
  return [cable.from, ...seam, cable.to]
    .filter(
      (boundary) => !above.some((one) => one.row < next.row && one.from < boundary && boundary < one.to),
    )
    .map((boundary) => {
      const [from, to] = [paper.boundary(boundary, low), paper.boundary(boundary, high)];
      return element("line", {
        class: "cable-edge",
        x1: from.x,
        y1: from.y,
        x2: to.x,
        y2: to.y,
        stroke: ink.black,
        "stroke-width": 1.1,
      });
    });
}

function bands(paper: Paper, cable: CableCrossing): readonly Markup[] {
  const near = nearerGroup(cable, paper.sight);
  const far: Side = near === "left" ? "right" : "left";
  const shape = (side: Side): string => {
    const width = cable[side];
    const low = side === "left" ? cable.from : cable.to - width;
    const high = side === "left" ? cable.to - width : cable.from;
    const [bottom, top] = [cable.row - reachOf(cable), cable.row + reachOf(cable)];
    return pointList([
      paper.boundary(low, bottom),
      paper.boundary(low + width, bottom),
      paper.boundary(high + width, top),
      paper.boundary(high, top),
    ]);
  };
  const band = (side: Side, fill: string, named: Record<string, string>): Markup =>
    element("polygon", { ...named, points: shape(side), fill, stroke: ink.black, "stroke-width": 1.1 });
  return [
    band(far, ink.shade, { class: "far-group", "data-group": far }),
    element("polygon", { points: shape(near), fill: ink.white, stroke: ink.white, "stroke-width": 4 }),
    band(near, ink.white, { class: "near-group", "data-group": near }),
  ];
}
