import type { CountedPiece } from "../../cloth/counted-piece.ts";
import type { Garment, Supply, Yarn } from "../../garment/garment.ts";
import type { CordMotif } from "../../motif/motif.ts";
import { cordStitchMetres } from "../../yarn/cord-stitch.ts";
import { loopMetres } from "../../yarn/loop-length.ts";
import type { Range } from "../../yarn/range.ts";
import type { Fit, FittedPart, FittedSection } from "../fit.ts";
import { stretchesOf } from "./stretch.ts";
import { walk } from "./walk.ts";

/** What a garment takes, counted stitch by stitch from the pieces and the cords' own hangings. */
export interface Taken {
  readonly groundStitches: number;
  /** Reserve included. */
  readonly cordStitches: number;
  readonly cords: number;
}

/** @param withParts whether what is worked of unfinished repeats is counted */
export function countTaken(garment: Garment, fit: Fit, withParts: boolean): Taken {
  const made = new Map(garment.pieces.map(({ name, make = 1 }) => [name, make]));
  let [groundStitches, cordStitches, cords] = [0, 0, 0];
  for (const piece of fit.pieces) groundStitches += made.get(piece.name)! * stitchesOf(piece);
  for (const placed of fit.placements) {
    const motif = garment.motifs.find(({ name }) => name === placed.motif)!;
    if (motif.kind !== "cord") continue;
    for (let column = 0; column < placed.columns; column++)
      for (const used of usedInColumn(
        motif,
        placed.sections,
        withParts ? placed.part?.columns[column] : {},
      )) {
        cordStitches += made.get(placed.piece)! * Math.ceil(used * (1 + motif.reserve) - 1e-9);
        cords += made.get(placed.piece)!;
      }
  }
  return { groundStitches, cordStitches, cords };
}

function stitchesOf({ rows, left, right, neck }: CountedPiece): number {
  let stitches = 0;
  for (let row = 0; row < rows; row++) {
    stitches += left[row]! + right[row]!;
    if (neck && row >= neck.row) stitches -= neck.left[row - neck.row]! + neck.right[row - neck.row]!;
  }
  return stitches;
}

/**
 * Cord stitches of each cord, hanging after hanging, one more for each strand's first.
 *
 * @param more hangings of a further repeat, by strand
 */
function usedInColumn(
  motif: CordMotif,
  sections: readonly FittedSection[],
  more: FittedPart["columns"][number] = {},
): readonly number[] {
  const runs = sections.map(({ look: { values }, repeats }) => ({ values, repeats }));
  const last = runs.at(-1)!;
  const whole = walk(motif, runs).strands;
  const further = walk(motif, [...runs.slice(0, -1), { ...last, repeats: last.repeats + 1 }]).strands;
  const used = new Map(
    further.map(({ name, points }, strand) => {
      const hung = points.slice(0, whole[strand]!.points.length + (more[name] ?? 0));
      const stitches = stretchesOf(sections, hung).reduce(
        (sum, { counted }) => sum + (counted?.pickup ?? Number.NaN),
        1,
      );
      return [name, stitches];
    }),
  );
  const cords: number[] = [];
  for (const [one, other] of motif.folded) {
    cords.push(used.get(one)! + used.get(other)!);
    used.delete(one);
    used.delete(other);
  }
  return [...cords, ...used.values()];
}

/** How much of a supply that comes to, in its own unit. */
export function amountTaken({ gauge, yarn }: Garment, { of, unit }: Supply, taken: Taken): number {
  const { ground, cord } = gauge;
  if (of === "cord") return cord ? (taken.cordStitches * cord.overMm) / cord.stitches / 1000 : 0;
  const loop = loopMetres(ground);
  let amount = 0;
  if (of !== "cord yarn") {
    const each = surest(loop, yarn.ground, unit);
    amount += taken.groundStitches * (each.most + each.about / 10);
  }
  if (of !== "ground yarn" && cord && taken.cords > 0) {
    const each = surest(
      cordStitchMetres(cord.needles, loop, ground.overMm / ground.stitches / 1000),
      yarn.cord,
      unit,
    );
    // Two tails of 20 cm.
    const tails = 0.4 * taken.cords * (unit === "m" ? 1 : yarn.cord!.tex! / 1000);
    amount += taken.cordStitches * each.most + tails;
  }
  return amount;
}

/** Yarn in one stitch by the gauge, or by a weighed swatch where its half gram leaves less room. */
function surest(byGauge: Range, yarn: Yarn | undefined, unit: Supply["unit"]): Pick<Range, "about" | "most"> {
  const { tex, swatch } = yarn ?? {};
  const gramsPerMetre = (tex ?? Number.NaN) / 1000;
  if (swatch) {
    const { grams, stitches } = swatch;
    const room = (grams + 0.5 - Math.max(0, grams - 0.5)) / grams;
    if (room < (byGauge.most - byGauge.least) / byGauge.about) {
      const to = unit === "g" ? 1 : 1 / gramsPerMetre;
      return { about: (grams / stitches) * to, most: ((grams + 0.5) / stitches) * to };
    }
  }
  const to = unit === "m" ? 1 : gramsPerMetre;
  return { about: byGauge.about * to, most: byGauge.most * to };
}
