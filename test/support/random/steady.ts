import type { GarmentFile } from "../garment-file.ts";
import type { Dice } from "./dice.ts";

/** A garment that has to hold for every gauge its swatch leaves possible, all of them or a share. */
export function randomSteadiness(
  dice: Dice,
  { ground, cord }: GarmentFile["gauge"],
): Pick<GarmentFile, "gauge" | "steady"> {
  const within = (): { within?: string } =>
    dice.chance(70) ? { within: `${dice.whole(1, 25) / 10} %` } : {};
  return {
    gauge: { ground: { ...ground, ...within() }, ...(cord && { cord: { ...cord, ...within() } }) },
    steady: dice.chance(75) ? true : `${dice.whole(2, 9)}0 %`,
  };
}
