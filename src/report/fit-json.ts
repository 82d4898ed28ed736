import { prepareCord } from "../cord/preparation.ts";
import type { Place } from "../diagnostics/diagnostic.ts";
import type { Path } from "../diagnostics/path.ts";
import type { Fit, FittedLook, FittedPlacement, FittedSection } from "../fit/fit.ts";
import type { FittedSegment } from "../fit/looks.ts";
import type { NamedRule } from "../fit/refusal.ts";
import type { FitResult } from "../fit/solve.ts";
import type { Term } from "../fit/terms.ts";
import { timesMade } from "../garment/times-made.ts";
import { gaugeRangeToJson } from "./gauge-range-json.ts";
import { mirroredColumns } from "./mirror-words.ts";
import { cordToJson, needsToJson } from "./needs-json.ts";
import { madeByColumn } from "./part-words.ts";
import { roundTo } from "./rounding.ts";

/** A rule and where it stands in the file; a rule that a built-in motif brings stands nowhere. */
export type PlacedRule = NamedRule & { readonly place?: Place };

/** Rules with where they stand in the file. */
export const placedRules = (
  rules: readonly NamedRule[],
  locate: (path: Path) => Place | undefined,
): readonly PlacedRule[] =>
  rules.map((rule): PlacedRule => {
    const place = locate(rule.path);
    return place ? { ...rule, place } : rule;
  });

/**
 * The machine-readable answer of `fit`, format `evenrow-fit/1`. Costs and eases are rounded to six decimals,
 * spans to a ten-thousandth of a millimetre, cord lengths up to a tenth.
 *
 * @param conflict the rules that fail to meet, where nothing fits
 * @param steady what there is to know of a garment that has to be steady
 */
export function fitToJson(
  result: FitResult,
  elapsedMs: number,
  conflict: readonly PlacedRule[] = [],
  steady?: object,
): object {
  const common = { format: "evenrow-fit/1", status: result.status };
  const tail = {
    nodes: result.status === "fits" ? result.bestNodes : result.nodes,
    ...(steady && { steady }),
    elapsed_ms: Math.round(elapsedMs),
    ...(result.notes.length > 0 && { notes: result.notes }),
  };
  switch (result.status) {
    case "fits":
      return {
        ...common,
        proven: result.proven,
        cost: roundTo(result.fit.cost, 6),
        bound: roundTo(result.bound, 6),
        ...fitFields(result.fit),
        rivals: result.rivals.map((rival) => ({ cost: roundTo(rival.cost, 6), ...fitFields(rival) })),
        rivals_proven: result.rivalsProven,
        gauge_range: gaugeRangeToJson(result.fit),
        ...needsToJson(result.fit),
        ...tail,
      };
    case "does not fit":
      return {
        ...common,
        proven: true,
        conflict: conflict.map(({ rule, words, path, place }) => ({
          rule,
          words,
          path,
          ...(place && { line: place.line }),
        })),
        ...tail,
      };
    case "stopped":
      return { ...common, proven: false, reason: result.reason, ...tail };
  }
}

/** Looks, placements and terms of one fit. */
export function fitFields(fit: Fit): {
  readonly motifs: object;
  readonly placements: readonly object[];
  readonly terms: readonly object[];
} {
  return {
    motifs: Object.fromEntries(fit.looks.map((look) => [look.motif.name, lookFields(look)])),
    placements: fit.placements.map((placement) => placementFields(fit, placement)),
    terms: fit.terms.map((term) => termFields(fit, term)),
  };
}

export const lookFields = ({ values, segments }: Pick<FittedLook, "values" | "segments">): object => ({
  ...Object.fromEntries(values),
  segments: segments.map(segmentFields),
});

const segmentFields = ({ name, needles, rows, spanMm, pickup, ease, fixed }: FittedSegment): object => ({
  name,
  needles,
  rows,
  span_mm: roundTo(spanMm, 4),
  pickup,
  ease: roundTo(ease, 6),
  ...(fixed !== undefined && { fixed: true }),
});

/** A run of repeats with one look, from the bottom up; `joins` come to it from the run below. */
const sectionFields = ({ look, repeats, joins }: FittedSection): object => ({
  repeats,
  ...lookFields(look),
  ...(joins.length > 0 && { joins: joins.map(segmentFields) }),
});

function placementFields(fit: Fit, placement: FittedPlacement): object {
  const mirrored = mirroredColumns(placement.panel);
  const { part } = placement;
  const cord = prepareCord(fit, placement);
  const make = timesMade(fit.garment, placement.piece);
  return {
    piece: placement.piece,
    ...(make > 1 && { make }),
    motif: placement.motif,
    repeats: placement.repeats,
    ...(placement.sections.length > 1 && { sections: placement.sections.map(sectionFields) }),
    columns: placement.columns,
    ...(mirrored.length > 0 && { mirrored_columns: mirrored }),
    gap: placement.gap,
    rows_changed: placement.change,
    first_row: placement.firstRow,
    last_row: placement.lastRow,
    margins: placement.margins,
    ...(part && {
      part: {
        rows: part.rows,
        hangings: madeByColumn(part).reduce((sum, one) => sum + one, 0),
        last_row: part.lastRow,
      },
    }),
    ...(cord && { cord: cordToJson(cord) }),
  };
}

const termFields = (
  fit: Fit,
  { term, motif, placement, supply, amount, unit, weight, cost }: Term,
): object => ({
  term,
  ...(motif !== undefined && { motif }),
  ...(placement !== undefined && {
    piece: fit.placements.find(({ index }) => index === placement)!.piece,
    placement: placement + 1,
  }),
  ...(supply !== undefined && { supply }),
  amount: roundTo(amount, 6),
  unit,
  weight,
  cost: roundTo(cost, 6),
});
