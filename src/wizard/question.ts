import type { Answers, QuestionId } from "./answers.ts";
import type { Parsed } from "./parsers.ts";

/** One thing that is asked. */
export interface Question {
  readonly id: QuestionId;
  readonly ask: (answers: Answers) => string;
  /** The term it is about, in one line. */
  readonly explain: string;
  /** What `?` says beyond that. */
  readonly more: string;
  /** Whether it is asked at all, by the answers before it. */
  readonly isAsked: (answers: Answers) => boolean;
  /** What Enter takes; always right. */
  readonly suggested: (answers: Answers) => string;
  /** The words it may be answered with, where they are few. */
  readonly choices?: (answers: Answers) => readonly string[];
  /** Whether answers that end before it are enough. */
  readonly optional?: true;
  readonly parse: (text: string, answers: Answers) => Parsed;
}

export const always = (): boolean => true;
