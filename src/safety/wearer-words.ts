import type { Wearer } from "../garment/garment.ts";
import { counted, inCentimetres } from "../report/words.ts";

/** "a wearer of 5 years and 110 cm". */
export function wearerWords({ ageYears, heightMm }: Wearer): string {
  const said = [
    ...(ageYears === undefined ? [] : [ageWords(ageYears)]),
    ...(heightMm === undefined ? [] : [inCentimetres(heightMm)]),
  ];
  return `a wearer of ${said.join(" and ")}`;
}

/** In months up to two years, as children's sizes are said. */
const ageWords = (years: number): string =>
  years < 2 && !Number.isInteger(years)
    ? counted(Math.round(years * 12), "month")
    : counted(Number(years.toFixed(1)), "year");
