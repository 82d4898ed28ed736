import { createInterface } from "node:readline";
import { renderDiagnostics } from "../../diagnostics/render.ts";
import { quoted } from "../../diagnostics/shown.ts";
import { EditError } from "../../edit/edit-error.ts";
import { openForEditing } from "../../edit/open.ts";
import { saveFile } from "../../edit/save.ts";
import { readGarment } from "../../garment/read-garment.ts";
import { wrap } from "../../report/wrap.ts";
import { gaugeToJson } from "../../swatch/gauge-json.ts";
import { gaugeText } from "../../swatch/gauge-text.ts";
import { type Asking, answer, askingBegun, questionAt } from "../../swatch/questions.ts";
import { readSwatch, type SwatchProblem } from "../../swatch/read-swatch.ts";
import type { Swatch } from "../../swatch/swatch.ts";
import { cordNeedlesApart, type SwatchGauge, swatchGauge } from "../../swatch/swatch-gauge.ts";
import { withGauge } from "../../swatch/written-gauge.ts";
import type { CommandRun, Terminal } from "../command.ts";
import { deliver, jsonText, textWidth } from "../deliver.ts";
import { CommandError, exitCodes } from "../exit-codes.ts";

export const run: CommandRun = async (input) => {
  const { operands, options, terminal } = input;
  const swatches = operands.length > 0 ? operands.map(fromOperand) : await asked(terminal);
  const apart = cordNeedlesApart(swatches);
  if (apart.length > 0)
    throw new CommandError(
      `Lengths of cord on ${apart.join(" and ")} needles make no gauge together: give those of one cord.`,
    );
  const gauge = swatchGauge(swatches);
  if (!gauge.ground && !gauge.cord) throw new CommandError(`gauge needs a swatch.\n${example}`);
  const { into } = options;
  const written = typeof into === "string" ? await textFor(into, gauge) : undefined;
  await deliver(
    input,
    options.json === true ? jsonText(gaugeToJson(gauge)) : gaugeText(gauge, textWidth(terminal.columns)),
  );
  if (written) await save(written, terminal);
  return exitCodes.done;
};

const example =
  'For example: evenrow gauge "40 stitches 18.2 cm, 60 rows 19.4 cm" "cord on 3 needles: 50 stitches 26 cm"';

function fromOperand(operand: string): Swatch {
  const read = readSwatch(operand);
  if ("swatch" in read) return read.swatch;
  throw new CommandError(`${quoted(operand)}: ${refusal(read)}`);
}

const refusal = ({ problem, right }: SwatchProblem): string => `${problem}; expected: ${right}`;

const asked = (terminal: Terminal): Promise<readonly Swatch[]> =>
  terminal.interactive ? askedOnTerminal(terminal) : answersFrom(terminal);

/** Takes standard input as the answers, one a line; where it ends, the rest is answered by nothing. */
async function answersFrom(terminal: Terminal): Promise<readonly Swatch[]> {
  const lines = new TextDecoder().decode(await terminal.readStdin()).split(/\r?\n/);
  let asking: Asking = askingBegun;
  for (const [index, line] of lines.entries()) {
    const answered = answer(asking, line);
    if ("refused" in answered)
      throw new CommandError(`Line ${index + 1} of the answers: ${refusal(answered.refused)}`);
    asking = answered.asking;
  }
  return asking.swatches;
}

async function askedOnTerminal(terminal: Terminal): Promise<readonly Swatch[]> {
  process.stdin.ref();
  const lines = createInterface({ input: process.stdin, output: process.stdout });
  const say = (text: string): void =>
    terminal.out(wrap(`  ${text}`, textWidth(terminal.columns), 2).join("\n"));
  const ask = (asking: Asking): void => {
    const question = questionAt(asking);
    if (question) terminal.out(`\n${wrap(question.ask, textWidth(terminal.columns)).join("\n")}`);
    lines.setPrompt("  ");
    lines.prompt();
  };
  let asking: Asking = askingBegun;
  terminal.out("Type ? for an explanation, back to answer again, quit to leave.");
  ask(asking);
  try {
    for await (const line of lines) {
      const word = line.trim();
      if (word === "quit") break;
      const answered = word === "?" ? undefined : answer(asking, line);
      if (answered && "asking" in answered) {
        if (answered.asking.swatches.length > asking.swatches.length) say("Taken.");
        asking = answered.asking;
        if (!questionAt(asking)) return asking.swatches;
        ask(asking);
        continue;
      }
      // The question is still on the screen: only what was wrong with the answer, or the explanation, is new.
      say(answered ? refusal(answered.refused) : (questionAt(asking)?.more ?? ""));
      lines.prompt();
    }
  } finally {
    lines.close();
  }
  throw new CommandError("\nStopped; nothing was written.");
}

interface Writing {
  readonly file: string;
  readonly before: string;
  readonly after: string;
}

/** The file's text with the gauge in it, made and read back before anything is told or written. */
async function textFor(file: string, gauge: SwatchGauge): Promise<Writing> {
  if (file === "-") throw new CommandError("--into takes the name of a garment file, not standard input.");
  const opening = await openForEditing(file);
  if (opening.status === "failed" && opening.missing)
    throw new CommandError(`there is no file ${file}; make one first: evenrow new ${file}`);
  if (opening.status === "failed") throw new CommandError(`${file}: ${opening.reason}.`);
  const before = opening.text;
  const after = changed(file, before, gauge);
  const mistakes = readGarment(after, file).diagnostics.filter(
    ({ severity, path }) => severity === "error" && path[0] === "gauge",
  );
  if (mistakes.length > 0)
    throw new CommandError(
      `${file} was left as it is, because with this gauge in it there would be a mistake:\n${renderDiagnostics(mistakes, { file, source: after })}`,
    );
  return { file, before, after };
}

function changed(file: string, text: string, gauge: SwatchGauge): string {
  try {
    return withGauge(text, gauge);
  } catch (error) {
    if (error instanceof EditError) throw new CommandError(`${file} was left as it is: ${error.message}.`);
    throw error;
  }
}

async function save({ file, before, after }: Writing, terminal: Terminal): Promise<void> {
  if (after === before) return terminal.say(`${file} says this gauge already.`);
  const outcome = await saveFile({ file, text: after, expected: before });
  switch (outcome.status) {
    case "saved":
      return terminal.say(`Wrote the gauge into ${file}.`);
    case "changed on disk":
      throw new CommandError(
        `${file} was changed by another program meanwhile and was left as it is. Do the same again.`,
      );
    case "failed":
      throw new CommandError(`${file} was left as it is: ${outcome.reason}.`);
  }
}
