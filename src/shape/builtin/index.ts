import type { ShapeDescription } from "../description.ts";
import { bagPanel } from "./bag-panel.ts";
import { blanket } from "./blanket.ts";
import { bodyBack } from "./body-back.ts";
import { bodyFront } from "./body-front.ts";
import { hat } from "./hat.ts";
import { raglanBack } from "./raglan-back.ts";
import { raglanFront } from "./raglan-front.ts";
import { raglanSleeve } from "./raglan-sleeve.ts";
import { scarf } from "./scarf.ts";
import { setInSleeve } from "./set-in-sleeve.ts";
import { sockLeg } from "./sock-leg.ts";
import { straightSleeve } from "./straight-sleeve.ts";
import { taperedSleeve } from "./tapered-sleeve.ts";

/** The shapes that come with the program, by name. */
export const BUILT_IN_SHAPES: ReadonlyMap<string, ShapeDescription> = new Map<string, ShapeDescription>([
  ["body front", bodyFront],
  ["body back", bodyBack],
  ["straight sleeve", straightSleeve],
  ["tapered sleeve", taperedSleeve],
  ["set-in sleeve", setInSleeve],
  ["raglan front", raglanFront],
  ["raglan back", raglanBack],
  ["raglan sleeve", raglanSleeve],
  ["scarf", scarf],
  ["blanket", blanket],
  ["hat", hat],
  ["sock leg", sockLeg],
  ["bag panel", bagPanel],
]);
