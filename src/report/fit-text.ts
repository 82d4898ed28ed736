import { needleCount, rangeName } from "../cloth/bed.ts";
import { needlesAt } from "../cloth/counted-piece.ts";
import { prepareCord } from "../cord/preparation.ts";
import { type Fit, type FittedLook, type FittedPlacement, pieceOf } from "../fit/fit.ts";
import type { FittedSegment } from "../fit/looks.ts";
import type { Fits } from "../fit/solve.ts";
import type { Term } from "../fit/terms.ts";
import { workedSegments } from "../fit/worked-segments.ts";
import { timesMade } from "../garment/times-made.ts";
import { growingQuantity } from "../motif/growing-quantity.ts";
import { needsOf } from "../on-hand/needs.ts";
import { needWords } from "../on-hand/words.ts";
import { differences } from "./differences.ts";
import { gaugeRangeLines } from "./gauge-range-text.ts";
import { mirrorWords } from "./mirror-words.ts";
import { partWords } from "./part-words.ts";
import { phaseWords } from "./phase-words.ts";
import { cordLength, counted, listed, signedPercent } from "./words.ts";
import { wrap } from "./wrap.ts";

/** The best fit, what it gives up and its rivals, as text of at most `width` characters a line. */
export function fitText(result: Fits, width: number): string {
  const { fit } = result;
  const { title } = fit.garment;
  return [
    title,
    "=".repeat(title.length),
    "",
    ...fit.looks.flatMap((look) => [...lookLines(fit, look), ""]),
    ...fit.placements.flatMap((placement) => [
      ...placementLines(fit, placement).flatMap((line) => wrap(line, width, 4)),
      "",
    ]),
    ...onHandLines(fit, width),
    ...costLines(result),
    "",
    ...gaugeRangeLines(fit, width),
    "",
    ...rivalLines(result, width),
  ].join("\n");
}

export function lookLines(fit: Fit, look: FittedLook): readonly string[] {
  const { motif, values, segments } = look;
  const growing = growingQuantity(motif);
  const quantities = motif.quantities
    .filter((quantity) => quantity !== growing)
    .map(({ name, unit }) => `${name} ${counted(values.get(name)!, unit.slice(0, -1), unit)}`);
  const like = motif.like === undefined ? "" : ` (${motif.like})`;
  const head = `${motif.name}${like}${quantities.length > 0 ? `: ${listed(quantities)}` : ""}`;
  const grown = growing && fit.placements.find(({ motif: name }) => name === motif.name);
  return [head, ...(grown ? growthLines(growing.name, grown) : segmentLines(segments))];
}

function segmentLines(segments: readonly FittedSegment[]): readonly string[] {
  const nameWidth = Math.max(...segments.map(({ name }) => name.length));
  return segments.map(
    ({ name, pickup, needles, rows, ease, fixed }) =>
      `  ${name.padEnd(nameWidth)}  count ${String(pickup).padStart(2)}   ${counted(needles, "needle")} across, ${counted(rows, "row")} up, ${fixed === undefined ? `ease ${signedPercent(ease)}` : "stands off"}`,
  );
}

/** A growing motif section by section, from the bottom up. */
function growthLines(quantity: string, { sections }: FittedPlacement): readonly string[] {
  const worked = workedSegments(sections);
  return sections.flatMap(({ look, repeats }, index) => [
    `  ${quantity} ${look.values.get(quantity)} for ${counted(repeats, "repeat")}`,
    ...segmentLines(worked[index]!).map((line) => `  ${line}`),
  ]);
}

function placementLines(fit: Fit, placement: FittedPlacement): readonly string[] {
  const piece = pieceOf(fit, placement.piece);
  const { from, to } = fit.garment.placements[placement.index]!;
  const start = needlesAt(piece, 0);
  const { margins, change, part } = placement;
  const mirror = mirrorWords(placement.panel);
  const columns =
    placement.columns === 1
      ? ""
      : ` in ${placement.columns} columns${mirror ? ` (${mirror})` : ""}, ${counted(placement.gap, "needle")} between two`;
  const changed =
    change === 0 ? "" : ` (${counted(Math.abs(change), "row")} ${change > 0 ? "longer" : "shorter"})`;
  const cord = prepareCord(fit, placement);
  const times = timesMade(fit.garment, piece.name);
  return [
    `${piece.name}${times > 1 ? ` (make ${times})` : ""}: ${counted(piece.rows, "row")}${changed}, starts on ${counted(needleCount(start), "needle")}, ${rangeName(start)}`,
    `  ${placement.motif} from ${from} to ${to}: ${counted(placement.repeats, "repeat")}${columns}, row ${placement.firstRow} to row ${placement.lastRow}`,
    ...(part ? [`  ${placement.motif} ${partWords(placement)}`] : []),
    `  margins: ${margins.bottom} rows below, ${margins.top} above; ${margins.left} needles left, ${margins.right} right`,
    ...phaseWords(fit, placement).map((words) => `  ${placement.motif}: ${words}`),
    ...(cord
      ? [
          `  cord: make ${counted(cord.make, "cord stitch", "cord stitches")} (${cord.used} used, ${cord.make - cord.used} in reserve) = ${cord.passes} passes, ${cordLength(cord.lengthMm)}${times > 1 ? `, for each of the ${times}` : ""}`,
        ]
      : []),
  ];
}

/** What all pieces together take of what is on hand, one line each and an empty one; nothing where nothing is said. */
function onHandLines(fit: Fit, width: number): readonly string[] {
  const needs = needsOf(fit);
  if (needs.length === 0) return [];
  return [
    "On hand",
    ...needs.flatMap((need) => wrap(`  ${need.supply.of}: ${needWords(need)}`, width, 4)),
    "",
  ];
}

function costLines({ fit, proven, bound, amongSizes }: Fits): readonly string[] {
  const best = amongSizes ? "the best for all sizes together" : "nothing costs less";
  const certain = proven
    ? `proven: ${best}`
    : Number.isFinite(bound)
      ? `not proven: the best may cost as little as ${cost(bound)}`
      : "not proven";
  const head = `What it gives up: ${cost(fit.cost)} in all (${certain})`;
  const labels = fit.terms.map((term) => labelOf(fit, term));
  const width = Math.max(...labels.map((label) => label.length));
  return [
    head,
    ...fit.terms.map(
      ({ amount, unit, weight, cost: spent }, index) =>
        `  ${labels[index]!.padEnd(width)}  ${cost(spent).padStart(8)}   ${counted(amount, unit.replace(/s$/, ""), unit)}, weight ${weight}`,
    ),
  ];
}

const labelOf = (fit: Fit, { term, motif, placement, supply }: Term): string => {
  if (supply !== undefined) return `${term}, ${supply}`;
  const several = fit.placements.length > 1 || fit.looks.length > 1;
  if (!several) return term;
  return motif === undefined
    ? `${term}, ${fit.placements.find(({ index }) => index === placement)!.piece}`
    : `${term}, ${motif}`;
};

const cost = (value: number): string => value.toFixed(3);

function rivalLines(result: Fits, width: number): readonly string[] {
  const { fit, rivals, rivalsProven, amongSizes } = result;
  if (rivals.length === 0)
    return [
      rivalsProven
        ? "No other fit differs in a way one would notice."
        : "No other fit was found before the search ended.",
    ];
  return [
    `Next best${amongSizes ? " with what all sizes share" : ""}${rivalsProven ? "" : " (not proven)"}`,
    ...asCheapWords(fit, rivals).flatMap((words) => wrap(`  ${words}`, width, 2)),
    ...rivals.flatMap((rival) =>
      wrap(`  ${cost(rival.cost).padStart(8)}  ${differences(fit, rival).join(", ")}`, width, 12),
    ),
  ];
}

/** Why rivals that cost what the best fit does are not the best; nothing where all cost more. */
function asCheapWords(fit: Fit, rivals: readonly Fit[]): readonly string[] {
  const asCheap = rivals.filter((rival) => cost(rival.cost) === cost(fit.cost));
  if (asCheap.length === 0) return [];
  const why = asCheap.every((rival) => isPlainer(fit, rival))
    ? "the best is the one that changes the length less, then takes fewer repeats"
    : "any of them will do";
  return [`What costs ${cost(fit.cost)} is as cheap as the best; ${why}.`];
}

/** Whether a fit changes lengths by fewer rows in all, or by as many with fewer repeats. */
function isPlainer({ placements }: Fit, other: Fit): boolean {
  const [own, others] = [placements, other.placements].map((all) => ({
    rows: all.reduce((sum, { change }) => sum + Math.abs(change), 0),
    repeats: all.reduce((sum, { repeats }) => sum + repeats, 0),
  }));
  return own!.rows === others!.rows ? own!.repeats < others!.repeats : own!.rows < others!.rows;
}
