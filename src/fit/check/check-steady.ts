import type { CordGauge, Garment, Gauge } from "../../garment/garment.ts";
import type { CordMotif } from "../../motif/motif.ts";
import type { Fit, FittedPlacement } from "../fit.ts";
import { type Breach, breach, easeTolerance } from "./breach.ts";
import { lengthTolerance } from "./check-piece.ts";
import { checkWearer } from "./check-wearer.ts";
import { strandsWorked, stretchesOf } from "./stretch.ts";

/**
 * A fit that has to be steady keeps its limits of ease, length and loops at every corner of what the swatch leaves open,
 * and its ease also between the corners, where a path that climbs may be shorter still.
 *
 * @param concerns whether a section of a placement is looked at; where its first one is not, neither are its loops
 */
export function checkSteady(garment: Garment, fit: Fit, concerns: Concerns = () => true): readonly Breach[] {
  const { gauge, steady } = garment;
  if (steady === undefined) return [];
  const gauges = cornersOf(gauge, steady);
  const whole = { ...fit, placements: fit.placements.filter((placed) => concerns(placed, 0)) };
  return [
    ...gauges.flatMap((one) => checkLengths({ ...garment, gauge: one }, fit)),
    ...gauges.flatMap((one) => checkWearer({ ...garment, gauge: one }, whole)),
    // A cord without a gauge is a breach of the look's own.
    ...(gauge.cord ? fit.placements.flatMap((placed) => checkEase(gauges, placed, concerns)) : []),
  ].map(({ rule, found }) => breach(`${rule}, steady`, found));
}

type Concerns = (placed: FittedPlacement, section: number) => boolean;

/** All gauges in which each count is off by as much as it may be, one way or the other. */
function cornersOf({ ground, cord }: Gauge, share: number): readonly Gauge[] {
  const off = {
    stitches: ground.within?.stitches ?? 1 / (4 * ground.stitches),
    rows: ground.within?.rows ?? 1 / (4 * (ground.rowsCounted?.rows ?? ground.rows)),
  };
  const signs = [-share, share];
  return signs.flatMap((across) =>
    signs.flatMap((up) =>
      signs.map((along) => ({
        ground: {
          ...ground,
          stitches: ground.stitches * (1 + across * off.stitches),
          rows: ground.rows * (1 + up * off.rows),
        },
        ...(cord && {
          cord: { ...cord, stitches: cord.stitches * (1 + along * (cord.within ?? 1 / (4 * cord.stitches))) },
        }),
      })),
    ),
  );
}

function checkLengths({ gauge, pieces }: Garment, fit: Fit): readonly Breach[] {
  const rowMm = gauge.ground.overMm / gauge.ground.rows;
  return fit.pieces.flatMap(({ name, rows }) => {
    const piece = pieces.find((one) => one.name === name)!;
    if (!piece.limitsLength) return [];
    const away = rows * rowMm - piece.outline.at(-1)!.heightMm;
    return away > piece.growMm + lengthTolerance || away < -piece.shrinkMm - lengthTolerance
      ? [breach(name, `comes out ${away.toFixed(1)} mm off where a row is ${rowMm.toFixed(3)} mm high`)]
      : [];
  });
}

function checkEase(gauges: readonly Gauge[], placed: FittedPlacement, concerns: Concerns): readonly Breach[] {
  const { sections, piece } = placed;
  const motif = sections[0]?.look.motif;
  if (motif?.kind !== "cord") return [];
  return strandsWorked(placed).flatMap(({ name, points }) =>
    stretchesOf(sections, points).flatMap(({ to, counted }) => {
      if (!counted || to.count !== undefined || !concerns(placed, to.run)) return [];
      const [least, most] = easeOver(gauges, counted);
      return keeps(motif, least, most)
        ? []
        : [
            breach(
              `${motif.name} on ${piece}, ${name}, row ${to.row}`,
              `ease from ${(100 * least).toFixed(2)} % to ${(100 * most).toFixed(2)} % is outside its limits`,
            ),
          ];
    }),
  );
}

const keeps = ({ ease }: CordMotif, least: number, most: number): boolean =>
  least >= ease.from - easeTolerance && most <= ease.to + easeTolerance;

interface Counted {
  readonly needles: number;
  readonly rows: number;
  readonly climbs: number;
  readonly pickup: number;
}

function easeOver(
  gauges: readonly Gauge[],
  { needles, rows, climbs, pickup }: Counted,
): readonly [least: number, most: number] {
  const lines = gauges.map(({ ground }) =>
    Math.sqrt(
      ((needles * ground.overMm) / ground.stitches) ** 2 + ((rows * ground.overMm) / ground.rows) ** 2,
    ),
  );
  const cords = gauges.map(({ cord }) => pickup * lengthOf(cord!));
  const thick = gauges[0]!.cord!.thicknessMm ?? 0;
  const path = (line: number): number => line + climbs * (Math.sqrt(line ** 2 + 4 * thick ** 2) - line);
  const longest = Math.max(...lines.map(path));
  const shortest = lowest(path, Math.min(...lines), Math.max(...lines));
  return [Math.min(...cords) / longest - 1, Math.max(...cords) / shortest - 1];
}

const lengthOf = ({ overMm, stitches }: CordGauge): number => overMm / stitches;

/** The least value of a convex function between two ends: the third of the stretch in which it cannot be is cut off. */
function lowest(value: (at: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let cut = 0; cut < 100; cut++) {
    const third = (high - low) / 3;
    if (value(low + third) <= value(high - third)) high -= third;
    else low += third;
  }
  return Math.min(value(from), value(to), value((low + high) / 2));
}
