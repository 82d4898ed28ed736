import { createInterface } from "node:readline";
import { examine } from "../../examine/examine.ts";
import { readGarment } from "../../garment/read-garment.ts";
import type { Answers } from "../../wizard/answers.ts";
import { answersToGarment } from "../../wizard/answers-to-garment.ts";
import { begun, currentQuestion, reply, withSuggestions } from "../../wizard/conversation.ts";
import { fileRefused, heard, opened, type Turn } from "../../wizard/dialogue.ts";
import { outcomeLines } from "../../wizard/words.ts";
import type { CommandInput, CommandRun, Terminal } from "../command.ts";
import { textWidth } from "../deliver.ts";
import { CommandError, exitCodes } from "../exit-codes.ts";
import { refuseToOverwrite, writeOutput } from "../write-output.ts";

export const run: CommandRun = async (input) => {
  const { operands, options, terminal } = input;
  const [file, second] = operands;
  if (second !== undefined)
    throw new CommandError(`new writes one file, and these are two: ${file} and ${second}`);
  const target = file === "-" ? undefined : file;
  if (target !== undefined && options.force !== true) await refuseToOverwrite(target);
  if (options.defaults === true) return handOver(input, target, withSuggestions(begun));
  if (!terminal.interactive) return handOver(input, target, await answersFrom(terminal));
  await askForGarment(input, file);
  return exitCodes.done;
};

/** Writes the garment into a file, or to standard output where none is named. */
async function handOver({ options, terminal }: CommandInput, file: string | undefined, answers: Answers) {
  const text = soundText(answers);
  if (file === undefined) terminal.out(text.trimEnd());
  else {
    await writeOutput(file, text, options.force === true);
    terminal.say(nextSteps(file));
  }
  return exitCodes.done;
}

/** The garment's text, read back as any other: a file that does not read is never written. */
function soundText(answers: Answers): string {
  const text = answersToGarment(answers);
  const { garment, diagnostics } = readGarment(text, "garment");
  const mistake = [...diagnostics, ...(garment ? examine(garment) : [])].find(
    ({ severity }) => severity === "error",
  );
  if (mistake) throw new Error(`the answers do not make a garment: ${mistake.message}`);
  return text;
}

/** Takes one line of standard input for each question. */
async function answersFrom(terminal: Terminal): Promise<Answers> {
  const lines = new TextDecoder().decode(await terminal.readStdin()).split(/\r?\n/);
  if (lines.at(-1) === "") lines.pop();
  let conversation = begun;
  for (const [index, line] of lines.entries()) {
    if (!currentQuestion(conversation)) break;
    const { conversation: after, outcome } = reply(conversation, line);
    const words = outcomeLines(outcome, Number.POSITIVE_INFINITY).map((said) => said.trim());
    if (outcome.kind === "quit") throw new CommandError("Stopped; nothing was written.");
    if (outcome.kind === "refused")
      throw new CommandError(
        [
          `Line ${index + 1} of the answers, "${currentQuestion(conversation)!.ask(conversation.answers)}"`,
          ...words,
        ].join("\n  "),
      );
    for (const said of words) terminal.say(said);
    conversation = after;
  }
  const missing = currentQuestion(conversation);
  if (missing && !missing.optional)
    throw new CommandError(
      `The answers end before "${missing.ask(conversation.answers)}"\nGive one line for each question (an empty one takes what is suggested), or take everything that is suggested: evenrow new --defaults`,
    );
  return withSuggestions(conversation);
}

/**
 * Asks question by question and writes the file, whose name is asked last where none was given.
 *
 * @returns the file that was written; undefined where it went to standard output
 * @throws CommandError where the knitter stops; nothing was written then
 */
export async function askForGarment(
  { options, terminal }: Pick<CommandInput, "options" | "terminal">,
  file?: string,
): Promise<string | undefined> {
  process.stdin.ref();
  const lines = createInterface({ input: process.stdin, output: process.stdout });
  const show = ({ lines: said, prompt }: Turn): void => {
    if (said.length > 0) terminal.out(said.join("\n"));
    lines.setPrompt(prompt);
    lines.prompt();
  };
  let turn = opened(file, textWidth(terminal.columns));
  show(turn);
  try {
    for await (const line of lines) {
      turn = heard(turn.dialogue, line);
      if (turn.end === "quit") break;
      if (turn.end === "write") {
        const { dialogue } = turn;
        const target = dialogue.file === "-" ? undefined : dialogue.file;
        terminal.out(turn.lines.join("\n"));
        const refusal = await written(options, terminal, target, dialogue.conversation.answers);
        if (refusal === undefined) return target;
        turn = fileRefused(dialogue, refusal);
      }
      show(turn);
    }
  } finally {
    lines.close();
  }
  throw new CommandError("\nStopped; nothing was written.");
}

/** Writes the garment, or says why it cannot be written there: what was answered is not lost for that. */
async function written(
  options: CommandInput["options"],
  terminal: Terminal,
  file: string | undefined,
  answers: Answers,
): Promise<string | undefined> {
  try {
    await handOver({ operands: [], options, terminal }, file, answers);
    return undefined;
  } catch (error) {
    if (error instanceof CommandError) return error.message;
    throw error;
  }
}

function nextSteps(file: string): string {
  const name = /^[\w./-]+$/.test(file) ? file : `'${file.replaceAll("'", "'\\''")}'`;
  return [
    `Wrote ${file}. What to do with it:`,
    `  evenrow fit ${name}      the best fit, and what it gives up`,
    `  evenrow explore ${name}  push the rules about and watch the fit`,
    `  evenrow sheet ${name}    what to do at every row`,
  ].join("\n");
}
