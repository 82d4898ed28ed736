import { counted, inCentimetres } from "../report/words.ts";
import type { Scene } from "./scene.ts";
import type { GlyphSet } from "./terminal/glyph-sets.ts";
import { drawInTerminal, rowsForWidth, type TerminalDrawing } from "./terminal.ts";
import { sightOf, type View } from "./view.ts";

export interface TextChartOptions {
  readonly view: View;
  readonly columns: number;
  readonly glyphs: GlyphSet;
}

/** A piece that is much longer than wide is drawn narrower than the columns allow, so that it stays readable. */
const mostRows = 120;

/** The chart of one piece as plain text, headed and explained, as large as the columns allow. */
export function chartText(scene: Scene, { view, columns, glyphs }: TextChartOptions): string {
  const { ground } = scene.gauge;
  const rows = rowsForWidth(scene, { columns, glyphs }, mostRows);
  const drawing = drawInTerminal(scene, { view, columns, rows, glyphs });
  const title = `${scene.title}: ${scene.piece}, ${sightOf(scene, view).label}`;
  return [
    title,
    `${counted(ground.stitches, "stitch", "stitches")} and ${counted(ground.rows, "row")} over ${inCentimetres(ground.overMm)}`,
    "",
    ...drawing.lines,
    "",
    ...explanation(scene, drawing),
  ].join("\n");
}

function explanation(scene: Scene, { runs }: TerminalDrawing): readonly string[] {
  const rings = runs.flat().some(({ role, text }) => role === "strand" && text.includes("o"));
  return [
    "Row numbers count the rows knitted; < or > is the side at which the carriage rests. Dashes are marks.",
    ...(rings ? ["o is a hanging, the number beside it its count."] : []),
    ...(scene.crossings.length > 0 ? ["Where strands cross, the broken one lies under."] : []),
    ...(scene.cables.length > 0 ? ["Of two groups that cross, the broken one lies behind the other."] : []),
    ...(scene.fields.length > 0 ? ["Dots along the motif are the sides of its panel."] : []),
    ...(scene.unreachable.length > 0
      ? ["Scattered dots at the edges: the least side margin, no motif there."]
      : []),
  ];
}
