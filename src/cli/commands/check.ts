import { diagnosticJson, renderDiagnostics } from "../../diagnostics/render.ts";
import { counted } from "../../report/words.ts";
import type { CommandRun } from "../command.ts";
import { deliver, jsonText } from "../deliver.ts";
import { exitCodes } from "../exit-codes.ts";
import { fileOperand, loadGarment } from "../load-garment.ts";

export const run: CommandRun = async (input) => {
  const { garment, diagnostics, name, source } = await loadGarment(
    fileOperand(input, "check"),
    input.terminal,
  );
  const errors = diagnostics.filter(({ severity }) => severity === "error").length;
  if (input.options.json === true)
    await deliver(
      input,
      jsonText({
        format: "evenrow-check/1",
        sound: garment !== undefined,
        diagnostics: diagnostics.map((one) => diagnosticJson(one, name)),
      }),
    );
  else if (diagnostics.length > 0)
    await deliver(input, renderDiagnostics(diagnostics, { file: name, source }));
  const verdict = errors === 0 ? "reads well" : `has ${counted(errors, "mistake")}`;
  input.terminal.say(`${name} ${verdict}.`);
  return errors === 0 ? exitCodes.done : exitCodes.wrongInput;
};
