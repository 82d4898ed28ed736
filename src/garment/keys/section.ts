/** One key of the garment file. */
interface KeyDescription {
  /** What the key says. */
  readonly means: string;
  /** How its value is written. */
  readonly form: string;
  /** What holds where the key is not written; a key without one must be written. */
  readonly otherwise?: string;
}

export interface Section {
  /** Where the keys stand, as in "height belongs to ..." */
  readonly where: string;
  readonly keys: Readonly<Record<string, KeyDescription>>;
}

/** How what is allowed is written, wherever it may be. */
export const allowForms = "4, [2, 4, 6], 2..9 or { from: 2, to: 10, step: 2 }";
