import { cordStitchMm } from "../cloth/gauge.ts";
import { tailMm } from "../cord/cord.ts";
import type { Garment, Supply } from "../garment/garment.ts";
import { groundWaste, plainYarn, reckon, surely, type YarnAmount } from "../yarn/reckoning.ts";

/** What one of each takes of a supply, in the supply's unit. */
export interface Rates {
  /** A stitch of the ground, waste included. */
  readonly groundStitch: number;
  readonly cordStitch: number;
  /** A cord, however long: the tails at its two ends. */
  readonly cord: number;
}

/** As a knitter is told to have it at hand: the most that is likely, not what is most likely. */
export function ratesOf({ gauge, yarn }: Pick<Garment, "gauge" | "yarn">, { of, unit }: Supply): Rates {
  if (of === "cord") return { groundStitch: 0, cordStitch: cordMetres(gauge), cord: 0 };
  const inUnit = <Value>({ metres, grams }: YarnAmount<Value>): Value => (unit === "m" ? metres : grams)!;
  const groundStitch = (): number => {
    const { most, about } = inUnit(surely(reckon(gauge, yarn, "ground")));
    return most + groundWaste * about;
  };
  const takesCord = of !== "ground yarn" && gauge.cord !== undefined;
  return {
    groundStitch: of === "cord yarn" ? 0 : groundStitch(),
    cordStitch: takesCord ? (inUnit(surely(reckon(gauge, yarn, "cord")))?.most ?? 0) : 0,
    cord: takesCord ? (inUnit(plainYarn((2 * tailMm) / 1000, yarn.cord?.tex)) ?? 0) : 0,
  };
}

const cordMetres = ({ cord }: Garment["gauge"]): number => (cord ? cordStitchMm(cord) / 1000 : 0);

/** Decimals to which amounts of a supply are told: cord to the millimetre, yarn to a tenth. */
export const decimalsOf = ({ of }: Supply): number => (of === "cord" ? 3 : 1);

/** The most that may be needed, so that no more is ever told than there is: told amounts are rounded up. */
export function mostOf(supply: Supply): number {
  const scale = 10 ** decimalsOf(supply);
  return Math.floor(supply.amount * scale + 1e-6) / scale;
}
