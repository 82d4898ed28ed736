import type { Answers, QuestionId } from "./answers.ts";
import type { Question } from "./question.ts";
import { QUESTIONS } from "./questions.ts";

/** How far the questions have got. */
export interface Conversation {
  readonly answers: Answers;
  /** Answers that were taken back; they are suggested again where they are still right. */
  readonly earlier: Answers;
}

export type Outcome =
  | {
      readonly kind: "accepted";
      readonly question: Question;
      readonly answer: string;
      readonly note?: string;
    }
  | { readonly kind: "refused"; readonly problem: string; readonly right?: string }
  | { readonly kind: "explained"; readonly question: Question }
  | { readonly kind: "back"; readonly moved: boolean }
  | { readonly kind: "quit" };

export const begun: Conversation = { answers: {}, earlier: {} };

/** The questions that are asked by the answers so far. */
const questionsFor = (answers: Answers): readonly Question[] =>
  QUESTIONS.filter(({ isAsked }) => isAsked(answers));

/** What is asked now; undefined once everything is answered. */
export const currentQuestion = ({ answers }: Conversation): Question | undefined =>
  questionsFor(answers).find(({ id }) => answers[id] === undefined);

/** What Enter takes. */
export function suggestion({ answers, earlier }: Conversation, question: Question): string {
  const before = earlier[question.id];
  const parsed = before === undefined ? undefined : question.parse(before, answers);
  return parsed && "answer" in parsed ? parsed.answer : question.suggested(answers);
}

/** How many questions there are and which one is asked, by the answers so far and what is suggested for the rest. */
export function progress(conversation: Conversation): { readonly number: number; readonly total: number } {
  const count = Object.keys(conversation.answers).length;
  return { number: count + 1, total: questionsFor(withSuggestions(conversation)).length };
}

/** All answers, with what is suggested for what was not answered. */
export function withSuggestions(conversation: Conversation): Answers {
  let now = conversation;
  for (let question = currentQuestion(now); question; question = currentQuestion(now))
    now = answered(now, question.id, suggestion(now, question));
  return now.answers;
}

/** Takes one line: an answer, nothing (for what is suggested), `?`, `back` or `quit`. */
export function reply(
  conversation: Conversation,
  line: string,
): { readonly conversation: Conversation; readonly outcome: Outcome } {
  const question = currentQuestion(conversation);
  const text = line.trim();
  if (text === "back") return back(conversation);
  if (text === "quit" || !question) return { conversation, outcome: { kind: "quit" } };
  if (text === "?") return { conversation, outcome: { kind: "explained", question } };
  const parsed = question.parse(
    text === "" ? suggestion(conversation, question) : text,
    conversation.answers,
  );
  if ("problem" in parsed) return { conversation, outcome: { kind: "refused", ...parsed } };
  const { answer, note } = parsed;
  return {
    conversation: answered(conversation, question.id, answer),
    outcome: { kind: "accepted", question, answer, ...(note !== undefined && { note }) },
  };
}

const answered = ({ answers, earlier }: Conversation, id: QuestionId, answer: string): Conversation => ({
  answers: { ...answers, [id]: answer },
  earlier,
});

function back(conversation: Conversation): { conversation: Conversation; outcome: Outcome } {
  const { answers, earlier } = conversation;
  const last = QUESTIONS.findLast(({ id }) => answers[id] !== undefined);
  if (!last) return { conversation, outcome: { kind: "back", moved: false } };
  const { [last.id]: taken, ...kept } = answers;
  return {
    conversation: { answers: kept, earlier: { ...earlier, [last.id]: taken! } },
    outcome: { kind: "back", moved: true },
  };
}
