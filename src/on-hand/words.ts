import type { Stock, Supply } from "../garment/garment.ts";

/** "4 m", "12.5 g". */
export const stockWords = ({ amount, unit }: Stock): string => `${Number(amount.toFixed(3))} ${unit}`;

/** "4 m of cord", "300 g of ground yarn (6 balls)". */
export const supplyWords = (supply: Supply): string =>
  `${stockWords(supply)} of ${supply.of}${supply.balls ? ` (${ballsWords(supply.balls)})` : ""}`;

const ballsWords = ({ count }: NonNullable<Supply["balls"]>): string =>
  `${count} ${count === 1 ? "ball" : "balls"}`;
