import type { Fit } from "../../fit/fit.ts";

export interface TableLine {
  readonly quantity: string;
  readonly unit: string;
  /** In the order of the sizes; missing where a size has no such thing. */
  readonly values: readonly (number | undefined)[];
  /** A difference, told with its sign. */
  readonly signed?: boolean;
}

/** What a line tells of one size. */
export type Reading = (fit: Fit) => number | undefined;

/** A line with a number for each size; none where no size has one. */
export function line(
  fits: readonly Fit[],
  quantity: string,
  unit: string,
  read: Reading,
): readonly TableLine[] {
  const values = fits.map(read);
  return values.every((value) => value === undefined) ? [] : [{ quantity, unit, values }];
}

/** Lines that would tell of nothing but 0 left out. */
export const unlessNone = (lines: readonly TableLine[]): readonly TableLine[] =>
  lines.filter(({ values }) => values.some((value) => value !== undefined && value !== 0));

/**
 * The numbers of a line as patterns print them: the first size's, and the others' in parentheses; one number where all
 * are alike. A size that has no such thing has a dash.
 */
export function printed({ values, signed }: Pick<TableLine, "values" | "signed">): string {
  const shown = values.map((value) =>
    value === undefined ? "-" : signed && value > 0 ? `+${value}` : String(value),
  );
  return printedTexts(shown);
}

/** The same of what is written out already. */
export function printedTexts([first, ...others]: readonly string[]): string {
  return others.every((one) => one === first) ? first! : `${first} (${others.join(", ")})`;
}
