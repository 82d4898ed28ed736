import type { NeckStation, Station } from "../../garment/garment.ts";
import { distanceToChord } from "../flatten.ts";
import { keptPoints } from "../simplify.ts";
import type { Slab } from "./slabs.ts";

/** Distances from the centre line at one height, in mm; below 0 where an edge lies beyond the centre. */
export interface Level {
  readonly heightMm: number;
  readonly leftMm: number;
  readonly rightMm: number;
  /** Where there is a neck: to its edges. */
  readonly neck?: { readonly leftMm: number; readonly rightMm: number };
}

/** The edges height by height, twice at one height where they make a step. */
export const profileOf = (slabs: readonly Slab[], centre: number): readonly Level[] =>
  slabs.flatMap(({ fromMm, toMm, parts }) => {
    const [first, second] = parts;
    const at = (end: "low" | "high", heightMm: number): Level => ({
      heightMm,
      leftMm: centre - first!.left[end],
      rightMm: (second ?? first)!.right[end] - centre,
      ...(second && { neck: { leftMm: centre - first!.right[end], rightMm: second.left[end] - centre } }),
    });
    return [at("low", fromMm), at("high", toMm)];
  });

/**
 * The edges as stations, as few as keep both within the tolerance; a full width where the two sides never differ by
 * more than twice `alikeMm`.
 */
export function outlineOf(
  profile: readonly Level[],
  toleranceMm: number,
  alikeMm: number,
): readonly Station[] {
  const isSymmetrical = profile.every(({ leftMm, rightMm }) => Math.abs(leftMm - rightMm) <= 2 * alikeMm);
  const kept = simplified(profile, toleranceMm, [({ leftMm }) => leftMm, ({ rightMm }) => rightMm]);
  return kept.map(({ heightMm, leftMm, rightMm }) =>
    isSymmetrical
      ? { heightMm: tidy(heightMm), widthMm: tidy(leftMm + rightMm) }
      : { heightMm: tidy(heightMm), leftMm: tidy(leftMm), rightMm: tidy(rightMm) },
  );
}

export function neckOf(profile: readonly Level[], toleranceMm: number): readonly NeckStation[] {
  const open = profile.flatMap(({ heightMm, neck }) =>
    neck ? [{ heightMm, halfMm: (neck.leftMm + neck.rightMm) / 2 }] : [],
  );
  return simplified(open, toleranceMm, [({ halfMm }) => halfMm]).map(({ heightMm, halfMm }) => ({
    heightMm: tidy(heightMm),
    widthMm: tidy(2 * halfMm),
  }));
}

function simplified<At extends { readonly heightMm: number }>(
  levels: readonly At[],
  toleranceMm: number,
  edges: readonly ((level: At) => number)[],
): readonly At[] {
  if (levels.length === 0) return [];
  const off = (index: number, from: number, to: number): number =>
    Math.max(
      ...edges.map((edge) => {
        const at = (level: number): [number, number] => [edge(levels[level]!), levels[level]!.heightMm];
        return distanceToChord(at(index), at(from), at(to));
      }),
    );
  const kept = keptPoints(levels.length, toleranceMm, off).map((index) => levels[index]!);
  // Of several at one height the first is where the edge comes from and the last where it goes on.
  return kept.filter(
    ({ heightMm }, index) => heightMm !== kept[index - 1]?.heightMm || heightMm !== kept[index + 1]?.heightMm,
  );
}

/** To a thousandth of a millimetre, so that a drawn 20 cm reads as 200 mm. */
const tidy = (mm: number): number => Math.round(mm * 1000) / 1000 + 0;
