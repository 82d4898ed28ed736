/**
 * The body measurements that the tables have, under the tables' own names; a woman's bust stands under `chest`.
 * "Arm length to underarm" is neither the arm length nor the back neck point to wrist length of ISO 8559-1.
 */
export const BODY_MEASURES = [
  "chest",
  "back waist length",
  "back hip length",
  "cross back",
  "arm length to underarm",
  "upper arm",
  "armhole depth",
  "waist",
  "hips",
  "centre back neck to wrist",
] as const;

export type BodyMeasure = (typeof BODY_MEASURES)[number];

/** A published table of body measurements, as it is printed: without any ease. */
export interface SizeTable {
  /** Whose measurements these are, as a size's name begins: "woman". */
  readonly of: string;
  readonly source: string;
  /** As a size's name goes on, from left to right: "M". */
  readonly sizes: readonly string[];
  readonly rows: Readonly<Partial<Record<BodyMeasure, SizeRow>>>;
}

/** One measurement in every size of its table, as printed: "11", or "36-38" for a range; null where no value was seen. */
export interface SizeRow {
  readonly inches: readonly (string | null)[];
  /** Only where the table prints centimetres too. */
  readonly cm?: readonly (string | null)[];
  /** Why the whole row is to be taken with care, as it is told to a knitter. */
  readonly uncertain?: string;
  /** Sizes whose values were not seen and stand here from memory. */
  readonly fromMemory?: readonly string[];
}
