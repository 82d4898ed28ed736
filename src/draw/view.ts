import { otherSide } from "../cloth/carriage.ts";
import type { Side } from "../garment/garment.ts";
import { listed } from "../report/words.ts";
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

/** What the side that is seen means for left and right, and for what lies on the other side. */
export function sightWords(scene: Scene, view: View): string {
  const cables = [...new Set(scene.cables.map(({ motif }) => motif))];
  const seen = view === "worn" && scene.worn === "far" ? "front" : "back";
  // A piece of cables alone needs no words for it: how they lie is told by the legend.
  const through =
    cables.length > 0 && scene.strands.length > 0
      ? `; ${listed(cables)} shows on the knit side, this is its ${seen}`
      : "";
  if (view === "knitter") return `the purl side, needles from left to right${through}`;
  return scene.worn === "facing"
    ? `the purl side is worn, so nothing is turned round${through}`
    : "the knit side is worn, so left and right change places";
}

/** The side of the picture at which the knitter's left or right lies. */
export const sideInSight = (side: Side, sight: Sight): Side => (sight.mirrored ? otherSide(side) : side);

/** The group of a cable's crossing that is nearer to whoever looks: from the far side it is the one in front there. */
export const nearerGroup = ({ over }: CableCrossing, sight: Sight): Side =>
  sight.mirrored ? over : otherSide(over);
