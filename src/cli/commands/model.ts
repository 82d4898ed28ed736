import { type ChoiceProgram, toProgram } from "../../../solver/choice.ts";
import { programToLpText } from "../../../solver/lp-text.ts";
import { within } from "../../fit/allowance.ts";
import { enumerate } from "../../fit/enumerate.ts";
import { formulate } from "../../fit/formulate.ts";
import { joinRange } from "../../grading/prepare-range.ts";
import type { CommandRun } from "../command.ts";
import { deliver } from "../deliver.ts";
import { exitCodes } from "../exit-codes.ts";
import { fileOperand, type SoundGarment, soundGarment } from "../load-garment.ts";
import { timeLimitOf } from "../solving.ts";

export const run: CommandRun = async (input) => {
  const loaded = await soundGarment(fileOperand(input, "model"), input.terminal, input.options);
  const { program } = within(timeLimitOf(input.options), () => toProgram(choiceOf(loaded)));
  await deliver(
    input,
    programToLpText(program, {
      comments: [
        `${loaded.garment.title}: the least cost is the best fit.`,
        "Each column is one look of a motif or one layout of a placement, taken (1) or not (0).",
        ...(loaded.range
          ? [loaded.size ? `Size ${loaded.size.name}, by itself.` : "All sizes together."]
          : []),
      ],
    }).trimEnd(),
  );
  return exitCodes.done;
};

const choiceOf = ({ garment, range, size }: SoundGarment): ChoiceProgram =>
  range && !size ? joinRange(range) : formulate(enumerate(garment));
