import type { Edit } from "../explore/edit.ts";
import type { Garment, Supply } from "../garment/garment.ts";
import { weightOf } from "../garment/weights.ts";
import { stockWords } from "../on-hand/words.ts";
import type { Way } from "./way.ts";

/** Ten times as much and more is another purchase altogether. */
const furthestTimes = 10;

/** More of something on hand, until something fits: finished cord by the centimetre, yarn by the metre, gram or ball. */
export function moreOnHand(garment: Garment, supply: Supply): Way {
  const { of, amount, balls, path } = supply;
  const step = balls ? balls.each.amount : of === "cord" ? 0.01 : 1;
  const after = (steps: number): Supply => ({
    ...supply,
    amount: Number((amount + steps * step).toFixed(6)),
    ...(balls && { balls: { ...balls, count: Number((balls.count + steps).toFixed(6)) } }),
  });
  const give = (one: Garment, steps: number): Garment => ({
    ...one,
    ...(one.onHand && {
      onHand: {
        ...one.onHand,
        supplies: one.onHand.supplies.map((other) => (other.of === of ? after(steps) : other)),
      },
    }),
  });
  return {
    rule: path.join("."),
    mostSteps: Math.ceil((furthestTimes * amount) / step),
    followed: "up to eleven times as much",
    costPerStep: (100 * step * weightOf(garment.weights, "waste")) / amount,
    widely: give,
    barely: (steps) => [
      {
        change: { edits: [editTo(after(steps))], words: wordsOf(supply, after(steps)) },
        give: (one) => give(one, steps),
      },
    ],
  };
}

const editTo = (after: Supply): Edit =>
  after.balls
    ? { path: [...after.path, "balls"], value: after.balls.count }
    : { path: after.path, value: stockWords(after) };

const wordsOf = (before: Supply, after: Supply): string =>
  before.balls && after.balls
    ? `have ${after.balls.count} balls of ${before.of} instead of ${before.balls.count}`
    : `have ${stockWords(after)} of ${before.of} instead of ${stockWords(before)}`;
