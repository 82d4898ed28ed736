import { roundUpTo } from "./rounding.ts";

/** "1 repeat", "2 repeats". */
export const counted = (amount: number, one: string, many = `${one}s`): string =>
  `${Number.isInteger(amount) ? amount : Number(amount.toFixed(3))} ${amount === 1 ? one : many}`;

/** "+0.7 %", "-1.2 %". */
export const signedPercent = (fraction: number): string => {
  const percent = (100 * fraction).toFixed(1);
  const shown = percent === "-0.0" ? "0.0" : percent;
  return `${shown.startsWith("-") ? "" : "+"}${shown} %`;
};

/** Millimetres as centimetres with at most one decimal: "33 cm", "102.2 cm". */
export const inCentimetres = (mm: number): string => `${Number((mm / 10).toFixed(1))} cm`;

/** A length of cord in centimetres, rounded up to a millimetre: what is too long is unravelled, what is too short is lost. */
export const cordLength = (mm: number): string => inCentimetres(roundUpTo(mm, 0));

/** "a", "a and b", "a, b and c". */
export const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join("") : `${parts.slice(0, -1).join(", ")} and ${parts.at(-1)}`;

const plural = new Intl.PluralRules("en", { type: "ordinal" });
const endings: Readonly<Record<string, string>> = { one: "st", two: "nd", few: "rd", other: "th" };

/** "1st", "22nd", "13th". */
export const ordinal = (count: number): string => `${count}${endings[plural.select(count)]}`;

/** A placement by its piece, and by its motif too where the piece has several: "front", "plait on front". */
export const placementWords = (
  all: readonly { readonly piece: string }[],
  { piece, motif }: { readonly piece: string; readonly motif: string },
): string => (all.filter((one) => one.piece === piece).length > 1 ? `${motif} on ${piece}` : piece);
