import { type CordPreparation, prepareCord } from "../../cord/preparation.ts";
import type { Fit } from "../../fit/fit.ts";
import { counted, inCentimetres, listed } from "../../report/words.ts";
import { paragraph, type Section } from "./document.ts";

/** The cords to make before a piece is cast on; undefined where none is laid. */
export function cordSection(fit: Fit): Section | undefined {
  const preparations = fit.placements
    .map((placement) => prepareCord(fit, placement))
    .filter((one) => one !== undefined);
  if (preparations.length === 0) return undefined;
  return {
    title: "Make the cord before you cast on",
    content: [
      "Knit the cord at the ground's tension, one way knitting and one way slipping: two passes make one cord" +
        " stitch. Leave a tail of about 20 cm of yarn at both ends. Too long is unravelled, too short spoils the" +
        " piece: where in doubt make more; about six times the length it decorates is usual for a crossed cord.",
      "The purl side faces you and is the right side: the cord lies on it, and the other side stays plain with a" +
        " slight print at each hanging. In every row hang the strands in the order of the sheet, or the crossings lie unevenly.",
      ...preparations.flatMap(preparationWords),
    ].map(paragraph),
  };
}

function preparationWords({ motif, piece, needles, cords }: CordPreparation): readonly string[] {
  return cords.map(({ times, make, used, passes, lengthMm, folded, strands }) => {
    const which = times > 1 ? `${times} cords alike, each` : "one cord";
    const whose = cords.length > 1 ? ` (${listed(strands)})` : "";
    const fold = folded
      ? ` Mark its middle with a thread: it is hung from there. The ${strands[1]} arm is the one that ends with the last round you knitted, so that it can be unravelled.`
      : "";
    return `${motif} on ${piece}${whose}: ${which} on ${counted(needles, "needle")}, ${counted(make, "cord stitch", "cord stitches")} = ${counted(passes, "pass", "passes")}, about ${inCentimetres(lengthMm)} (${used} used, ${make - used} in reserve).${fold}`;
  });
}
