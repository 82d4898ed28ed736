import type { NeckDescription } from "../description.ts";
import { backNeck } from "./back.ts";
import { boatNeck } from "./boat.ts";
import { crewNeck } from "./crew.ts";
import { scoopNeck } from "./scoop.ts";
import { squareNeck } from "./square.ts";
import { vNeck } from "./v.ts";

/** The necklines that a shape may have, by name. */
export const NECKS: ReadonlyMap<string, NeckDescription> = new Map<string, NeckDescription>([
  ["crew", crewNeck],
  ["V", vNeck],
  ["scoop", scoopNeck],
  ["square", squareNeck],
  ["boat", boatNeck],
  ["back", backNeck],
]);
