import type { Motif } from "./motif.ts";

/**
 * Which side of the cloth is worn. On a single bed the purl side faces the knitter: a laid cord lies on the side that
 * faces, so nothing is turned round; a transferred cable or a pattern is on the far, knit side, so left and right change places
 * (machine-knitting blog, "Visualizing knit cables 3", 3 Jan 2022).
 */
export const isMirroredAsWorn = (kind: Motif["kind"]): boolean => kind !== "cord";
