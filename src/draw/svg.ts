import { needleCount, rangeName } from "../cloth/bed.ts";
import { groundWords } from "../report/gauge-words.ts";
import { counted } from "../report/words.ts";
import type { Scene } from "./scene.ts";
import { bandsMarkup } from "./svg/bands.ts";
import { cablesMarkup } from "./svg/cables.ts";
import { clothMarkup } from "./svg/cloth.ts";
import { element, group, type Markup } from "./svg/element.ts";
import { fieldNotes, fieldNotesWidth, panelsMarkup } from "./svg/fields.ts";
import { ink } from "./svg/ink.ts";
import { laddersMarkup } from "./svg/ladders.ts";
import { legendMarkup } from "./svg/legend.ts";
import { markNamesWidth, marksMarkup } from "./svg/marks.ts";
import { needleNames, needleNamesHeight } from "./svg/needle-names.ts";
import { paperFor } from "./svg/paper.ts";
import { rowNumbers, rowNumbersWidth, someRowsUnnumbered } from "./svg/row-numbers.ts";
import { halvesMarkup, shapingMarkup } from "./svg/shaping.ts";
import { strandsMarkup } from "./svg/strands.ts";
import { label, shortened, textWidth } from "./svg/text.ts";
import type { View } from "./view.ts";
import { sightOf, sightWords } from "./view.ts";

export interface ChartOptions {
  readonly view: View;
  /**
   * The space the chart has to fit in, such as a printed page. Without it a cell is as large as its numbers need;
   * with it cells may become small, and the numbers beside them keep their size and move apart.
   */
  readonly space?: { readonly widthPx: number; readonly heightPx: number };
  /** Usual size of text; 12 where it is left out. */
  readonly textPx?: number;
  /**
   * For an SVG that stands in an HTML page with others: every id begins with it, so each chart of the page needs its
   * own. There is no XML declaration then, because HTML knows none (HTML Living Standard, section 13.1.3).
   */
  readonly idPrefix?: string;
}

export interface ChartRequest extends ChartOptions {
  readonly scene: Scene;
}

/** The chart of one piece as an SVG document, its lengths in CSS pixels. */
export const chartSvg = (scene: Scene, options: ChartOptions): string => chartsSvg([[{ scene, ...options }]]);

/**
 * Several charts as one SVG document.
 *
 * @param lines charts that stand side by side, one line under the other
 */
export function chartsSvg(lines: readonly (readonly ChartRequest[])[]): string {
  const drawn = lines.map((line, lineIndex) =>
    line.map((request, index) =>
      drawChart(request, `${request.idPrefix ?? ""}chart${lineIndex + 1}-${index + 1}`),
    ),
  );
  const width = Math.max(0, ...drawn.map((line) => line.reduce((sum, chart) => sum + chart.width, 0)));
  let y = 0;
  const placed = drawn.flatMap((line) => {
    let x = 0;
    const charts = line.map(({ markup, width: wide }) => {
      const at = element("g", { transform: `translate(${Math.round(x)} ${Math.round(y)})` }, markup);
      x += wide;
      return at;
    });
    y += Math.max(0, ...line.map(({ height }) => height));
    return charts;
  });
  const [wide, high] = [Math.ceil(width), Math.ceil(y)];
  const { markup } = element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      width: wide,
      height: high,
      viewBox: `0 0 ${wide} ${high}`,
      "font-family": "sans-serif",
    },
    element("title", {}, documentTitle(lines)),
    element("rect", { width: wide, height: high, fill: ink.white }),
    ...placed,
  );
  const inPage = lines.flat().some(({ idPrefix }) => idPrefix !== undefined);
  return `${inPage ? "" : xmlDeclaration}${markup}\n`;
}

const xmlDeclaration = '<?xml version="1.0" encoding="UTF-8"?>\n';

const documentTitle = (lines: readonly (readonly ChartRequest[])[]): string => {
  const first = lines[0]?.[0]?.scene;
  return first ? `${first.title}: ${lines.map(([chart]) => chart!.scene.piece).join(", ")}` : "";
};

interface DrawnChart {
  readonly markup: Markup;
  readonly width: number;
  readonly height: number;
}

const usualText = 12;
/** Shorter side of a cell of a small piece: a number of the usual size fits into it. */
const usualCell = 12;
/** Cells of a larger piece become smaller, so that its text stays readable when the whole is shrunk onto a page. */
const usualPlot = 1600;
const leastCell = 6;
const edgePx = 16;

function drawChart({ scene, view, space, textPx = usualText }: ChartRequest, id: string): DrawnChart {
  const text = textPx;
  const { widthMm, heightMm } = scene.stitch;
  const beside = {
    left:
      edgePx +
      scene.fields.length * fieldNotesWidth(scene.fields, text) +
      rowNumbersWidth(scene.rows, text) +
      text,
    right: rowNumbersWidth(scene.rows, text) + markNamesWidth(scene, text) + edgePx,
  };
  const heading = headingFor(scene, view, text);
  const above = edgePx + heading.height + needleNamesHeight(text) + text;
  const clothWidth = (scene.widest.to - scene.widest.from) * widthMm;
  const clothHeight = scene.rows * heightMm;
  const shorter = Math.min(widthMm, heightMm);
  const usual = Math.max(
    leastCell / shorter,
    Math.min(usualCell / shorter, usualPlot / Math.max(clothWidth, clothHeight)),
  );
  const belowCells = needleNamesHeight(text) + text;
  const legendFor = (width: number, top: number, ticks: boolean) =>
    legendMarkup(scene, id, sightOf(scene, view).mirrored, ticks, {
      left: edgePx,
      top,
      width: width - 2 * edgePx,
      text,
    });
  const scale = space
    ? Math.min(
        usual,
        (space.widthPx - beside.left - beside.right) / clothWidth,
        (space.heightPx - above - belowCells - legendFor(space.widthPx, 0, true).height - edgePx) /
          clothHeight,
      )
    : usual;
  const paper = paperFor(scene, {
    view,
    id,
    scale: Math.max(scale, 0.05),
    text,
    left: beside.left,
    top: above,
  });
  const width = space?.widthPx ?? Math.max(paper.plot.right + beside.right, heading.width + 2 * edgePx, 640);
  const legend = legendFor(width, paper.plot.bottom + belowCells, someRowsUnnumbered(paper));
  return {
    width,
    height: paper.plot.bottom + belowCells + legend.height + edgePx,
    markup: group({ class: "chart", "data-piece": scene.piece, "data-view": view }, [
      heading.markup,
      clothMarkup(paper),
      panelsMarkup(paper),
      marksMarkup(paper),
      shapingMarkup(paper),
      laddersMarkup(paper),
      bandsMarkup(paper),
      ...cablesMarkup(paper),
      ...strandsMarkup(paper),
      halvesMarkup(paper),
      fieldNotes(paper, paper.plot.left - rowNumbersWidth(scene.rows, text) - 0.5 * text),
      rowNumbers(paper),
      needleNames(paper),
      legend.markup,
    ]),
  };
}

function headingFor(scene: Scene, view: View, text: number) {
  const { ground } = scene.gauge;
  const title = shortened(`${scene.title}: ${scene.piece}`, 1.6 * text, 900);
  const sight = sightOf(scene, view);
  const lines = [
    `${sight.label}: ${sightWords(scene, view)}`,
    `${groundWords(ground)}; starts on ${counted(needleCount(scene.needlesAtStart), "needle")}, ${rangeName(scene.needlesAtStart)}; ${counted(scene.rows, "row")}`,
  ];
  return {
    width: Math.max(textWidth(title, 1.6 * text), ...lines.map((line) => textWidth(line, text))),
    height: 2.4 * text + lines.length * 1.6 * text,
    markup: group({ class: "heading" }, [
      label(title, { x: edgePx, y: edgePx + 0.9 * text }, { size: 1.6 * text, bold: true, class: "title" }),
      ...lines.map((line, index) =>
        label(
          line,
          { x: edgePx, y: edgePx + (2.7 + 1.6 * index) * text },
          {
            size: index === 0 ? 1.15 * text : text,
            bold: index === 0,
            class: index === 0 ? "view" : "gauge",
          },
        ),
      ),
    ]),
  };
}
