/**
 * The whole numbers a quantity may take: a list in rising order, or every whole number from `least` on.
 * An open range is cut off by what it is measured against (a field has only so many rows).
 */
export type Allowed =
  | { readonly kind: "list"; readonly values: readonly number[] }
  | { readonly kind: "from"; readonly least: number };

/** What a quantity may be, and what it should rather be; a preference that is not stated costs nothing. */
export interface Preference {
  readonly allowed: Allowed;
  readonly prefer?: number;
}

export const anyFrom = (least: number): Allowed => ({ kind: "from", least });

export const only = (...values: number[]): Allowed => ({
  kind: "list",
  values: [...new Set(values)].sort((a, b) => a - b),
});

export function allows(allowed: Allowed, value: number): boolean {
  return allowed.kind === "from" ? value >= allowed.least : allowed.values.includes(value);
}

/** Whether nothing but one value is allowed. */
export const isOnly = (allowed: Allowed, value: number): boolean =>
  allowed.kind === "list" && allowed.values.every((one) => one === value);

/** The allowed values up to and including `most`, rising. */
export function valuesUpTo(allowed: Allowed, most: number): readonly number[] {
  if (allowed.kind === "list") return allowed.values.filter((value) => value <= most);
  const values: number[] = [];
  for (let value = allowed.least; value <= most; value++) values.push(value);
  return values;
}

export const least = (allowed: Allowed): number =>
  allowed.kind === "from" ? allowed.least : (allowed.values[0] ?? Number.POSITIVE_INFINITY);

export const greatest = (allowed: Allowed): number =>
  allowed.kind === "from" ? Number.POSITIVE_INFINITY : (allowed.values.at(-1) ?? Number.NEGATIVE_INFINITY);
