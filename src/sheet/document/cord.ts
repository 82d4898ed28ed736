import type { Markers } from "../../cord/cord.ts";
import { type CordPreparation, type PreparedCord, prepareCord } from "../../cord/preparation.ts";
import type { Fit } from "../../fit/fit.ts";
import { timesMade } from "../../garment/times-made.ts";
import { cordLength, counted, inCentimetres, listed, ordinal } from "../../report/words.ts";
import { type Content, type Fact, paragraph, type Section } from "./document.ts";

/** The cords to make before a piece is cast on; undefined where none is laid. */
export function cordSection(fit: Fit): Section | undefined {
  const preparations = fit.placements
    .map((placement) => prepareCord(fit, placement))
    .filter((one) => one !== undefined);
  if (preparations.length === 0) return undefined;
  return {
    title: "Make the cord before you cast on",
    content: [
      paragraph(
        "Knit the cord at the ground's tension, one way knitting and one way slipping: two passes make one cord" +
          " stitch. Too long is unravelled, too short spoils the piece: where in doubt make more; about six times" +
          " the length it decorates is usual for a crossed cord.",
      ),
      paragraph(
        "The purl side faces you and is the right side: the cord lies on it, and the other side stays plain with a" +
          " slight print at each hanging. In every row hang the strands in the order of the sheet, or the crossings lie unevenly.",
      ),
      ...preparations.flatMap((one) => preparationContent(one, timesMade(fit.garment, one.piece))),
    ],
  };
}

/** @param made how many of the piece are knitted */
function preparationContent(preparation: CordPreparation, made: number): readonly Content[] {
  const { motif, piece, cords } = preparation;
  return cords.flatMap((cord): readonly Content[] => {
    const { times, folded, strands, columns } = cord;
    const others = cords.some((one) => one.strands.join() !== strands.join());
    const named = [
      ...(others ? [listed(strands)] : []),
      ...(columns ? [`${columns.length === 1 ? "column" : "columns"} ${listed(columns.map(String))}`] : []),
    ];
    const whose = named.length > 0 ? ` (${named.join("; ")})` : "";
    const which = times > 1 ? `${times} cords alike, each of them so` : "one cord";
    const forEach = made > 1 ? `, and the same for each of the ${made} to be made` : "";
    const fold = folded
      ? ` Mark its middle with a thread of another colour: it is hung from there. The ${strands[1]} arm is the one that ends with the last round you knitted, so that it can be unravelled.`
      : "";
    return [
      paragraph(`${motif} on ${piece}${whose}: ${which}${forEach}.${fold}`),
      { kind: "facts", facts: cordFacts(preparation, cord) },
    ];
  });
}

function cordFacts(
  { needles, tails }: CordPreparation,
  { used, make, passes, lengthMm, markers }: PreparedCord,
): readonly Fact[] {
  return [
    { name: "Needles", value: String(needles) },
    { name: "Used", value: stitches(used) },
    { name: "Reserve", value: stitches(make - used) },
    {
      name: "Make",
      value: `${stitches(make)} = ${passes} passes, about ${cordLength(lengthMm)}`,
    },
    { name: "Tails", value: `${inCentimetres(tails.eachMm)} of yarn left at each end` },
    ...(markers.count > 0 ? [{ name: "Markers", value: markerWords(markers) }] : []),
  ];
}

const markerWords = ({ every, count, after }: Markers): string =>
  count === 1
    ? `lay in a thread of another colour after the ${ordinal(every)} cord stitch: ${every} before it, ${after} after it`
    : `lay in a thread of another colour after every ${ordinal(every)} cord stitch, ${count} threads: ${every} from each to the next, ${after} after the last`;

const stitches = (count: number): string => counted(count, "cord stitch", "cord stitches");
