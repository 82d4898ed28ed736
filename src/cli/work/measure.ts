import type { Measured } from "../../refit/progress.ts";
import type { WorkPlace } from "../../state/work-place.ts";
import type { WorkEvent } from "../../work/events.ts";
import { type MidwayAnswer, midway } from "../../work/midway/midway.ts";
import { currentPiece, textBehind, type WorkRecord } from "../../work/record.ts";
import type { CommandInput } from "../command.ts";
import { CommandError, type ExitCode, exitCodes } from "../exit-codes.ts";
import { lengthOption } from "../length-option.ts";
import { timeLimitOf, withEngine } from "../solving.ts";

/** What is written down of a measurement, and what is said of it. */
export interface MeasuredHere {
  readonly events: readonly WorkEvent[];
  readonly lines: readonly string[];
  readonly code: ExitCode;
}

/** The measurement that the command line gives, undefined where it gives none. */
export function measurementAsked({ options }: CommandInput): Measured | undefined {
  const lengthMm = lengthOption("measure", options.measure);
  const widthMm = lengthOption("measure-width", options["measure-width"]);
  if (lengthMm !== undefined || widthMm !== undefined)
    return { ...(lengthMm !== undefined && { lengthMm }), ...(widthMm !== undefined && { widthMm }) };
  if (options.refit === true)
    throw new CommandError('--refit needs what was measured, such as --measure "24.5 cm" --refit.');
  return undefined;
}

/**
 * Reckons with a measurement at the row where the piece at hand stands, and fits the rest anew where that is asked.
 *
 * @throws CommandError where nothing can be made of it; then nothing is to be written down
 */
export async function measureHere(
  input: CommandInput,
  place: WorkPlace,
  record: WorkRecord,
  measured: Measured,
): Promise<MeasuredHere> {
  const piece = currentPiece(record);
  const { file, size } = place;
  const request = {
    file,
    ...(size !== undefined && { size }),
    garmentText: textBehind(record, piece),
    piece,
    measured,
  };
  const ask = (refits: boolean): Promise<MidwayAnswer> =>
    withEngine(input, ({ engine }) => midway({ ...request, refits }, engine, timeLimitOf(input.options)));
  const soFar = await ask(false);
  if (soFar.status === "refused") throw new CommandError(soFar.lines.join("\n"));
  const kept = "The measurement is kept at this row.";
  if (input.options.refit !== true)
    return { events: [{ kind: "measure", measured }], lines: [...soFar.lines, kept], code: exitCodes.done };
  const rest = await ask(true);
  return rest.status === "refitted"
    ? {
        events: [{ kind: "measure", measured, sheet: rest.sheet }],
        lines: [...soFar.lines, ...rest.lines, "The new sheet is followed from this row on."],
        code: exitCodes.done,
      }
    : {
        events: [{ kind: "measure", measured }],
        lines: [...soFar.lines, ...rest.lines, kept],
        code: rest.status === "no refit" && rest.outOfTime ? exitCodes.stopped : exitCodes.noFit,
      };
}
