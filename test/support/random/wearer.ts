import type { GarmentFile, PieceEntry } from "../garment-file.ts";
import type { Dice } from "./dice.ts";

/** A wearer near the ages and heights where the rules about cords change, and pieces that say where they lie. */
export function randomWearer(
  dice: Dice,
  pieces: Readonly<Record<string, PieceEntry>>,
): Pick<GarmentFile, "wearer" | "pieces"> {
  const parts = ["hood", "front", "back", "sleeve", "other", "other"];
  const placed = Object.entries(pieces).map(([name, piece]): [string, PieceEntry] => [
    name,
    dice.chance(60) ? { ...piece, part: dice.pick(parts) } : piece,
  ]);
  return { ...wearerOf(dice), pieces: Object.fromEntries(placed) };
}

function wearerOf(dice: Dice): Pick<GarmentFile, "wearer"> {
  if (dice.chance(10)) return {};
  const age = dice.pick([1, 5, 7, 8, 10, 14, 15, 40, "18 months", "7 years", "90 months"]);
  const height = `${dice.pick([80, 110, 134, 135, 150, 182, 183])} cm`;
  const said = dice.whole(1, 3);
  return { wearer: { ...(said !== 1 && { age }), ...(said !== 2 && { height }) } };
}
