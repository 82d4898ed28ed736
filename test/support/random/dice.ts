import fc from "fast-check";

/** Draws whole numbers evenly; what is drawn can be shrunk by whoever made the dice. */
export interface Dice {
  /** From `least` to `most`, both included. */
  whole(least: number, most: number): number;
  pick<Item>(items: readonly Item[]): Item;
  /** True so often in a hundred. */
  chance(percent: number): boolean;
}

const evenly = (least: number, most: number): fc.Arbitrary<number> =>
  // Drawn without a liking for extremes, which would make most garments corner cases that no motif fits.
  fc.noBias(fc.integer({ min: least, max: most }));

/** Whatever `make` builds with dice, as an arbitrary. */
export function thrown<Made>(make: (dice: Dice) => Made): fc.Arbitrary<Made> {
  return fc.gen().map((draw) => {
    const whole = (least: number, most: number): number =>
      least >= most ? least : draw(evenly, least, most);
    return make({
      whole,
      pick: (items) => items[whole(0, items.length - 1)]!,
      chance: (percent) => whole(1, 100) <= percent,
    });
  });
}
