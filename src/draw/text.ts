import { needleCount, rangeName } from "../cloth/bed.ts";
import { groundWords } from "../report/gauge-words.ts";
import { counted } from "../report/words.ts";
import { wrap } from "../report/wrap.ts";
import type { Scene } from "./scene.ts";
import type { GlyphSet } from "./terminal/glyph-sets.ts";
import { drawInTerminal, everything, rowsForWidth, type TerminalDrawing } from "./terminal.ts";
import { sightOf, sightWords, type View } from "./view.ts";

export interface TextChartOptions {
  readonly view: View;
  readonly columns: number;
  readonly glyphs: GlyphSet;
}

/** A piece that is much longer than wide is drawn narrower than the columns allow, so that it stays readable. */
const mostRows = 120;

/** The chart of one piece as plain text, headed and explained, as large as the columns allow. */
export function chartText(scene: Scene, { view, columns, glyphs }: TextChartOptions): string {
  const rows = rowsForWidth(scene, { columns, glyphs }, mostRows);
  const drawing = drawInTerminal(scene, { view, columns, rows, glyphs, layers: everything });
  return [
    ...headingOf(scene, view).flatMap((line) => wrap(line, columns)),
    "",
    ...drawing.lines,
    "",
    ...[...fieldLines(scene), ...shapingLines(scene), ...explanation(scene, view, drawing)].flatMap((line) =>
      wrap(line, columns, 2),
    ),
  ].join("\n");
}

function headingOf(scene: Scene, view: View): readonly string[] {
  const { ground } = scene.gauge;
  return [
    `${scene.title}: ${scene.piece}, ${sightOf(scene, view).label}`,
    sightWords(scene, view),
    `${groundWords(ground)}; starts on ${counted(needleCount(scene.needlesAtStart), "needle")}, ${rangeName(scene.needlesAtStart)}; ${counted(scene.rows, "row")}`,
  ];
}

const fieldLines = ({ fields }: Scene): readonly string[] =>
  fields.map(
    ({ motif, repeats, firstRow, lastRow, margins }) =>
      `${motif}: ${counted(repeats, "repeat")}, rows ${firstRow} to ${lastRow}; free: ${counted(margins.bottom, "row")} below, ${counted(margins.top, "row")} above, ${counted(margins.left, "needle")} at the left, ${margins.right} at the right.`,
  );

/** Several knitted rows may share a row of the drawing; the words name each. */
const shapingLines = ({ shapingPassages }: Scene): readonly string[] =>
  shapingPassages.map(({ block, words }) => `Shaping${block === "whole" ? "" : `, ${block}`}: ${words}.`);

function explanation(scene: Scene, view: View, { runs }: TerminalDrawing): readonly string[] {
  const rings = runs.flat().some(({ role, text }) => role === "strand" && text.includes("o"));
  return [
    "Row numbers count the rows knitted; < or > is the side at which the carriage rests. Dashes are marks.",
    ...(sightOf(scene, view).mirrored ? ["Left and right in these words are the knitter's at the bed."] : []),
    ...(scene.shapingPassages.length > 0
      ? ["+1 or -1 at an edge: so many stitches are added or taken away there, in working order."]
      : []),
    ...(rings ? ["o is a hanging, the number beside it its count."] : []),
    ...(!rings && scene.strands.length > 0
      ? ["Strands are hung where they turn; for their counts a larger drawing, or the sheet, has room."]
      : []),
    ...(scene.crossings.length > 0 ? ["Where strands cross, the broken one lies under."] : []),
    ...(scene.cables.length > 0 ? ["Of two groups that cross, the broken one lies behind the other."] : []),
    ...(scene.strands.some(({ hangings }) => hangings.some(({ loop }) => loop))
      ? ["Where a strand goes round in a ring it stands off as a loop."]
      : []),
    ...(scene.ladders.length > 0 ? ["Rungs are a needle out of work, a ladder."] : []),
    ...(scene.bands.length > 0 ? ["Frames are the repeats of a pattern."] : []),
    ...(scene.fields.length > 0 ? ["Dots along the motif are the sides of its panel."] : []),
    ...(scene.unreachable.length > 0
      ? ["Scattered dots at the edges: the least side margin, no motif there."]
      : []),
  ];
}
