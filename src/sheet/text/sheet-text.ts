import { needleCount, rangeName } from "../../cloth/bed.ts";
import type { CordPreparation } from "../../cord/preparation.ts";
import { prepareCord } from "../../cord/preparation.ts";
import { type Fit, lookOf } from "../../fit/fit.ts";
import type { Garment } from "../../garment/garment.ts";
import { counted, inCentimetres, listed } from "../../report/words.ts";
import { wrap } from "../../report/wrap.ts";
import { cautionsFor } from "../../safety/cautions.ts";
import { estimateYarn } from "../../yarn/estimate.ts";
import type { Sheet, SheetPiece } from "../sheet.ts";
import { rowsText, workLines } from "./rows-text.ts";

/** The whole working sheet as text of at most `width` characters a line. */
export function sheetText(fit: Fit, sheet: Sheet, width: number): string {
  const { garment } = fit;
  return [
    ...heading(`${garment.title}: working sheet`, "="),
    ...section("Check first", gaugeLines(garment), width),
    ...section("Make the cord before you cast on", cordLines(fit), width),
    ...section("Yarn", yarnLines(fit), width),
    ...section("Caution", cautionsFor(garment), width),
    ...sheet.pieces.flatMap((piece) => pieceText(fit, piece, width)),
    ...section("Finish", finishLines(fit), width),
  ].join("\n");
}

const heading = (text: string, underline: string): readonly string[] => [
  text,
  underline.repeat(text.length),
  "",
];

function section(title: string, paragraphs: readonly string[], width: number): readonly string[] {
  if (paragraphs.length === 0) return [];
  return [...heading(title, "-"), ...paragraphs.flatMap((one) => wrap(`- ${one}`, width, 2)), ""];
}

function gaugeLines({ gauge, bed }: Garment): readonly string[] {
  const { ground, cord } = gauge;
  return [
    `Ground: ${counted(ground.stitches, "stitch", "stitches")} and ${counted(ground.rows, "row")} over ${inCentimetres(ground.overMm)}, washed and rested.`,
    ...(cord
      ? [
          `Cord: ${counted(cord.stitches, "cord stitch", "cord stitches")} over ${inCentimetres(cord.overMm)}, knitted on ${counted(cord.needles, "needle")}, measured in the middle of a piece of cord.`,
        ]
      : []),
    `Bed: ${counted(bed.needles, "needle")}; a few rows of waste yarn, row counter at 0 and carriage at the ${bed.carriage} before each piece, unless it says otherwise.`,
  ];
}

function cordLines(fit: Fit): readonly string[] {
  const preparations = fit.placements
    .map((placement) => prepareCord(fit, placement))
    .filter((one) => one !== undefined);
  if (preparations.length === 0) return [];
  return [
    "Knit the cord at the ground's tension, one way knitting and one way slipping: two passes make one cord" +
      " stitch. Leave a tail of about 20 cm of yarn at both ends. Too long is unravelled, too short spoils the" +
      " piece: where in doubt make more; about six times the length it decorates is usual for a crossed cord.",
    "The purl side faces you and is the right side: the cord lies on it, and the other side stays plain with a" +
      " slight print at each hanging. In every row hang the strands in the order of the sheet, or the crossings lie unevenly.",
    ...preparations.flatMap(preparationLines),
  ];
}

function preparationLines({ motif, piece, needles, cords }: CordPreparation): readonly string[] {
  return cords.map(({ times, make, used, passes, lengthMm, folded, strands }) => {
    const which = times > 1 ? `${times} cords alike, each` : "one cord";
    const whose = cords.length > 1 ? ` (${listed(strands)})` : "";
    const fold = folded
      ? ` Mark its middle with a thread: it is hung from there. The ${strands[1]} arm is the one that ends with the last round you knitted, so that it can be unravelled.`
      : "";
    return `${motif} on ${piece}${whose}: ${which} on ${counted(needles, "needle")}, ${counted(make, "cord stitch", "cord stitches")} = ${counted(passes, "pass", "passes")}, about ${inCentimetres(lengthMm)} (${used} used, ${make - used} in reserve).${fold}`;
  });
}

/** Rounded up, because yarn that runs out spoils the piece. */
function yarnLines(fit: Fit): readonly string[] {
  const { groundMetres, groundGrams, cordMetres, cordGrams } = estimateYarn(fit);
  const amount = (metres: number, grams: number | undefined): string =>
    `about ${Math.ceil(metres)} m${grams === undefined ? "" : `, ${Math.ceil(grams)} g`}`;
  const parts = [
    `ground ${amount(groundMetres, groundGrams)}`,
    ...(cordMetres > 0 ? [`cord ${amount(cordMetres, cordGrams)}`] : []),
  ];
  return [
    `By the gauge alone: ${listed(parts)}. Add a tenth or more for swatch, waste and tails; weigh the swatch to be surer.`,
  ];
}

function pieceText(fit: Fit, piece: SheetPiece, width: number): readonly string[] {
  const columns = (motif: string): number =>
    fit.placements.find((one) => one.piece === piece.piece && one.motif === motif)?.columns ?? 1;
  const start = piece.needlesAtStart;
  return [
    ...heading(piece.piece, "-"),
    ...wrap(
      `${counted(needleCount(start), "needle")}, ${rangeName(start)}; ${counted(piece.rowsInAll, "row")}; carriage at the ${piece.rows[0]!.carriage}.`,
      width,
    ),
    ...fit.placements
      .filter((placement) => placement.piece === piece.piece)
      .flatMap((placement) => wrap(ornamentLine(fit, placement.motif, placement.repeats), width)),
    "",
    ...rowsText(workLines(piece, columns), width),
    "",
  ];
}

function ornamentLine(fit: Fit, motif: string, repeats: number): string {
  const look = lookOf(fit, motif);
  const quantities = [...look.values].map(([name, value]) => `${name} ${value}`);
  const counts = look.segments.map(({ name, pickup }) => `${name} count ${pickup}`);
  return `${motif}: ${listed([...quantities, ...counts])}; ${counted(repeats, "repeat")}.`;
}

function finishLines(fit: Fit): readonly string[] {
  const cord = fit.looks.some(({ motif }) => motif.kind === "cord");
  return [
    ...(cord ? ["Take the cord's ends through to the back and sew them in; leave none hanging free."] : []),
    "Wash and rest the pieces as you did the swatch, then compare their width and length with the outline.",
  ];
}
