import { needleAt, needleName, position } from "../../cloth/bed.ts";
import { element, group, type Markup, rounded } from "./element.ts";
import { ink } from "./ink.ts";
import type { Paper } from "./paper.ts";
import { label } from "./text.ts";

/** Room that needle names take below and above the cells. */
export const needleNamesHeight = (text: number): number => 3.4 * text;

/** Needle names along the bottom and the top: the first, every fifth, and those on which something is hung. */
export function needleNames(paper: Paper): Markup {
  const { scene, plot, text } = paper;
  const hung = new Set(scene.strands.flatMap(({ hangings }) => hangings.map(({ needle }) => needle)));
  for (const { from, to } of scene.cables) hung.add(needleAt(from + 0.5)).add(needleAt(to - 0.5));
  const needles = namedNeedles(paper, hung);
  return group(
    { class: "needle-names" },
    needles.flatMap((needle) => {
      const { x } = paper.needle(needle, 0);
      return (
        [
          [plot.bottom, 1],
          [plot.top, -1],
        ] as const
      ).flatMap(([edge, outward]) => [
        element("path", {
          d: `M${rounded(x)} ${rounded(edge + outward * 0.5 * text)}v${rounded(outward * 0.4 * text)}`,
          stroke: ink.black,
          "stroke-width": 0.8,
        }),
        label(
          needleName(needle),
          { x, y: edge + outward * 1.1 * text },
          {
            size: needleNameSize(paper),
            turned: -90,
            anchor: outward === 1 ? "end" : "start",
            bold: hung.has(needle),
            class: "needle-name",
          },
        ),
      ]);
    }),
  );
}

const needleNameSize = ({ text, cell }: Paper): number =>
  Math.min(text, Math.max(0.7 * text, 0.95 * cell.width));

function namedNeedles(paper: Paper, hung: ReadonlySet<number>): readonly number[] {
  const { scene, cell, text, sight } = paper;
  const apart = 0.9 * needleNameSize(paper);
  const least = Math.ceil((0.85 * text) / cell.width);
  const step = [5, 10, 20, 50].find((one) => one >= least) ?? 50;
  const wanted: number[] = [...hung, -1, 1, ...scene.needlesAtStart];
  for (let boundary = scene.widest.from; boundary < scene.widest.to; boundary++) {
    const needle = needleAt(boundary + 0.5);
    if (needle % step === 0) wanted.push(needle);
  }
  // Where names would touch, those wanted first stay.
  const kept: number[] = [];
  for (const needle of wanted) {
    const at = position(needle);
    if (kept.every((other) => Math.abs(position(other) - at) * cell.width >= apart)) kept.push(needle);
  }
  return kept.sort((one, other) => sight.sign * (one - other));
}
