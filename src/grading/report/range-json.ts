import { fitFields, lookFields } from "../../report/fit-json.ts";
import { needsToJson } from "../../report/needs-json.ts";
import { roundTo } from "../../report/rounding.ts";
import { type Dropped, type FittedSize, givenUp, type RangeFits, type RangeResult } from "../range-result.ts";
import { type SharedLook, sharedLook } from "../shared-look.ts";
import { printed } from "../table/line.ts";
import { type Table, tableOf } from "../table/table.ts";
import type { SizeConflict } from "./no-range-text.ts";

/**
 * The machine-readable answer of `fit` for a file with sizes, format `evenrow-fit/1`. `motifs` is what all sizes share;
 * what each size has, `sizes` tells in the shape of a single fit, and `placements` and `terms` tell once more in one
 * list with the size's name. Rounded as a single fit is.
 *
 * @param conflicts the rules that sizes by themselves cannot keep, where not every size fits
 */
export function rangeToJson(
  result: RangeResult,
  elapsedMs: number,
  conflicts: readonly SizeConflict[] = [],
): object {
  const common = { format: "evenrow-fit/1", status: result.status };
  const tail = {
    nodes: result.status === "fits" ? result.bestNodes : result.nodes,
    elapsed_ms: Math.round(elapsedMs),
    ...(result.notes.length > 0 && { notes: result.notes }),
  };
  switch (result.status) {
    case "fits":
      return { ...common, ...fitsFields(result), ...tail };
    case "does not fit":
      return {
        ...common,
        proven: true,
        misfits: result.misfits,
        without_any_of: result.freeing,
        clash: result.clash,
        conflict: conflicts.flatMap(({ size, rules }) =>
          rules.map(({ rule, words, path, place }) => ({
            size,
            rule,
            words,
            path,
            ...(place && { line: place.line }),
          })),
        ),
        ...tail,
      };
    case "stopped":
      return { ...common, proven: false, reason: result.reason, ...tail };
  }
}

function fitsFields(result: RangeFits): object {
  const { range, sizes, cost, bound, proven, rivals, rivalsProven, dropping } = result;
  const looks = sizes[0]!.fit.looks.flatMap((look) => sharedLook(range.share, look) ?? []);
  return {
    proven,
    cost: roundTo(cost, 6),
    bound: roundTo(bound, 6),
    motifs: motifsToJson(looks),
    placements: sizes.flatMap((size) => withSize(size, "placements")),
    terms: sizes.flatMap((size) => withSize(size, "terms")),
    sizes: sizes.map(sizeToJson),
    table: tableToJson(tableOf(sizes, range.share)),
    dropping: dropping.map(droppedToJson),
    rivals: rivals.map((rival) => ({
      cost: roundTo(rival.cost, 6),
      motifs: motifsToJson(rival.looks),
      sizes: rival.fits.map((fit, index) => ({
        size: sizes[index]!.name,
        cost: roundTo(fit.cost, 6),
        ...fitFields(fit),
      })),
    })),
    rivals_proven: rivalsProven,
  };
}

const withSize = ({ name, fit }: FittedSize, list: "placements" | "terms"): readonly object[] =>
  fitFields(fit)[list].map((one) => ({ size: name, ...one }));

function sizeToJson(size: FittedSize): object {
  const { name, fit, alone } = size;
  const more = givenUp(size);
  return {
    size: name,
    cost: roundTo(fit.cost, 6),
    ...(alone && { alone_cost: roundTo(alone.cost, 6) }),
    ...(more !== undefined && { for_all: roundTo(Math.max(0, more), 6) }),
    ...fitFields(fit),
    ...needsToJson(fit),
  };
}

/** Of a look that is shared in part only what is shared. */
const motifsToJson = (looks: readonly SharedLook[]): object =>
  Object.fromEntries(
    looks.map(({ motif, values, segments, whole }) => [
      motif.name,
      whole
        ? lookFields({ values, segments: segments ?? [] })
        : {
            ...Object.fromEntries(values),
            ...(segments && { segments: segments.map(({ name, pickup }) => ({ name, pickup })) }),
          },
    ]),
  );

const tableToJson = (table: Table): readonly object[] =>
  table.flatMap(({ piece, motif, placement, lines }) =>
    lines.map((line) => ({
      ...(piece !== undefined && { piece }),
      ...(motif !== undefined && { motif }),
      ...(placement !== undefined && { placement: placement + 1 }),
      quantity: line.quantity,
      unit: line.unit,
      values: line.values.map((value) => value ?? null),
      printed: printed(line),
    })),
  );

const droppedToJson = ({ size, gain, proven, looks }: Dropped): object => ({
  size,
  gain: roundTo(gain, 6),
  proven,
  ...(looks && { motifs: motifsToJson(looks) }),
});
