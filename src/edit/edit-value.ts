import type { Path } from "../diagnostics/path.ts";

/** A value as a garment file can hold it. */
export type EditValue = string | number | boolean | readonly EditValue[] | EditTable;

export interface EditTable {
  readonly [key: string]: EditValue;
}

export const isList = (value: EditValue): value is readonly EditValue[] => Array.isArray(value);

export const isTable = (value: EditValue): value is EditTable =>
  typeof value === "object" && !Array.isArray(value);

/** The tables (and lists of one item) that hold a value at a path, from the outermost inward. */
export const nested = (path: Path, value: EditValue): EditValue =>
  path.reduceRight<EditValue>(
    (inner, step) => (typeof step === "number" ? [inner] : { [step]: inner }),
    value,
  );
