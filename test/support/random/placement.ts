import type { AllowEntry, MarginsEntry, PlacementEntry } from "../garment-file.ts";
import { choiceOf, listFrom } from "./choices.ts";
import type { Dice } from "./dice.ts";

/** How many columns a placement may have, its gap, and the needles that the widest of them wants beside its motif. */
export interface RandomColumns {
  readonly entry: Pick<PlacementEntry, "columns" | "gap">;
  readonly most: number;
  readonly widestGap: number;
}

/** A gap is given only where there is more than one column, or may be: beside a single one there is none. */
export function randomColumns(dice: Dice): RandomColumns {
  if (dice.chance(65)) return { entry: dice.chance(80) ? { columns: 1 } : {}, most: 1, widestGap: 0 };
  const widestGap = dice.whole(0, 5);
  if (dice.chance(35)) {
    const columns = dice.whole(2, 3);
    const gap = dice.chance(50) ? widestGap : choiceOf(dice, 0, widestGap);
    return { entry: { columns, gap }, most: columns, widestGap };
  }
  const columns = dice.pick([[1, 2], [1, 2, 3], [2, 3], "1..3"]);
  return {
    entry: {
      columns: dice.chance(60) ? { allow: columns, prefer: dice.whole(1, 3) } : { allow: columns },
      gap: { allow: dice.chance(50) ? `0..${widestGap}` : listFrom(dice, 0, widestGap) },
    },
    most: 2,
    widestGap,
  };
}

export function randomRepeats(dice: Dice, likely: number): Pick<PlacementEntry, "repeats"> {
  switch (dice.whole(0, 5)) {
    case 0:
      return {};
    case 1:
      return { repeats: { allow: "1..99" } };
    case 2:
      return { repeats: { prefer: dice.whole(1, likely + 3) } };
    case 3:
      return { repeats: { allow: { from: dice.whole(1, 2), to: 24, step: dice.whole(1, 3) } } };
    case 4:
      return { repeats: choiceOf(dice, 1, likely + 1) };
    default:
      return { repeats: { allow: "2..30", prefer: dice.whole(2, likely + 2) } };
  }
}

export function randomMargins(dice: Dice): Pick<PlacementEntry, "margins"> {
  const margins: MarginsEntry = {
    ...(dice.chance(75) && { bottom: margin(dice) }),
    ...(dice.chance(75) && { top: margin(dice) }),
    ...acrossOf(dice),
  };
  return Object.keys(margins).length > 0 ? { margins } : {};
}

function margin(dice: Dice): AllowEntry {
  const least = dice.whole(0, 6);
  if (dice.chance(6)) return least;
  if (dice.chance(20)) return listFrom(dice, 0, 14);
  return `${least}..${least + dice.whole(5, 18)}`;
}

function acrossOf(dice: Dice): MarginsEntry {
  if (dice.chance(6)) return {};
  if (dice.chance(70)) return { side: { least: dice.whole(0, 5) } };
  const range = (): string => {
    const least = dice.whole(0, 3);
    return `${least}..${least + dice.whole(8, 36)}`;
  };
  return { left: range(), right: range() };
}
