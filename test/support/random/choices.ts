import type { AllowEntry, ChoiceEntry } from "../garment-file.ts";
import type { Dice } from "./dice.ts";

/** Some numbers between `least` and `most`, in one of the forms that `allow` takes. */
export function someOf(dice: Dice, least: number, most: number): AllowEntry {
  const from = dice.whole(least, most);
  const to = dice.whole(from, Math.min(most, from + 5));
  switch (dice.whole(0, 4)) {
    case 0:
      return from;
    case 1:
      return { from, to, step: dice.whole(1, 2) };
    case 2:
      return `${from}..${to}`;
    default:
      return listFrom(dice, least, most);
  }
}

/** A rising list of up to four numbers. */
export function listFrom(dice: Dice, least: number, most: number): number[] {
  const values = Array.from({ length: dice.whole(1, 4) }, () => dice.whole(least, most));
  return [...new Set(values)].sort((one, other) => one - other);
}

/** An `allow`, often with a `prefer` that need not be among what is allowed. */
export function choiceOf(dice: Dice, least: number, most: number): ChoiceEntry {
  const allow = someOf(dice, least, most);
  return dice.chance(65) ? { allow, prefer: dice.whole(least, most) } : { allow };
}
