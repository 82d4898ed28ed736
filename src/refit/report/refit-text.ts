import type { Fit } from "../../fit/fit.ts";
import { counted, inCentimetres, listed, signedPercent } from "../../report/words.ts";
import { wrap } from "../../report/wrap.ts";
import { buildSheet } from "../../sheet/build-sheet.ts";
import type { DoLine } from "../../sheet/document/document.ts";
import { rowsText } from "../../sheet/text/rows-text.ts";
import type { CordBalance } from "../cord-balance.ts";
import { outcomeOf } from "../outcome.ts";
import type { Progress, Reading } from "../progress.ts";
import type { Refitted } from "../refit.ts";
import { changesOf } from "./changes.ts";
import type { PlacedObstacles } from "./refit-json.ts";
import { blocksAbove } from "./rows-above.ts";

/** What was measured, what changes and the sheet from the present row on, at most `width` characters a line. */
export function refitText(before: Fit, result: Refitted, width: number): string {
  const { fit, progress, cords } = result;
  const [piece] = buildSheet(fit).pieces;
  return [
    ...progressLines(fit.garment.title, progress, width),
    ...section("What changes", changeWords(before, fit), width),
    ...section("Where it will end", outcomeWords(result), width),
    ...section("Cord that is made", cords.map(cordWords), width),
    ...warningWords(result).flatMap((words) => wrap(words, width)),
    ...wrap(
      `Only ${progress.piece} is fitted anew; what is knitted of it stays as it is, and so do the other pieces.`,
      width,
    ),
    "",
    ...blocksAbove(fit, piece!, progress.row).flatMap(({ title, here, shaping, lines }) => [
      ...heading(title, "-"),
      ...shaping.flatMap((words) => wrap(`- ${words}`, width, 2)),
      ...(shaping.length > 0 ? [""] : []),
      ...(here ? hereText(here, width) : []),
      ...(lines.length > 0 ? rowsText(lines, width) : []),
      "",
    ]),
  ].join("\n");
}

const hereText = ({ row, phrases, running }: DoLine, width: number): readonly string[] => [
  ...wrap(`row ${row}, if it is not done yet: ${phrases.join("; ")}`, width, 8),
  ...(running.length > 0 ? wrap(`${" ".repeat(8)}[${running.join("; ")}]`, width, 8) : []),
];

/** Where the piece and its marks come as it was fitted anew, a fact a line. */
export function outcomeWords(result: Refitted): readonly string[] {
  const { length, marks } = outcomeOf(result);
  return [
    `${result.progress.piece} will be ${inCentimetres(length.mm)} long (within ${inCentimetres(length.withinMm)}), planned ${inCentimetres(length.plannedMm)}`,
    ...marks.filter(({ name }) => name !== "bind-off").map((mark) => `${mark.name} at ${reading(mark)}`),
  ];
}

/** What is done otherwise than by the sheet before. */
export function changeWords(before: Fit, now: Fit): readonly string[] {
  const changes = changesOf(before, now);
  return changes.length > 0 ? changes : ["nothing: go on by the sheet you have"];
}

/** What a knitter should know of a refit before following it. */
export const warningWords = ({ strained, unlike, unsteady }: Refitted): readonly string[] => [
  ...(unsteady
    ? [
        "No fit of the rest is steady for all that the measurement leaves open; this one keeps its limits at the gauge as measured.",
      ]
    : []),
  ...strained.map(
    ({ motif, segment, ease }) =>
      `${motif}: the repeat in hand is finished as it was begun; the ease of its ${segment} is ${signedPercent(ease)} at this gauge, beyond its limits.`,
  ),
  ...unlike.map(
    (motif) => `${motif} differs now from the other pieces that have it; they are left as they were.`,
  ),
];

/** Why the rest cannot be fitted, and what would help. */
export function noRefitText(
  title: string,
  progress: Progress,
  obstacles: PlacedObstacles,
  width: number,
): string {
  return [
    ...progressLines(title, progress, width),
    ...noRefitWords(progress.piece, obstacles).flatMap((words) =>
      wrap(words, width, words.startsWith(" ") ? 4 : 0),
    ),
  ].join("\n");
}

/** The same without what was measured, a sentence or a rule each. */
export const noRefitWords = (
  piece: string,
  { isLongEnough, conflict, rowsMore, rowsFewer }: PlacedObstacles,
): readonly string[] => [
  isLongEnough
    ? `${piece} is as long as its outline already, so there is nothing left to fit: end it as the sheet says, or unravel some rows.`
    : "The rest cannot be fitted so that the motif ends whole at its mark and every limit is kept.",
  ...(conflict.length > 0 ? ["These rules cannot all be kept, whatever else gives way:"] : []),
  ...conflict.map(
    ({ words, place }) => `  - ${words} ${place ? `(line ${place.line})` : "(not stated in the file)"}`,
  ),
  ...helpWords(rowsMore, rowsFewer),
];

const helpWords = (more: number | undefined, fewer: number | undefined): readonly string[] => {
  const ways = [
    ...(more === undefined ? [] : [`${counted(more, "row")} longer`]),
    ...(fewer === undefined ? [] : [`${counted(fewer, "row")} shorter`]),
  ];
  return ways.length === 0
    ? []
    : [`If the piece could be ${ways.join(" or ")} than it may, the motif could end whole.`];
};

function progressLines(title: string, progress: Progress, width: number): readonly string[] {
  const { piece, row } = progress;
  return [
    ...heading(`${title}: ${piece} at row ${row}`, "="),
    ...section("So far", soFarWords(progress), width),
  ];
}

/** The gauge so far and where the piece and its marks would come at that rate, a fact a line. */
export const soFarWords = ({ rowHeight, stitchWidth, length, marks }: Progress): readonly string[] => [
  `a row is ${smallReading(rowHeight)}`,
  `a stitch is ${smallReading(stitchWidth)}`,
  `knitted on as it stands, it would end at ${reading(length)}`,
  ...marks
    .filter(({ name }) => name !== "bind-off")
    .map((mark) => `${mark.name} would come at ${reading(mark)}`),
];

const smallReading = ({ mm, withinMm, plannedMm }: Reading): string =>
  `${mm.toFixed(2)} mm (within ${withinMm.toFixed(2)}), planned ${plannedMm.toFixed(2)} mm`;

const reading = ({ mm, withinMm, plannedMm }: Reading): string =>
  `${inCentimetres(mm)} (within ${inCentimetres(withinMm)}), planned ${inCentimetres(plannedMm)}`;

/** Whether a cord that is made lasts, and by how many cord stitches it does or does not. */
export function cordWords({ motif, strands, times, made, used, left }: CordBalance): string {
  const whose = `${motif} (${listed(strands)}${times > 1 ? `, each of ${times}` : ""})`;
  const stitches = (amount: number): string => counted(amount, "cord stitch", "cord stitches");
  return left >= 0
    ? `${whose}: ${stitches(made)} made, ${used} needed in all, ${left} left over`
    : `${whose}: TOO SHORT by ${stitches(-left)}: ${made} made, ${used} needed in all. Make a new cord, or knit on to this one before its end is needed.`;
}

const heading = (text: string, underline: string): readonly string[] => [
  text,
  underline.repeat(text.length),
  "",
];

const section = (title: string, lines: readonly string[], width: number): readonly string[] =>
  lines.length === 0
    ? []
    : [...heading(title, "-"), ...lines.flatMap((line) => wrap(`- ${line}`, width, 2)), ""];
