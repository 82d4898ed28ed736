import { readFile } from "node:fs/promises";
import { sceneOf } from "../draw/scene.ts";
import { chartSvg } from "../draw/svg.ts";
import type { Fit } from "../fit/fit.ts";
import { documentOf } from "../sheet/document/document-of.ts";
import { sheetHtml } from "../sheet/html/sheet-html.ts";
import type { EmbeddedTypeface } from "../sheet/html/style.ts";
import {
  type Area,
  commonPrintArea,
  cssPixels,
  mmPerInch,
  type PaperName,
  printArea,
} from "../sheet/paper.ts";
import type { Sheet } from "../sheet/sheet.ts";
import { ownTypeface } from "../typeface/typeface.ts";
import { CommandError } from "./exit-codes.ts";

/** The sheet as HTML, with the program's typeface where it is installed and a chart for each piece. */
export async function printedHtml(fit: Fit, sheet: Sheet): Promise<string> {
  const typeface = await embeddedTypeface();
  return sheetHtml(documentOf(fit, sheet), {
    charts: chartsFor(fit, commonPrintArea),
    ...(typeface && { typeface }),
  });
}

async function embeddedTypeface(): Promise<EmbeddedTypeface | undefined> {
  const typeface = ownTypeface();
  if (!typeface) return undefined;
  const [regular, bold] = await Promise.all([
    readFile(typeface.regular, "base64"),
    readFile(typeface.bold, "base64"),
  ]);
  return { regular, bold };
}

/** As the knitter sees each piece, because that is what lies on the bed. */
const chartsFor = (fit: Fit, area: Area): readonly string[] =>
  fit.pieces.map(({ name }, index) =>
    chartSvg(sceneOf(fit, name), {
      view: "knitter",
      space: {
        widthPx: Math.floor(cssPixels(area.widthMm)),
        heightPx: Math.floor(cssPixels(area.heightMm)),
      },
      idPrefix: `piece${index + 1}-`,
    }),
  );

const noCharts =
  "What draws the charts of a PDF is not installed for this system. HTML needs nothing: --output sheet.html";

/** Dots per inch that leave thin lines sharp on paper. */
const chartResolution = 300;

/** The sheet as a PDF, and what a reader of it should know. */
export async function printedPdf(
  fit: Fit,
  sheet: Sheet,
  paper: PaperName,
): Promise<{ readonly pdf: Uint8Array; readonly notes: readonly string[] }> {
  const [{ sheetPdf }, { svgToPng }] = await Promise.all([
    import("../sheet/pdf/sheet-pdf.ts"),
    import("../draw/png.ts"),
  ]);
  const area = printArea(paper);
  const notes: string[] = [];
  const charts: Uint8Array[] = [];
  for (const svg of chartsFor(fit, area)) {
    const picture = await svgToPng(svg, (area.widthMm / mmPerInch) * chartResolution);
    if ("problem" in picture) throw new CommandError(noCharts);
    charts.push(picture.png);
    notes.push(...picture.notes);
  }
  const { pdf, missing } = await sheetPdf(documentOf(fit, sheet), { paper, charts, typeface: ownTypeface() });
  if (missing.length > 0)
    notes.push(
      `The PDF's typeface has no ${missing.join(" ")}: print the sheet by --html instead, which takes them from other fonts.`,
    );
  return { pdf, notes: [...new Set(notes)] };
}
