import type { ChoiceProgram, Picks } from "../../solver/choice.ts";
import type { Garment } from "../garment/garment.ts";
import { within } from "./allowance.ts";
import { assemble } from "./assemble.ts";
import { checkFit, describeBreaches } from "./check.ts";
import { type Extent, enumerate } from "./enumerate.ts";
import type { Fit } from "./fit.ts";
import { type Choices, formulate } from "./formulate.ts";
import { RefusedFit } from "./refused-fit.ts";

/** A garment with all that can be chosen for it, and the choice program that says what goes together. */
export interface Prepared {
  readonly garment: Garment;
  readonly choices: Choices;
  readonly program: ChoiceProgram;
}

/** Undefined where a motif has no look, or a placement no layout, that keeps its rules by itself; throws WorkEnded. */
export function prepare(garment: Garment, extent: Extent = {}): Prepared | undefined {
  const choices = enumerate(garment, extent);
  const empty = [...choices.looks, ...choices.layouts].some((options) => options.length === 0);
  return empty ? undefined : { garment, choices, program: within(undefined, () => formulate(choices)) };
}

/**
 * The fit that picks of the program stand for.
 *
 * @throws RefusedFit where the independent check does not let it pass
 */
export function fitFrom({ garment, choices }: Prepared, { picks, cost }: Pick<Picks, "picks" | "cost">): Fit {
  const looks = choices.looks.map((ofMotif, group) => ofMotif[picks[group]!]!);
  const layouts = choices.layouts.map(
    (ofPlacement, index) => ofPlacement[picks[choices.looks.length + index]!]!,
  );
  const fit = assemble(garment, looks, layouts);
  const breaches = checkFit(garment, fit, cost);
  if (breaches.length > 0) throw new RefusedFit(describeBreaches(breaches));
  return fit;
}
