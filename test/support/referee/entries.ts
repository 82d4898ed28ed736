import type { AllowEntry, ChoiceEntry } from "../garment-file.ts";

const millimetres: Readonly<Record<string, number>> = { mm: 1, cm: 10, m: 1000, in: 25.4 };

/** A length such as `33 cm`, in millimetres; throws where number or unit is missing. */
export function lengthMm(text: string): number {
  const match = /^\s*(-?\d+(?:\.\d+)?)\s*(mm|cm|m|in)\s*$/.exec(text);
  if (!match) throw new Error(`"${text}" is not a length`);
  return Number(match[1]) * millimetres[match[2]!]!;
}

/** A percentage such as `-5 %`, as a fraction (-0.05). */
export function fraction(text: string): number {
  const match = /^\s*(-?\d+(?:\.\d+)?)\s*%\s*$/.exec(text);
  if (!match) throw new Error(`"${text}" is not a percentage`);
  return Number(match[1]) / 100;
}

export interface Choice {
  readonly allow: AllowEntry | undefined;
  readonly prefer: number | undefined;
}

/** An entry that may say its `allow` outright, or beside a `prefer`; an entry that is absent allows all. */
export function choice(entry: AllowEntry | ChoiceEntry | undefined): Choice {
  if (typeof entry === "object" && ("allow" in entry || "prefer" in entry)) {
    return { allow: entry.allow, prefer: entry.prefer };
  }
  return { allow: entry as AllowEntry | undefined, prefer: undefined };
}

/** Whether a whole number is among those that `allow` names; an `allow` that is absent names all. */
export function isAllowed(allow: AllowEntry | undefined, value: number): boolean {
  if (allow === undefined) return true;
  if (typeof allow === "number") return value === allow;
  if (typeof allow === "string") {
    const match = /^\s*(-?\d+)\s*\.\.\s*(-?\d+)\s*$/.exec(allow);
    if (!match) throw new Error(`"${allow}" is not a range`);
    return value >= Number(match[1]) && value <= Number(match[2]);
  }
  if ("from" in allow) {
    return value >= allow.from && value <= allow.to && (value - allow.from) % (allow.step ?? 1) === 0;
  }
  return allow.includes(value);
}

/** Every allowed whole number from `least` to `most`, tried one by one. */
export function allowedBetween(allow: AllowEntry | undefined, least: number, most: number): number[] {
  const values: number[] = [];
  for (let value = least; value <= most; value++) if (isAllowed(allow, value)) values.push(value);
  return values;
}

/** The highest number an `allow` names, for lists that have an end. */
export function highestOf(allow: AllowEntry): number {
  if (typeof allow === "number") return allow;
  if (typeof allow === "string") return Number(allow.split("..")[1]);
  return "from" in allow ? allow.to : Math.max(...allow);
}
