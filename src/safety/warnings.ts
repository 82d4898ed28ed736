import type { Fit } from "../fit/fit.ts";
import { cableWarnings } from "../motif/cable-limits.ts";
import { counted } from "../report/words.ts";

/** What in a fit goes beyond common practice, or may not be what was meant, without being wrong. */
export const warningsFor = (fit: Fit): readonly string[] => [...lookWarnings(fit), ...emptyFields(fit)];

/** Where no margin limits what stays free, one repeat is as good as ten, and the field may stay all but empty. */
const emptyFields = (fit: Fit): readonly string[] =>
  fit.placements.flatMap(({ index, motif, piece, margins, firstRow, lastRow }) => {
    const { bottom, top } = fit.garment.placements[index]!.margins;
    const free = margins.bottom + margins.top;
    if (bottom.kind === "list" || top.kind === "list" || free <= lastRow - firstRow) return [];
    return [
      `${motif} leaves ${free} of the ${free + lastRow - firstRow} rows of its field on ${piece} free; for it to fill them, say how many may be: margins: { bottom: 2..20, top: 0..12 }, or prefer more repeats.`,
    ];
  });

const lookWarnings = (fit: Fit): readonly string[] =>
  fit.looks.flatMap(({ motif, trace, segments }) => {
    if (motif.kind === "cord")
      return segments
        .filter(({ fixed, ease }) => fixed !== undefined && ease < motif.ease.from)
        .map(
          ({ name, pickup }) =>
            `${motif.name}: ${counted(pickup, "cord stitch", "cord stitches")} are fewer than the ${name} has way to go, so it pulls the cloth together instead of standing off.`,
        );
    if (motif.kind !== "cable") return [];
    return cableWarnings(motif, trace).map(({ what, worked, limit }) =>
      what === "stitches"
        ? `${motif.name} crosses ${worked} stitches at once; more than ${limit} strain the needles unless the stitches have slack.`
        : `${motif.name} crosses again after ${counted(worked, "row")}; with these stitches ${limit} or more are usual.`,
    );
  });
