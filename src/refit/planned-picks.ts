import type { ChoiceProgram, Picks } from "../../solver/choice.ts";
import type { FittedPlacement } from "../fit/fit.ts";
import { footingKey } from "../fit/footing.ts";
import type { Layout } from "../fit/layouts.ts";
import type { Look } from "../fit/looks.ts";
import type { OpenChoices } from "./choices.ts";
import type { Undertaking } from "./undertaking.ts";

/** Sums of costs that are equal on paper differ by far less. */
const sameCost = 1e-9;

/**
 * The picks that leave everything as it was planned, where those can be taken and cost no more than the best; else the
 * best. Two fits may cost the same, and a knitter who measures what was planned should find nothing changed.
 */
export function plannedWhereAsGood(
  undertaking: Undertaking,
  choices: OpenChoices,
  program: ChoiceProgram,
  best: Picks,
): readonly number[] {
  const planned = plannedPicks(undertaking, choices);
  const isAsGood = keepsRows(program, planned) && costOf(program, planned) <= best.cost + sameCost;
  return isAsGood ? planned : best.picks;
}

/** An index of -1 where something is no longer there to be picked. */
function plannedPicks({ placed, looks }: Undertaking, choices: OpenChoices): readonly number[] {
  const layoutUnder = (placement: number, look: Look): number => {
    const key = footingKey(choices.footingUnder(look));
    return choices.layouts[placement]!.findIndex(
      (layout) => footingKey(layout.footing) === key && isAsPlaced(layout, placed[placement]!),
    );
  };
  const placementsOf = (motif: string): readonly number[] =>
    placed.flatMap((one, index) => (one.motif === motif ? [index] : []));
  const picked = choices.looks.map((ofMotif, motif) =>
    ofMotif.findIndex(
      (look) =>
        faceOf(look) === faceOf(looks[motif]!) &&
        placementsOf(look.motif.name).every((placement) => layoutUnder(placement, look) >= 0),
    ),
  );
  return [
    ...picked,
    ...placed.map(({ motif }, placement) => {
      const group = looks.findIndex((look) => look.motif.name === motif);
      const look = choices.looks[group]![picked[group]!];
      return look ? layoutUnder(placement, look) : -1;
    }),
  ];
}

const faceOf = ({ values, segments }: Pick<Look, "values" | "segments">): string =>
  JSON.stringify([
    [...values],
    segments.map(({ needles, rows, pickup }) => `${needles}x${rows}=${pickup}`).sort(),
  ]);

const isAsPlaced = (layout: Layout, placed: FittedPlacement): boolean =>
  layout.repeats === placed.repeats &&
  layout.change === placed.change &&
  layout.columns === placed.columns &&
  layout.gap === placed.gap &&
  layout.firstRow === placed.firstRow &&
  layout.panel.leftEdge === placed.panel.leftEdge;

function keepsRows({ groups, rows }: ChoiceProgram, picks: readonly number[]): boolean {
  if (picks.some((pick) => pick < 0)) return false;
  const sums = rows.map(() => 0);
  groups.forEach(({ options }, group) => {
    for (const [row, coefficient] of options[picks[group]!]!.terms) sums[row]! += coefficient;
  });
  return rows.every(({ relation, bound }, row) => {
    if (relation === "=") return sums[row] === bound;
    return relation === "<=" ? sums[row]! <= bound : sums[row]! >= bound;
  });
}

const costOf = ({ groups }: ChoiceProgram, picks: readonly number[]): number =>
  groups.reduce((sum, { options }, group) => sum + options[picks[group]!]!.cost, 0);
