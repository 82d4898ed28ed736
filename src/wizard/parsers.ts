import { nearest } from "../diagnostics/nearest.ts";
import { printable, quoted } from "../diagnostics/shown.ts";
import type { Cursor, Reading } from "../garment/read/cursor.ts";
import { type Limits, lengthAt, massAt, numberAt, percentageAt, wholeAt } from "../garment/read/numbers.ts";
import type { Written } from "../garment/source/written.ts";
import { listed } from "../report/words.ts";
import { millimetres } from "./answers.ts";
import { type LengthLimits, rangeText, unitOf } from "./lengths.ts";

/** An answer as the garment file writes it, with what makes it look like a slip; or what is wrong, and what would be right. */
export type Parsed =
  | { readonly answer: string; readonly note?: string }
  | { readonly problem: string; readonly right?: string };

/** The values a length may take, and why. */
export interface LengthRange extends LengthLimits {
  /** Where the limits come from: "the bed is 71.4 cm wide at this gauge". */
  readonly because?: string;
}

/** Longer names than this would not fit a line of the sheet. */
const longestName = 50;

/** A whole number, read as in a file. */
export const wholeFrom = (text: string, what: string, limits: Limits): Parsed =>
  read(text, (reading, cursor) => wholeAt(reading, cursor, what, limits));

/** A number, read as in a file. */
export const numberFrom = (text: string, what: string, limits: Limits): Parsed =>
  read(text, (reading, cursor) => numberAt(reading, cursor, what, limits));

/** Stitches or rows of a swatch, which are counted whole or in halves: anything else is a length, or a slip. */
export function countFrom(text: string, unit: string, limits: Limits): Parsed {
  const parsed = numberFrom(text, `the number of ${unit}`, limits);
  if ("problem" in parsed) return parsed;
  const halves = 2 * Number(parsed.answer);
  if (Number.isInteger(halves)) return parsed;
  return {
    problem: `${unit} are counted whole or in halves`,
    right: `${Math.floor(halves) / 2} or ${Math.ceil(halves) / 2}`,
  };
}

/** A percentage, read as in a file. */
export const percentageFrom = (text: string, what: string, limits: Limits): Parsed =>
  read(text, (reading, cursor) => percentageAt(reading, cursor, what, limits));

/** A weight, read as in a file. */
export const massFrom = (text: string, what: string, limits: Limits): Parsed =>
  read(text, (reading, cursor) => massAt(reading, cursor, what, limits));

/** A length, read as in a file, and held to a range. */
export function lengthFrom(text: string, what: string, { leastMm, mostMm, because }: LengthRange): Parsed {
  const parsed = read(text.trim() === "0" ? "0 cm" : text, (reading, cursor) =>
    lengthAt(reading, cursor, what, { least: 0, most: Number.MAX_SAFE_INTEGER }),
  );
  if ("problem" in parsed) return parsed;
  const mm = millimetres(parsed.answer)!;
  if (mm >= leastMm && mm <= mostMm) return parsed;
  return {
    problem: `${what} is too ${mm < leastMm ? "small" : "large"}${because === undefined ? "" : `: ${because}`}`,
    right: rangeText({ leastMm, mostMm }, unitOf(parsed.answer)),
  };
}

/** One of a few words; as much of it as tells it apart is enough. */
export function wordFrom(text: string, words: readonly string[]): Parsed {
  const typed = text.trim().toLowerCase();
  const exact = words.find((word) => word === typed);
  const begun = typed === "" ? [] : words.filter((word) => word.startsWith(typed));
  const answer = exact ?? (begun.length === 1 ? begun[0] : undefined);
  if (answer !== undefined) return { answer };
  const near = nearest(typed, words);
  return {
    problem: `${quoted(text.trim())} is not one of the answers`,
    right: near ?? listed(words).replace(" and ", " or "),
  };
}

/** A name of a garment or a piece. */
export function nameFrom(text: string, what: string): Parsed {
  const name = text.trim();
  if (name === "") return { problem: `${what} has no name yet`, right: "a word or two" };
  if (printable(name) !== name) return { problem: `${what} has a character in it that cannot be shown` };
  if ([...name].length > longestName)
    return { problem: `${what} has a very long name`, right: `at most ${longestName} letters` };
  return { answer: name };
}

function read(text: string, at: (reading: Reading, cursor: Cursor) => number | undefined): Parsed {
  const reading: Reading = { diagnostics: [] };
  const trimmed = text.trim();
  const value = at(reading, { written: writtenAs(trimmed), path: [] });
  const [mistake] = reading.diagnostics;
  if (value !== undefined && !mistake) return { answer: trimmed };
  return {
    problem: mistake?.message ?? `${quoted(trimmed)} cannot be read`,
    ...(mistake?.expected !== undefined && { right: mistake.expected }),
  };
}

/** What is typed, as a file would hold it. */
function writtenAs(text: string): Written {
  return /^[-+]?(?:\d+(?:\.\d*)?|\.\d+)$/.test(text)
    ? { kind: "number", value: Number(text), text }
    : { kind: "text", text };
}
