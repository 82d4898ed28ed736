import { cordStitchMm, groundStitch } from "../../cloth/gauge.ts";
import type { Garment } from "../../garment/garment.ts";
import type { CordMotif, Motif } from "../../motif/motif.ts";
import { partOf } from "../../safety/body-part.ts";
import { isForbidden, mostLoopMm } from "../../safety/cord-rules.ts";
import { wearerWords } from "../../safety/wearer-words.ts";
import { placedMotifs } from "../enumerate.ts";
import { looksOf } from "../looks.ts";
import { keepsLoop, loopMm } from "../loop.ts";
import type { NamedRule } from "./rule.ts";

/** What a fit has to keep because of who will wear the garment; nothing where that rules nothing out. */
export function wearerRules(garment: Garment): readonly NamedRule[] {
  const { wearer } = garment;
  const forbidden = forbiddenWords(garment);
  const words = [
    ...forbidden,
    ...placedMotifs(garment).flatMap((motif) => loopWords(garment, motif, forbidden.length > 0)),
  ];
  if (!wearer || words.length === 0) return [];
  return [
    {
      rule: wearer.path.join("."),
      path: wearer.path,
      words: `for ${wearerWords(wearer)} ${words.join("; ")}`,
      lift: ({ wearer: _, ...others }) => others,
    },
  ];
}

const forbiddenWords = (garment: Garment): readonly string[] =>
  garment.placements
    .filter((placement) => isForbidden(garment, placement))
    .map(({ motif, piece, to }) =>
      partOf(garment.pieces.find(({ name }) => name === piece)!).part === "back"
        ? `${motif} may not go up to ${to} on ${piece}, because no cord may lie at the back of the neck`
        : `no cord may lie on ${piece}, and ${motif} does`,
    );

/** @param onlyBroken leave out a limit that some look keeps */
function loopWords(garment: Garment, motif: Motif, onlyBroken: boolean): readonly string[] {
  const most = mostLoopMm(garment, motif.name);
  if (most === undefined || motif.kind !== "cord") return [];
  const smallest = smallestLoopMm(garment, motif);
  const asks = `a loop of ${motif.name} may be ${most} mm round at most, cord and cloth together`;
  if (!keepsLoop(smallest, most)) return [`${asks}, and its smallest would be ${Math.ceil(smallest)} mm`];
  return onlyBroken ? [] : [asks];
}

/** How far round the largest loop of a motif is in the look in which it is smallest; 0 where it has no look at all. */
function smallestLoopMm({ gauge, weights }: Garment, motif: CordMotif): number {
  const stitch = groundStitch(gauge);
  // The counts nearest to the lower limit of ease are the fewest that it allows.
  const fewest: CordMotif = { ...motif, ease: { ...motif.ease, prefer: motif.ease.from } };
  const largest = looksOf(fewest, gauge, weights, 1).map(({ segments }) =>
    Math.max(...segments.map((segment) => loopMm(segment, stitch, cordStitchMm(gauge.cord!)))),
  );
  return largest.length === 0 ? 0 : Math.min(...largest);
}
