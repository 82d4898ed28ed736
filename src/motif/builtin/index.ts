import { braid } from "./braid.ts";
import { crossedCord } from "./crossed-cord.ts";
import { lattice } from "./lattice.ts";
import { crossedLozenge, lozenge } from "./lozenge.ts";
import { mirroredCables } from "./mirrored-cables.ts";
import { plaitedCable } from "./plaited-cable.ts";
import { singleCord } from "./single-cord.ts";
import { standingLoops } from "./standing-loops.ts";
import { transferredCable } from "./transferred-cable.ts";

/** Data as a garment file can hold it. */
export type Plain = string | number | boolean | null | readonly Plain[] | { readonly [key: string]: Plain };

/** The motifs that come with the program, by name, in the motif language and read like a knitter's own. */
export const BUILT_IN_MOTIFS: ReadonlyMap<string, Plain> = new Map<string, Plain>([
  ["crossed cord", crossedCord],
  ["transferred cable", transferredCable],
  ["single cord", singleCord],
  ["lozenge", lozenge],
  ["crossed lozenge", crossedLozenge],
  ["lattice", lattice],
  ["braid", braid],
  ["standing loops", standingLoops],
  ["mirrored cables", mirroredCables],
  ["plaited cable", plaitedCable],
]);
