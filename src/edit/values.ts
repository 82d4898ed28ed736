import { isDeepStrictEqual } from "node:util";
import type { Path } from "../diagnostics/path.ts";
import { type EditValue, isList, isTable, nested } from "./edit-value.ts";

/** A value with its tables as maps, as the parser gives them for comparing. */
export function plainOf(value: EditValue): unknown {
  if (isList(value)) return value.map(plainOf);
  return isTable(value) ? new Map(Object.entries(value).map(([key, item]) => [key, plainOf(item)])) : value;
}

/** Whether two values say the same; the order of keys says nothing. */
export const sameValue = (a: unknown, b: unknown): boolean => isDeepStrictEqual(a, b);

/** The value at a path; undefined where there is none. */
export const valueAt = (values: unknown, path: Path): unknown =>
  path.reduce((value: unknown, step) => {
    if (value instanceof Map) return value.get(String(step));
    return Array.isArray(value) && typeof step === "number" ? value[step] : undefined;
  }, values);

/** Whether `after` is `before` with the value at a path set (or, where it is undefined, taken out), and all else equal. */
export const isSameBut = (
  before: unknown,
  after: unknown,
  path: Path,
  value: EditValue | undefined,
): boolean => sameValue(changed(before, path, value), after);

function changed(values: unknown, path: Path, value: EditValue | undefined): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return value === undefined ? undefined : plainOf(value);
  const isGone = value === undefined && rest.length === 0;
  if (values instanceof Map) {
    const entries = new Map<unknown, unknown>(values);
    if (isGone) entries.delete(String(step));
    else entries.set(String(step), changed(values.get(String(step)), rest, value));
    return entries;
  }
  if (Array.isArray(values) && typeof step === "number")
    return isGone
      ? values.toSpliced(step, 1)
      : Object.assign([...values], { [step]: changed(values[step], rest, value) });
  return value === undefined ? values : plainOf(nested(path, value));
}
