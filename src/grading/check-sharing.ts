import { type Breach, breach, costTolerance } from "../fit/check/breach.ts";
import type { Fit, FittedLook } from "../fit/fit.ts";
import type { Share, SizeRange } from "../garment/garment.ts";

/**
 * Holds the fits of a range, size by size, against what the file says they share, and their costs against what the
 * engine says; by arithmetic of its own.
 */
export function checkSharing(
  { sizes, share }: SizeRange,
  fits: readonly Fit[],
  engineCost: number,
): readonly Breach[] {
  const total = fits.reduce((sum, { cost }) => sum + cost, 0);
  const breaches: Breach[] =
    Math.abs(total - engineCost) > costTolerance
      ? [breach("cost", `${total} over all sizes, ${engineCost} by the engine`)]
      : [];
  if (!share) return breaches;
  const [first, ...others] = fits;
  for (const look of first?.looks ?? [])
    for (const [index, fit] of others.entries()) {
      const { name } = look.motif;
      const where = `${name} in ${sizes[index + 1]!.name}`;
      const other = fit.looks.find(({ motif }) => motif.name === name);
      breaches.push(...(other ? differencesIn(share, look, other, where) : [breach("share", `no ${where}`)]));
    }
  return breaches;
}

function differencesIn(share: Share, first: FittedLook, other: FittedLook, where: string): readonly Breach[] {
  const quantities = share.quantities
    .filter((name) => first.values.get(name) !== other.values.get(name))
    .map((name) => `${name} ${other.values.get(name)} for ${where}, not ${first.values.get(name)}`);
  const [own, asFirst] = [countsOf(other), countsOf(first)];
  const counts = share.pickup && own !== asFirst ? [`counts ${own} for ${where}, not ${asFirst}`] : [];
  return [...quantities, ...counts].map((found) => breach("share", found));
}

const countsOf = ({ segments }: FittedLook): string =>
  segments.map(({ name, pickup }) => `${name} ${pickup}`).join(", ");
