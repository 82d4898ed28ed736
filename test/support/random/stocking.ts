import type { GarmentFile, OnHandEntry, PieceEntry, YarnEntry } from "../garment-file.ts";
import type { SupplyName } from "../referee/supplies.ts";
import type { Dice } from "./dice.ts";

/** How much of a supply there is, beside what the best fit without it takes. */
type Stocked = "enough" | "just under" | "short" | "plenty";

/** What is on hand for a garment, before it is known how much the garment takes. */
export interface Stocking {
  readonly supplies: readonly {
    readonly name: SupplyName;
    readonly unit: "m" | "g";
    readonly stocked: Stocked;
  }[];
  /** Of what the best fit takes, where there is less or more. */
  readonly percent: { readonly short: number; readonly plenty: number };
  readonly leastWaste: boolean;
  readonly waste: number;
  /** How many balls it comes in; not in balls where it is 0. */
  readonly balls: number;
  readonly tex: number;
  readonly weighed: boolean;
  /** How many of each piece are knitted. */
  readonly makes: readonly number[];
}

const choices: readonly (readonly SupplyName[])[] = [
  ["cord"],
  ["cord"],
  ["cord yarn"],
  ["ground yarn"],
  ["cord", "ground yarn"],
  ["cord yarn", "ground yarn"],
  ["yarn"],
];

export function randomStocking(dice: Dice): Stocking {
  const stocked: readonly Stocked[] = ["enough", "just under", "just under", "short", "short", "plenty"];
  return {
    supplies: dice.pick(choices).map((name) => ({
      name,
      unit: name === "cord" ? "m" : dice.pick(["m", "g"]),
      stocked: dice.pick(stocked),
    })),
    percent: { short: dice.whole(70, 98), plenty: dice.whole(102, 160) },
    leastWaste: dice.chance(40),
    waste: dice.whole(1, 20) / 10,
    balls: dice.chance(30) ? dice.whole(2, 9) : 0,
    tex: dice.whole(50, 900),
    weighed: dice.chance(40),
    makes: Array.from({ length: 4 }, () => dice.pick([1, 1, 2, 3])),
  };
}

/** The garment with its yarns and with how many of each piece are made, and with so much on hand of each supply. */
export function stockedGarment(
  plain: GarmentFile,
  { supplies, leastWaste, waste, balls, tex, weighed, makes }: Stocking,
  amountOf: (name: SupplyName) => number,
): GarmentFile {
  const ground: YarnEntry = {
    tex,
    ...(weighed && { swatch: { stitches: 60, rows: 80, weight: `${Math.ceil(0.09 * tex)} g` } }),
  };
  const told = (name: SupplyName, unit: "m" | "g"): NonNullable<OnHandEntry["yarn"]> => {
    const amount = amountOf(name);
    return balls > 0 && name !== "cord"
      ? { balls, each: `${Number((amount / balls).toFixed(6))} ${unit}` }
      : `${amount} ${unit}`;
  };
  return {
    ...plain,
    yarn: { ground, cord: { tex } },
    "on hand": {
      ...Object.fromEntries(supplies.map(({ name, unit }) => [name, told(name, unit)])),
      ...(leastWaste && { prefer: "least waste" }),
    },
    pieces: Object.fromEntries(
      Object.entries(plain.pieces).map(([name, piece], index): [string, PieceEntry] => [
        name,
        { ...(makes[index]! > 1 && { make: makes[index]! }), ...piece },
      ]),
    ),
    weights: { ...plain.weights, ...(leastWaste && { waste }) },
  };
}
