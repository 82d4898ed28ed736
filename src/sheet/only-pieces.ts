import type { Fit } from "../fit/fit.ts";

/** The part of a fit that is about some of its pieces, for a sheet of these alone. */
export const onlyPieces = (fit: Fit, names: readonly string[]): Fit => ({
  ...fit,
  pieces: fit.pieces.filter(({ name }) => names.includes(name)),
  placements: fit.placements.filter(({ piece }) => names.includes(piece)),
});
