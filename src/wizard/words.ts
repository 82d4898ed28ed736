import { printable } from "../diagnostics/shown.ts";
import { listed } from "../report/words.ts";
import { wrap } from "../report/wrap.ts";
import { type Conversation, currentQuestion, type Outcome, progress, suggestion } from "./conversation.ts";

/** What is said before the first question. */
export const introduction: readonly string[] = [
  "A few questions, and then a garment file that you can change at will.",
  "Enter takes what stands in brackets; ? says more; back goes back; quit stops.",
];

const indent = "  ";

/** The question that is asked now, as lines; empty once everything is answered. */
export function questionLines(conversation: Conversation, width: number): readonly string[] {
  const question = currentQuestion(conversation);
  if (!question) return [];
  const { answers } = conversation;
  const { number, total } = progress(conversation);
  const choices = question.choices?.(answers) ?? [];
  return [
    ...wrap(`${number} of ${total}: ${question.ask(answers)}`, width, indent.length),
    ...wrap(`${indent}${question.explain}`, width, indent.length),
    ...(choices.length > 1
      ? wrap(
          `${indent}${listed(choices).replace(/ and (?=[^ ]+(?: [^ ]+)?$)/, " or ")}`,
          width,
          indent.length,
        )
      : []),
  ];
}

/** What stands before the place where the answer is typed. */
export function promptText(conversation: Conversation): string {
  const question = currentQuestion(conversation);
  return question ? `${indent}[${printable(suggestion(conversation, question))}] ` : "";
}

/** What is said about a line that was typed. */
export function outcomeLines(outcome: Outcome, width: number): readonly string[] {
  const said = (text: string): readonly string[] => wrap(`${indent}${text}`, width, indent.length);
  switch (outcome.kind) {
    case "refused":
      return [
        ...said(`That cannot be: ${outcome.problem}.`),
        ...(outcome.right === undefined ? [] : said(`Right would be: ${outcome.right}`)),
      ];
    case "explained":
      return said(outcome.question.more);
    case "back":
      return outcome.moved ? [] : said("This is the first question.");
    case "accepted":
      return outcome.note === undefined ? [] : said(`${outcome.note} back answers again.`);
    case "quit":
      return [];
  }
}
