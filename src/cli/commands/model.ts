import { toProgram } from "../../../solver/choice.ts";
import { programToLpText } from "../../../solver/lp-text.ts";
import { enumerate } from "../../fit/enumerate.ts";
import { formulate } from "../../fit/formulate.ts";
import type { CommandRun } from "../command.ts";
import { deliver } from "../deliver.ts";
import { exitCodes } from "../exit-codes.ts";
import { fileOperand, soundGarment } from "../load-garment.ts";

export const run: CommandRun = async (input) => {
  const { garment } = await soundGarment(fileOperand(input, "model"), input.terminal);
  const { program } = toProgram(formulate(enumerate(garment)));
  await deliver(
    input,
    programToLpText(program, {
      comments: [
        `${garment.title}: the least cost is the best fit.`,
        "Each column is one look of a motif or one layout of a placement, taken (1) or not (0).",
      ],
    }).trimEnd(),
  );
  return exitCodes.done;
};
