import { otherSide } from "../cloth/carriage.ts";
import type { Side } from "../garment/garment.ts";
import type { CableCrossing } from "./scene/cables.ts";
import type { Scene } from "./scene.ts";

/** From which side a piece is looked at. */
export type View = "knitter" | "worn";

export interface Sight {
  readonly label: string;
  /** Whether left and right change places on the picture. */
  readonly mirrored: boolean;
  /** -1 where left and right change places. */
  readonly sign: 1 | -1;
}

/** How a piece looks from a side: only what is worn on the far side of the bed is turned round to be seen as worn. */
export function sightOf(scene: Scene, view: View): Sight {
  const mirrored = view === "worn" && scene.worn === "far";
  const label = view === "knitter" ? "as the knitter sees it" : "as worn";
  return { label, mirrored, sign: mirrored ? -1 : 1 };
}

/** The side of the picture at which the knitter's left or right lies. */
export const sideInSight = (side: Side, sight: Sight): Side => (sight.mirrored ? otherSide(side) : side);

/** The group of a cable's crossing that is nearer to whoever looks: from the far side it is the one in front there. */
export const nearerGroup = ({ over }: CableCrossing, sight: Sight): Side =>
  sight.mirrored ? over : otherSide(over);
