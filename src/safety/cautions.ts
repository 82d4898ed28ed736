import type { Garment } from "../garment/garment.ts";

/**
 * What to say of a garment that carries a cord. The limits are left to the standards themselves: they are revised,
 * and what is sold or worn where decides which of them holds.
 */
export function cautionsFor(garment: Garment): readonly string[] {
  const hasCord = garment.placements.some(
    ({ motif }) => garment.motifs.find(({ name }) => name === motif)?.kind === "cord",
  );
  if (!hasCord) return [];
  return [
    "A cord can catch and strangle. The file does not say who will wear this: for a child up to 14 years" +
      " keep every cord away from hood, neck and the back of the neck, leave no loop a finger can enter and" +
      " no free end, and fasten both ends inside.",
    "Before you knit for a child, check the limits in the current EN 14682 (Europe) and in ASTM F1816 and" +
      " 16 CFR 1120.3 (United States), and the rules where the child lives. This is not legal advice.",
  ];
}
