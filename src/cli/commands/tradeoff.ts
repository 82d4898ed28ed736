import { extname } from "node:path";
import { readAsk, termsInWords } from "../../tradeoff/ask.ts";
import { type TradeOff, tradeOff } from "../../tradeoff/trade.ts";
import { tradeTerms } from "../../tradeoff/trade-term.ts";
import { tradeToJson } from "../../tradeoff/tradeoff-json.ts";
import { tradeSvg } from "../../tradeoff/tradeoff-svg.ts";
import { tradeText } from "../../tradeoff/tradeoff-text.ts";
import { writesUnicode } from "../characters.ts";
import type { CommandInput, CommandRun } from "../command.ts";
import { deliver, jsonText, textWidth } from "../deliver.ts";
import { CommandError, exitCodes } from "../exit-codes.ts";
import { fileOperand, garmentInOneSize } from "../load-garment.ts";
import { stoppedCode, timeLimitOf, withEngine } from "../solving.ts";

export const run: CommandRun = async (input) => {
  const file = fileOperand(input, "tradeoff");
  const { options, terminal } = input;
  return withEngine(input, async (watch) => {
    const { garment } = await garmentInOneSize(file, terminal, options);
    const { between, hold } = options;
    if (typeof between !== "string")
      throw new CommandError(
        `tradeoff needs two or three terms to weigh against each other: --between length,balance\n${termsInWords(tradeTerms(garment))}`,
      );
    const ask = readAsk(garment, between, typeof hold === "string" ? hold : undefined);
    if ("refused" in ask) throw new CommandError(ask.refused);
    const started = performance.now();
    const result = await tradeOff(garment, ask, watch.engine, {
      timeLimitMs: timeLimitOf(options),
      found: (points) => watch.phase(`Point ${points + 1} of the trade-off`, "many"),
    });
    for (const note of result.notes) terminal.say(note);
    if (result.status === "does not fit") {
      if (options.json === true)
        await deliver(input, jsonText({ format: "evenrow-tradeoff/1", status: result.status }));
      terminal.say(`Nothing fits, so there is nothing to trade. What stands in the way: evenrow why ${file}`);
      return exitCodes.noFit;
    }
    if (result.status === "stopped") {
      terminal.say(result.reason);
      return stoppedCode(watch.ending());
    }
    await deliver(input, await inForm(input, result, performance.now() - started));
    return result.complete ? exitCodes.done : exitCodes.stopped;
  });
};

/** As the option says, else as the output's ending does. */
async function inForm(
  { options, terminal }: CommandInput,
  trade: TradeOff,
  elapsedMs: number,
): Promise<string | Uint8Array> {
  if (options.json === true) return jsonText(tradeToJson(trade, elapsedMs));
  const ending = typeof options.output === "string" ? extname(options.output).toLowerCase() : "";
  if (ending === ".svg") return tradeSvg(trade).trimEnd();
  if (ending !== ".png") return tradeText(trade, textWidth(terminal.columns), writesUnicode(process.env));
  const { svgToPng } = await import("../../draw/png.ts");
  const picture = await svgToPng(tradeSvg(trade));
  if ("problem" in picture) throw new CommandError(picture.problem);
  for (const note of picture.notes) terminal.say(note);
  return picture.png;
}
