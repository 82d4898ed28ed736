import { parseLength } from "../units/length.ts";

/** The questions, in the order in which they are asked. */
export const QUESTION_IDS = [
  "title",
  "stitches",
  "rows",
  "over",
  "needles",
  "pitch",
  "ornament",
  "cord needles",
  "cord stitches",
  "cord over",
  "spread",
  "cross",
  "draw-in",
  "interval",
  "piece",
  "shape",
  "width",
  "height",
  "top width",
  "taper",
  "neck depth",
  "neck width",
  "hem",
  "from",
  "to",
  "bottom",
  "top",
  "side",
  "change",
  "yarn",
] as const;

export type QuestionId = (typeof QUESTION_IDS)[number];

/** What was answered so far, each answer as the garment file writes it. */
export type Answers = Readonly<Partial<Record<QuestionId, string>>>;

/** An answer that must have been given by now. */
export function given(answers: Answers, id: QuestionId): string {
  const answer = answers[id];
  if (answer === undefined) throw new Error(`nothing was answered to ${id}`);
  return answer;
}

/** An answered length, in mm. */
export function mmOf(answers: Answers, id: QuestionId): number {
  const length = millimetres(given(answers, id));
  if (length === undefined) throw new Error(`${id} is not a length`);
  return length;
}

/** A text's length in mm; undefined where it is none. */
export function millimetres(text: string): number | undefined {
  const parsed = parseLength(text);
  return "mm" in parsed ? parsed.mm : undefined;
}

/** Rows as they were counted, and the length for them alone where that was said: "44", "44 over 14.6 cm". */
export function rowsOf(answers: Answers): { readonly rows: string; readonly over?: string } {
  const [rows = "", over] = given(answers, "rows").split(" over ");
  return { rows, ...(over !== undefined && { over }) };
}

/** An answered number. */
export const numberOf = (answers: Answers, id: QuestionId): number => Number(given(answers, id));
