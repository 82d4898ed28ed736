import { clothKeys } from "./keys/cloth.ts";
import { fileKeys } from "./keys/file.ts";
import { motifKeys } from "./keys/motifs.ts";
import { pieceKeys } from "./keys/pieces.ts";
import { placeKeys } from "./keys/place.ts";

/**
 * Every key that a garment file may have, by the place where it may stand. The reader refuses what is not here, and
 * the names of pieces, marks, motifs, strands and quantities are the knitter's own.
 */
export const SECTIONS = {
  ...fileKeys,
  ...clothKeys,
  ...pieceKeys,
  ...motifKeys,
  ...placeKeys,
};

export type SectionName = keyof typeof SECTIONS;

/** The keys that may stand in one place. */
export const keysOf = (section: SectionName): readonly string[] => Object.keys(SECTIONS[section].keys);

/** Where a key may stand, for one that was written in the wrong place. */
export function homeOf(key: string): string | undefined {
  const homes = Object.values(SECTIONS).filter(({ keys }) => Object.hasOwn(keys, key));
  return homes.length === 1 || homes.length === 2 ? homes.map(({ where }) => where).join(" or ") : undefined;
}
