import { stringify } from "yaml";
import { type EditValue, isList, isTable } from "./edit-value.ts";

/** How a value has to be written where it stands. */
export interface Form {
  readonly json: boolean;
  /** Whether it stands inside of brackets, where commas and brackets end a text. */
  readonly flow: boolean;
}

/** A value in the forms of a garment file, on one line: `{ allow: 2..9, prefer: 3 }`. */
export function writtenValue(value: EditValue, form: Form): string {
  if (typeof value === "string") return writtenText(value, form);
  const inside = { ...form, flow: true };
  if (isList(value)) return `[${value.map((item) => writtenValue(item, inside)).join(", ")}]`;
  if (!isTable(value)) return Object.is(value, -0) ? "-0" : String(value);
  const entries = Object.entries(value);
  if (entries.length === 0) return "{}";
  return `{ ${entries.map(([key, item]) => writtenEntry(key, writtenValue(item, inside), inside)).join(", ")} }`;
}

export const writtenEntry = (key: string, value: string, form: Form): string =>
  `${writtenText(key, form)}: ${value}`;

/** A text without quotes where it reads back as the same text, else with double quotes. */
export function writtenText(text: string, { json, flow }: Form): string {
  if (json || needsEscapes.test(text) || (flow && endsInBrackets.test(text))) return doubleQuoted(text);
  const plain = stringify(text, { schema: "core", lineWidth: 0, blockQuote: false }).replace(/\n$/, "");
  return plain === text ? text : doubleQuoted(text);
}

const endsInBrackets = /[[\]{},]|^---/;

/** Line breaks, and characters that text editors do not show. */
export const needsEscapes = /[\p{Cc}\p{Zl}\p{Zp}\p{Cs}\ufeff]/u;

/** Quotes as JSON and YAML both read them. */
export const doubleQuoted = (text: string): string =>
  JSON.stringify(text).replace(
    /[\u007f-\u009f\u2028\u2029\ufeff]/g,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );

export const singleQuoted = (text: string): string => `'${text.replaceAll("'", "''")}'`;
