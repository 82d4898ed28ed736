import { extname } from "node:path";
import { type Scene, sceneOf } from "../../draw/scene.ts";
import { chartsSvg } from "../../draw/svg.ts";
import { chartText } from "../../draw/text.ts";
import type { View } from "../../draw/view.ts";
import type { Fit } from "../../fit/fit.ts";
import { listed } from "../../report/words.ts";
import { warningsFor } from "../../safety/warnings.ts";
import { wordOption } from "../arguments.ts";
import { askedPieces } from "../asked-pieces.ts";
import { writesUnicode } from "../characters.ts";
import type { CommandInput, CommandRun } from "../command.ts";
import { deliver } from "../deliver.ts";
import { CommandError } from "../exit-codes.ts";
import { endWith, fittedFile } from "../fitted.ts";

const formats = ["svg", "png", "text"] as const;
type Format = (typeof formats)[number];

const viewNames = ["knitter", "worn", "both"] as const;

const leastColumns = 40;
const columnsInFile = 100;

const formatOfEnding: Readonly<Record<string, Format>> = { ".svg": "svg", ".png": "png", ".txt": "text" };

export const run: CommandRun = async (input) => {
  const format = formatFor(input);
  const views = viewsFor(input);
  const fitted = await fittedFile(input, "chart");
  if (!fitted.fit) return fitted.code;
  await deliver(input, await chartIn(format, scenesFor(input, fitted.fit), views, input));
  for (const words of warningsFor(fitted.fit)) input.terminal.say(words);
  return endWith(fitted, "chart", input);
};

/** What the option says, else what the output's ending says, else text on a terminal and SVG elsewhere. */
function formatFor({ options, terminal }: CommandInput): Format {
  const { output } = options;
  const asked = wordOption("format", options.format, formats);
  if (asked === "png" && typeof output !== "string")
    throw new CommandError("A PNG is no text, so it goes to a file.\nFor example: --output chart.png");
  if (asked) return asked;
  if (typeof output !== "string") return terminal.interactive ? "text" : "svg";
  const format = formatOfEnding[extname(output).toLowerCase()];
  if (format) return format;
  throw new CommandError(
    `${output} ends in none of ${listed(Object.keys(formatOfEnding))}, so the form is not clear. Add --format svg, png or text.`,
  );
}

const viewsFor = ({ options }: CommandInput): readonly View[] => {
  const asked = wordOption("view", options.view, viewNames) ?? "knitter";
  return asked === "both" ? ["knitter", "worn"] : [asked];
};

/** The piece that is asked for, or all of them in the order of the file. */
const scenesFor = ({ options }: CommandInput, fit: Fit): readonly Scene[] =>
  askedPieces(options.piece, fit).map((name) => sceneOf(fit, name));

async function chartIn(
  format: Format,
  scenes: readonly Scene[],
  views: readonly View[],
  { terminal, options }: CommandInput,
): Promise<string | Uint8Array> {
  if (format === "text") {
    const glyphs = writesUnicode(process.env) ? "braille" : "ascii";
    const columns = options.output === undefined ? Math.max(leastColumns, terminal.columns) : columnsInFile;
    return scenes
      .flatMap((scene) => views.map((view) => chartText(scene, { view, columns, glyphs })))
      .join("\n\n");
  }
  const svg = chartsSvg(scenes.map((scene) => views.map((view) => ({ scene, view }))));
  if (format === "svg") return svg.trimEnd();
  const { svgToPng } = await import("../../draw/png.ts");
  const picture = await svgToPng(svg);
  if ("problem" in picture) throw new CommandError(picture.problem);
  for (const note of picture.notes) terminal.say(note);
  return picture.png;
}
