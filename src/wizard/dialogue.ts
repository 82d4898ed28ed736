import { wrap } from "../report/wrap.ts";
import { begun, type Conversation, currentQuestion, reply } from "./conversation.ts";
import { fileNameFor } from "./file-name.ts";
import { sketch } from "./sketch.ts";
import { summary } from "./summary.ts";
import { introduction, outcomeLines, promptText, questionLines } from "./words.ts";

/**
 * The questions as they are asked on a terminal; after the last of them what was answered, to be looked over, and the file
 * that it goes to, or, where that was said beforehand, whether it may be written.
 */
export interface Dialogue {
  readonly conversation: Conversation;
  /** Where the garment goes; undefined until it is known. */
  readonly file: string | undefined;
  /** The sketch that was shown last. */
  readonly drawn: string;
  readonly width: number;
}

/** What is said next, and then either the place for an answer or the end. */
export interface Turn {
  readonly dialogue: Dialogue;
  readonly lines: readonly string[];
  readonly prompt: string;
  readonly end?: "write" | "quit";
}

/**
 * @param file where the garment goes, if that was said beforehand
 * @param width in columns
 */
export const opened = (file: string | undefined, width: number): Turn =>
  asking({ conversation: begun, file, drawn: "", width }, introduction);

/** Takes one line that was typed. */
export function heard(dialogue: Dialogue, line: string): Turn {
  if (!currentQuestion(dialogue.conversation))
    return dialogue.file === undefined ? heardName(dialogue, line) : heardYes(dialogue, line, dialogue.file);
  const { conversation, outcome } = reply(dialogue.conversation, line);
  const said = outcomeLines(outcome, dialogue.width);
  if (outcome.kind === "quit") return { dialogue, lines: [], prompt: "", end: "quit" };
  // The question is still on the screen: only what was wrong with the answer is new.
  if (outcome.kind === "refused" || outcome.kind === "explained")
    return { dialogue, lines: said, prompt: promptText(conversation) };
  const picture = sketch(conversation.answers, sketchRoom);
  const drawn = picture.join("\n");
  const isNew = drawn !== "" && drawn !== dialogue.drawn;
  return asking({ ...dialogue, conversation, drawn }, [
    ...said,
    ...(isNew ? ["", ...picture] : []),
    ...(currentQuestion(conversation) ? [] : ["", ...summary(conversation.answers, dialogue.width)]),
  ]);
}

/** The garment could not be written where it should go, so another place is asked for. */
export const fileRefused = (dialogue: Dialogue, reason: string): Turn =>
  asking({ ...dialogue, file: undefined }, [`  ${reason}`]);

/** Signs that a sketch may take, so that it and a question stand on a small screen together. */
const sketchRoom = { columns: 40, rows: 11 };

function heardYes(dialogue: Dialogue, line: string, file: string): Turn {
  const word = line.trim().toLowerCase();
  if (word === "" || word === "yes" || word === "y") return written(dialogue, file);
  if (word === "quit") return { dialogue, lines: [], prompt: "", end: "quit" };
  if (word === "back")
    return asking({ ...dialogue, conversation: reply(dialogue.conversation, word).conversation }, []);
  return {
    dialogue,
    lines: wrap("  yes writes it; back goes back, a question each time; quit stops.", dialogue.width, 2),
    prompt: yesPrompt,
  };
}

const yesPrompt = "  [yes] ";

function heardName(dialogue: Dialogue, line: string): Turn {
  const name = line.trim();
  if (name === "quit") return { dialogue, lines: [], prompt: "", end: "quit" };
  if (name === "back")
    return asking({ ...dialogue, conversation: reply(dialogue.conversation, name).conversation }, []);
  if (name === "?")
    return asking(dialogue, ["  A path such as sleeve.yaml, seen from the folder you are in."]);
  return written(dialogue, name === "" ? fileNameFor(dialogue.conversation.answers) : name);
}

function asking(dialogue: Dialogue, before: readonly string[]): Turn {
  const { conversation, file, width } = dialogue;
  const lines = (question: readonly string[]): readonly string[] => [...before, "", ...question];
  if (currentQuestion(conversation))
    return { dialogue, lines: lines(questionLines(conversation, width)), prompt: promptText(conversation) };
  if (file !== undefined)
    return {
      dialogue,
      lines: lines([
        file === "-" ? "Is that right, to be written out?" : `Is that right, to be written into ${file}?`,
      ]),
      prompt: yesPrompt,
    };
  return {
    dialogue,
    lines: lines(["Into which file should it be written?", "  It can be changed with any text editor."]),
    prompt: `  [${fileNameFor(conversation.answers)}] `,
  };
}

const written = (dialogue: Dialogue, file: string): Turn => ({
  dialogue: { ...dialogue, file },
  lines: [],
  prompt: "",
  end: "write",
});
