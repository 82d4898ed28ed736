import type { Answers } from "../../../src/wizard/answers.ts";
import { begun, type Conversation, currentQuestion, reply } from "../../../src/wizard/conversation.ts";

/** A conversation after some lines; every one of them must be taken. */
export function typed(lines: readonly string[], from: Conversation = begun): Conversation {
  let conversation = from;
  for (const line of lines) {
    const asked = currentQuestion(conversation)?.id;
    const { conversation: next, outcome } = reply(conversation, line);
    if (outcome.kind === "refused") throw new Error(`${asked}: "${line}": ${outcome.problem}`);
    conversation = next;
  }
  return conversation;
}

/** Everything that is suggested, but for some answers. */
export function answersWith(own: Answers): Answers {
  let conversation = begun;
  for (let question = currentQuestion(conversation); question; question = currentQuestion(conversation))
    conversation = typed([own[question.id] ?? ""], conversation);
  return conversation.answers;
}
