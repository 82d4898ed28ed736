import { isLengthUnit, type LengthUnit, MM_PER_UNIT } from "../units/length.ts";
import { type Answers, millimetres } from "./answers.ts";

/** The unit at the end of a length; cm where there is none. */
export function unitOf(text: string): LengthUnit {
  const [unit = ""] = /[a-z]+$/.exec(text.trim()) ?? [];
  return isLengthUnit(unit) ? unit : "cm";
}

/** The unit that the knitter measures in: that of the swatch. */
export const ownUnit = ({ over }: Answers): LengthUnit => (over === undefined ? "cm" : unitOf(over));

/** From coarse to fine, in parts of a unit: what a knitter would name comes first. */
const grains: Readonly<Record<LengthUnit, readonly number[]>> = {
  m: [0.1, 0.01, 0.001, 0.0001],
  cm: [1, 0.5, 0.1, 0.01, 0.001],
  mm: [5, 1, 0.1, 0.01],
  in: [1, 0.5, 0.25, 0.1, 0.01, 0.001],
};

/** A length that is suggested may be rounded by this part of it, where its limits are wide enough. */
const mayBeOff = 0.03;

/** A length of about `mm` within a range, as round as a knitter would name it. */
export function roundLength(mm: number, { leastMm, mostMm }: LengthLimits, unit: LengthUnit): string {
  const wantedMm = Math.min(Math.max(mm, leastMm), mostMm);
  const wanted = wantedMm / MM_PER_UNIT[unit];
  const texts = grains[unit].flatMap((grain) =>
    [Math.round, Math.floor, Math.ceil].map((round) => `${tidy(round(wanted / grain) * grain)} ${unit}`),
  );
  const allowed = texts.filter((text) => millimetres(text)! >= leastMm && millimetres(text)! <= mostMm);
  const near = allowed.find((text) => Math.abs(millimetres(text)! - wantedMm) <= wantedMm * mayBeOff);
  return near ?? allowed.at(-1) ?? `${tidy(wanted)} ${unit}`;
}

/** Smallest and largest a length may be, both allowed. */
export interface LengthLimits {
  readonly leastMm: number;
  readonly mostMm: number;
}

const shownGrain: Readonly<Record<LengthUnit, number>> = { m: 0.001, cm: 0.1, mm: 0.1, in: 0.01 };

/** A length as it is told, rounded: "71.4 cm". */
export const shownLength = (mm: number, unit: LengthUnit): string =>
  `${tidy(Math.round(mm / MM_PER_UNIT[unit] / shownGrain[unit]) * shownGrain[unit])} ${unit}`;

/** "from 7.2 cm to 71.4 cm", rounded inward. */
export function rangeText({ leastMm, mostMm }: LengthLimits, unit: LengthUnit): string {
  const grain = shownGrain[unit];
  const least = tidy(Math.ceil(leastMm / MM_PER_UNIT[unit] / grain - 1e-9) * grain);
  const most = tidy(Math.floor(mostMm / MM_PER_UNIT[unit] / grain + 1e-9) * grain);
  if (least > most) return `about ${shownLength(mostMm, unit)}`;
  return least === most ? `${least} ${unit}` : `from ${least} ${unit} to ${most} ${unit}`;
}

/** Without the digits that only show how numbers are stored. */
const tidy = (value: number): number => Number(value.toPrecision(12));
