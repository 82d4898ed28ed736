import { counted, listed } from "../../report/words.ts";
import type { SceneStrand } from "../scene/strands.ts";
import type { Scene } from "../scene.ts";
import { hatch } from "./cloth.ts";
import { element, group, type Markup } from "./element.ts";
import { ink } from "./ink.ts";
import { carriage } from "./row-numbers.ts";
import { arrowhead, bindOffBar, castOnBar } from "./shaping.ts";
import { dot, square, tube } from "./strands.ts";
import { label, textWidth } from "./text.ts";

interface Entry {
  readonly words: string;
  /** Drawn about the origin, at most 24 wide and 12 high. */
  readonly sign: readonly Markup[];
}

const signWidth = 34;

/**
 * What the signs of a chart mean; only those that occur in it.
 *
 * @param ticks whether rows without room for their number have a tick
 */
export function legendMarkup(
  scene: Scene,
  id: string,
  mirrored: boolean,
  ticks: boolean,
  place: { readonly left: number; readonly top: number; readonly width: number; readonly text: number },
): { readonly markup: Markup; readonly height: number } {
  const { left, top, width, text } = place;
  const lineHeight = 1.9 * text;
  let [x, y] = [0, 0];
  const drawn = entriesFor(scene, id, mirrored, ticks).map(({ words, sign }) => {
    const wide = signWidth + textWidth(words, text) + 1.5 * text;
    if (x > 0 && x + wide > width) [x, y] = [0, y + lineHeight];
    const at = { x: left + x, y: top + y + lineHeight / 2 };
    x += wide;
    return group({}, [
      element("g", { transform: `translate(${at.x + 14} ${at.y})` }, ...sign),
      label(words, { x: at.x + signWidth, y: at.y }, { size: text }),
    ]);
  });
  return { markup: group({ class: "legend" }, drawn), height: y + lineHeight };
}

function entriesFor(scene: Scene, id: string, mirrored: boolean, ticks: boolean): readonly Entry[] {
  return [
    {
      words: "carriage rests here; row numbers count the rows knitted, bold where something is done",
      sign: [carriage({ x: 0, y: 0 }, 4.5)],
    },
    ...(ticks
      ? [
          {
            words: "something is done at this row too",
            sign: [element("path", { d: "M-4 0h8", stroke: ink.black, "stroke-width": 1 })],
          },
        ]
      : []),
    ...strandEntries(scene),
    ...cableEntries(scene, mirrored),
    ...ladderEntries(scene),
    ...bandEntries(scene),
    ...shapingEntries(scene),
    ...fieldEntries(scene, id),
  ];
}

function strandEntries(scene: Scene): readonly Entry[] {
  if (scene.strands.length === 0) return [];
  const line = { x1: -12, y1: 0, x2: 12, y2: 0 };
  return [
    ...looksOf(scene.strands).map(
      ({ order, words }): Entry => ({ words, sign: tube(line, "line", 9, order) }),
    ),
    {
      words:
        "hang both legs of one cord stitch here; the number counts cord stitches from the hanging before",
      sign: [dot({ x: 0, y: 0 }, 4)],
    },
    ...(scene.strands.some(({ hangings }) => hangings.some(({ loop }) => loop))
      ? [{ words: "the strand stands off as a loop, as long as its count", sign: loopSign() }]
      : []),
    { words: "last hanging of the strand", sign: [square({ x: 0, y: 0 }, 3.4)] },
    ...(scene.crossings.length > 0
      ? [{ words: "the whole strand lies over the broken one", sign: crossingSign() }]
      : []),
  ];
}

/** Strands that look the same, with what they are called. */
function looksOf(strands: readonly SceneStrand[]): readonly { order: number; words: string }[] {
  const names = new Map<number, Set<string>>();
  for (const { order, name, motif } of strands)
    names.set(order, (names.get(order) ?? new Set()).add(`${name} strand of ${motif}`));
  return [...names]
    .sort(([one], [other]) => one - other)
    .map(([order, words]) => ({ order, words: listed([...words]) }));
}

const loopSign = (): readonly Markup[] =>
  [
    { stroke: ink.black, "stroke-width": 5 },
    { stroke: ink.white, "stroke-width": 3 },
  ].map((line) => element("circle", { cx: 0, cy: 0, r: 5.5, fill: "none", ...line }));

const crossingSign = (): readonly Markup[] => [
  ...tube({ x1: -11, y1: 6, x2: 11, y2: -6 }, "line", 6, 1),
  element("line", { x1: -5, y1: -2.7, x2: 5, y2: 2.7, stroke: ink.white, "stroke-width": 10 }),
  ...tube({ x1: -11, y1: -6, x2: 11, y2: 6 }, "line", 6, 0),
];

function cableEntries(scene: Scene, mirrored: boolean): readonly Entry[] {
  const motifs = new Map<string, Set<string>>();
  for (const { motif, left, right } of scene.cables)
    motifs.set(motif, (motifs.get(motif) ?? new Set()).add(`${left} and ${right}`));
  const where = mirrored ? "lies behind" : "lies on the far side: put it back on its needles first";
  return [
    ...[...motifs].map(
      ([motif, sizes]): Entry => ({
        words: `${motif}: ${[...sizes].join(", ")} stitches change places`,
        sign: [
          band("-12,6 -2,6 12,-6 2,-6", ink.shade),
          element("polygon", {
            points: "2,6 12,6 -2,-6 -12,-6",
            fill: ink.white,
            stroke: ink.white,
            "stroke-width": 3,
          }),
          band("2,6 12,6 -2,-6 -12,-6", ink.white),
        ],
      }),
    ),
    ...(motifs.size > 0
      ? [{ words: `the shaded group ${where}`, sign: [band("-8,5 2,5 8,-5 -2,-5", ink.shade)] }]
      : []),
  ];
}

const ladderEntries = (scene: Scene): readonly Entry[] =>
  scene.ladders.length === 0
    ? []
    : [
        {
          words: "needle out of work: a ladder",
          sign: [
            element("rect", { x: -5, y: -7, width: 10, height: 14, fill: ink.white, stroke: ink.quiet }),
            element("path", { d: "M-5 -4H5M-5 0H5M-5 4H5", stroke: ink.black, "stroke-width": 1.1 }),
          ],
        },
      ];

function bandEntries(scene: Scene): readonly Entry[] {
  const motifs = new Map(scene.bands.map((one) => [one.motif, one]));
  const box = (attributes: Record<string, string | number>): Markup =>
    element("rect", { x: -11, y: -6, width: 22, height: 12, ...attributes });
  return [
    ...[...motifs.values()].map(
      ({ motif, tiles, fromRow, toRow }): Entry => ({
        words: `${motif}: ${counted(tiles[0]!.to - tiles[0]!.from, "stitch", "stitches")} by ${counted(toRow - fromRow, "row")}, numbered upward`,
        sign: [box({ fill: "none", stroke: ink.black, "stroke-width": 1.4 })],
      }),
    ),
    ...(scene.bands.some(({ edges }) => edges.length > 0)
      ? [{ words: "edge stitches", sign: [box({ fill: ink.faint, stroke: "none" })] }]
      : []),
  ];
}

const band = (points: string, fill: string): Markup =>
  element("polygon", { points, fill, stroke: ink.black, "stroke-width": 1 });

function shapingEntries(scene: Scene): readonly Entry[] {
  const occurs = (kind: string): boolean => scene.shaping.some((event) => event.kind === kind);
  const origin = { x: 0, y: 0 };
  const entries: readonly (readonly [string, Entry])[] = [
    ["increase", { words: "increase 1 stitch at this edge", sign: [arrowhead(origin, 1, 4.5, true)] }],
    ["decrease", { words: "decrease 1 stitch at this edge", sign: [arrowhead(origin, -1, 4.5, false)] }],
    ["cast-on", { words: "cast on (so many stitches)", sign: castOnBar(-12, 12, 0) }],
    ["bind-off", { words: "bind off (so many stitches)", sign: bindOffBar(-12, 12, 0) }],
  ];
  return entries.filter(([kind]) => occurs(kind)).map(([, entry]) => entry);
}

function fieldEntries(scene: Scene, id: string): readonly Entry[] {
  const box = (attributes: Record<string, string | number>): Markup =>
    element("rect", { x: -12, y: -6, width: 24, height: 12, ...attributes });
  return [
    {
      words: "mark",
      sign: [
        element("path", { d: "M-12 0H12", stroke: ink.black, "stroke-width": 1, "stroke-dasharray": "7 3" }),
      ],
    },
    ...(scene.fields.length > 0
      ? [
          {
            words: "panel of the motif",
            sign: [
              box({ fill: "none", stroke: ink.quiet, "stroke-width": 1.1, "stroke-dasharray": "1.5 3" }),
            ],
          },
        ]
      : []),
    ...(scene.unreachable.length > 0
      ? [
          {
            words: "least side margin: no motif here",
            sign: [hatch(`${id}-hatch-sign`), box({ fill: `url(#${id}-hatch-sign)` })],
          },
        ]
      : []),
  ];
}
