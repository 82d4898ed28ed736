import type { Fit } from "../fit/fit.ts";
import { cableWarnings } from "../motif/cable-limits.ts";
import { counted } from "../report/words.ts";

/** What in a fit goes beyond common practice without being wrong. */
export const warningsFor = (fit: Fit): readonly string[] =>
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
