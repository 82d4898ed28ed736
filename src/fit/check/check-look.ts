import { allows } from "../../garment/allowed.ts";
import type { Garment } from "../../garment/garment.ts";
import type { BandMotif, CordMotif } from "../../motif/motif.ts";
import { keepsRule } from "../../motif/rules.ts";
import type { FittedLook, FittedSection } from "../fit.ts";
import { type Breach, breach, easeTolerance } from "./breach.ts";
import { stretchesOf } from "./stretch.ts";
import { numberOf, type WalkPoint, walk } from "./walk.ts";

/** Values allowed, rules kept, and for a cord every stretch between two hangings counted with its ease in limits. */
export const checkLook = (garment: Garment, look: FittedLook): readonly Breach[] => [
  ...checkValues(look),
  ...(look.motif.kind === "cord" ? checkCounts(garment, look.motif, look) : []),
];

/** Values allowed and rules kept. */
export function checkValues(look: FittedLook): readonly Breach[] {
  const { motif, values } = look;
  const breaches: Breach[] = [];
  for (const { name, allowed } of motif.quantities) {
    const value = values.get(name) ?? Number.NaN;
    if (!allows(allowed, value)) breaches.push(breach(`${motif.name}: ${name}`, `${value} is not allowed`));
  }
  for (const rule of motif.rules)
    if (!keepsRule(rule, values)) breaches.push(breach(`${motif.name}: ${rule.source}`, "is not kept"));
  if (motif.kind === "band") breaches.push(...checkBand(motif, look));
  return breaches;
}

/** A repeat that its card can hold, and rows that bring the carriage back to its yarns. */
function checkBand(
  { name, card, colours, stitches, repeat }: BandMotif,
  { values }: FittedLook,
): readonly Breach[] {
  const [wide, high] = [numberOf(stitches, values), numberOf(repeat, values)];
  const breaches: Breach[] = [];
  if (card !== undefined && card % wide !== 0)
    breaches.push(breach(name, `${wide} stitches do not divide a card of ${card}`));
  if (colours > 1 && high % 2 !== 0) breaches.push(breach(name, `colours change after ${high} rows`));
  return breaches;
}

/** Two repeats hold every stretch that more of them would. */
function checkCounts(garment: Garment, motif: CordMotif, look: FittedLook): readonly Breach[] {
  return checkStretches(garment, motif, [{ look, repeats: 2, joins: [] }]);
}

/**
 * Every stretch of cord over a run of sections: counted, with its ease as told and inside the motif's limits.
 *
 * @param concerns whether a stretch that ends at a point is looked at; all are unless stated
 */
export function checkStretches(
  garment: Garment,
  motif: CordMotif,
  sections: readonly FittedSection[],
  concerns: (to: WalkPoint, from: WalkPoint) => boolean = () => true,
): readonly Breach[] {
  const { ground, cord } = garment.gauge;
  if (!cord) return [breach("gauge.cord", "is missing")];
  const breaches: Breach[] = [];
  const stitchMm = cord.overMm / cord.stitches;
  const runs = sections.map(({ look: { values }, repeats }) => ({ values, repeats }));
  for (const { name, points } of walk(motif, runs).strands)
    for (const { from, to, needles, rows, counted: segment } of stretchesOf(sections, points)) {
      if (!concerns(to, from)) continue;
      const where = `${motif.name}, ${name}, row ${to.row}`;
      if (rows < 1 || !segment) {
        breaches.push(breach(where, `no count for ${needles} needles across and ${rows} rows up`));
        continue;
      }
      const straight = Math.hypot(
        (needles * ground.overMm) / ground.stitches,
        (rows * ground.overMm) / ground.rows,
      );
      const climb = segment.climbs * 2 * (Math.hypot(straight / 2, cord.thicknessMm ?? 0) - straight / 2);
      const ease = (segment.pickup * stitchMm) / (straight + climb) - 1;
      if (!Number.isInteger(segment.pickup) || segment.pickup < 1)
        breaches.push(breach(where, `${segment.pickup} cord stitches cannot be counted`));
      if (to.count !== undefined && segment.pickup !== to.count)
        breaches.push(breach(where, `${segment.pickup} cord stitches in a loop of ${to.count}`));
      const strays = ease < motif.ease.from - easeTolerance || ease > motif.ease.to + easeTolerance;
      if (to.count === undefined && strays)
        breaches.push(breach(where, `ease ${(100 * ease).toFixed(2)} % is outside its limits`));
      if (Math.abs(ease - segment.ease) > easeTolerance)
        breaches.push(breach(where, `ease ${segment.ease} is told where ${ease} is true`));
    }
  return breaches;
}
