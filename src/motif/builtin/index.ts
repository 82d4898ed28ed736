import { crossedCord } from "./crossed-cord.ts";
import { transferredCable } from "./transferred-cable.ts";

/** Data as a garment file can hold it. */
export type Plain = string | number | boolean | null | readonly Plain[] | { readonly [key: string]: Plain };

/** The motifs that come with the program, by name, in the motif language and read like a knitter's own. */
export const BUILT_IN_MOTIFS: ReadonlyMap<string, Plain> = new Map<string, Plain>([
  ["crossed cord", crossedCord],
  ["transferred cable", transferredCable],
]);
