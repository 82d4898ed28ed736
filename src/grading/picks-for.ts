import type { Fit, FittedLook, FittedPlacement, FittedSection } from "../fit/fit.ts";
import type { Layout } from "../fit/layouts.ts";
import type { Look } from "../fit/looks.ts";
import type { Prepared } from "../fit/prepare.ts";
import { growingQuantity } from "../motif/growing-quantity.ts";

/** The options of prepared choices that show what a fit shows: its looks, repeats, columns, gaps and changes of length. */
export function picksFor(fit: Fit, { choices: { looks, layouts } }: Prepared): readonly number[] {
  return [
    ...looks.map((ofMotif) =>
      ofMotif.findIndex((look) =>
        fit.looks.some((fitted) => fitted.motif.name === look.motif.name && looksLike(look, fitted)),
      ),
    ),
    ...layouts.map((ofPlacement, index) =>
      ofPlacement.findIndex((layout) => liesLike(layout, fit.placements[index]!)),
    ),
  ];
}

/** What a growing motif is told by is a whole course, so what it changes on the way tells nothing. */
function looksLike(look: Look, fitted: FittedLook): boolean {
  const growing = growingQuantity(look.motif)?.name;
  const sameValues = [...look.values].every(
    ([name, value]) => name === growing || fitted.values.get(name) === value,
  );
  return sameValues && (growing !== undefined || countsOf(look) === countsOf(fitted));
}

const countsOf = ({ segments }: Pick<Look, "segments">): string =>
  segments.map(({ name, pickup }) => `${name} ${pickup}`).join();

const liesLike = (layout: Layout, placed: FittedPlacement): boolean =>
  layout.repeats === placed.repeats &&
  layout.change === placed.change &&
  layout.columns === placed.columns &&
  layout.gap === placed.gap &&
  (!layout.sections || wayOf(layout.sections) === wayOf(placed.sections));

const wayOf = (sections: readonly FittedSection[]): string =>
  sections.map(({ look, repeats }) => `${repeats} of ${[...look.values.values()]}`).join();
