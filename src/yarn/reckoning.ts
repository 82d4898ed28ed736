import { groundStitch } from "../cloth/gauge.ts";
import type { Gauge, Yarn, Yarns } from "../garment/garment.ts";
import { cordStitchMetres } from "./cord-stitch.ts";
import { gramsOf, metresOf } from "./count.ts";
import { loopMetres } from "./loop-length.ts";
import { type Range, times } from "./range.ts";
import { gramsByWeight } from "./weighed.ts";

/** Metres, grams or both: the one follows from the other where the yarn's tex is known. */
export interface YarnAmount<Value> {
  readonly metres?: Value;
  readonly grams?: Value;
}

/** Yarn in one stitch of the ground, or in one cord stitch. */
export interface Reckoning {
  /** From the gauge, by the loop-length constants. */
  readonly byGauge: YarnAmount<Range>;
  /** From the weight of a swatch, where the file gives it. */
  readonly byWeight?: YarnAmount<Range>;
  /** Which of the two leaves less room; usually the weight, unless the swatch weighs next to nothing. */
  readonly surer: "gauge" | "weight";
}

/** Casting on, tails, seams and waste, as a fraction of the ground's yarn: 5 to 10 % from memory; the greater. */
export const groundWaste = 0.1;

/** How much yarn is in one stitch, as well as that is known. */
export function reckon(gauge: Gauge, yarns: Yarns, which: keyof Yarns): Reckoning {
  const yarn = yarns[which];
  const byGauge = fromMetres(metresEach(gauge, which), yarn?.tex);
  const byWeight = yarn?.swatch && fromGrams(gramsByWeight(yarn.swatch, 1), yarn.tex);
  return {
    byGauge,
    ...(byWeight && { byWeight }),
    surer: byWeight && roomIn(byWeight) < roomIn(byGauge) ? "weight" : "gauge",
  };
}

/** What the surer way says. */
export const surely = ({ byGauge, byWeight, surer }: Reckoning): YarnAmount<Range> =>
  byWeight && surer === "weight" ? byWeight : byGauge;

/** So many metres of yarn, such as tails. */
export const plainYarn = (metres: number, tex: Yarn["tex"]): YarnAmount<number> => ({
  metres,
  ...(tex !== undefined && { grams: gramsOf(metres, tex) }),
});

/** The units in which all that is to be had at hand can be told; a cord's tails weigh nobody knows what without tex. */
export function knownUnits(gauge: Gauge, yarns: Yarns, which: keyof Yarns): readonly ("m" | "g")[] {
  const { metres, grams } = surely(reckon(gauge, yarns, which));
  const isWeighed = grams !== undefined && (which === "ground" || yarns.cord?.tex !== undefined);
  return [...(metres ? (["m"] as const) : []), ...(isWeighed ? (["g"] as const) : [])];
}

function metresEach(gauge: Gauge, which: keyof Yarns): Range {
  const loop = loopMetres(gauge.ground);
  if (which === "ground" || !gauge.cord) return loop;
  return cordStitchMetres(gauge.cord.needles, loop, groundStitch(gauge).widthMm / 1000);
}

/** How far apart the bounds are, as a fraction of the middle. */
function roomIn({ metres, grams }: YarnAmount<Range>): number {
  const { least, about, most } = (metres ?? grams)!;
  return (most - least) / about;
}

const fromMetres = (metres: Range, tex: Yarn["tex"]): YarnAmount<Range> => ({
  metres,
  ...(tex !== undefined && { grams: times(metres, gramsOf(1, tex)) }),
});

const fromGrams = (grams: Range, tex: Yarn["tex"]): YarnAmount<Range> => ({
  grams,
  ...(tex !== undefined && { metres: times(grams, metresOf(1, tex)) }),
});
