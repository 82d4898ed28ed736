import type { Engine } from "../../solver/program.ts";
import type { LoadedDrawing } from "../drawing-file/load-drawings.ts";
import { isHelpful } from "../explore/holding-back.ts";
import { rulesFor } from "../explore/rules-for.ts";
import { atEnd, givingSteps, type StepOutcome, tryStep } from "../explore/steps.ts";
import type { Fit } from "../fit/fit.ts";
import type { Garment } from "../garment/garment.ts";

/** A rule that a fit leans on, with what one step of it either way would come to. */
export interface Binding {
  readonly giving: StepOutcome;
  /** The step the other way; absent where it cannot be made. */
  readonly holding?: StepOutcome;
}

/** The rules whose end a fit has reached, and those by which it would cost less if they gave way by one step. */
export async function bindingRules(
  file: {
    readonly source: string;
    readonly name: string;
    readonly garment: Garment;
    readonly drawings?: readonly LoadedDrawing[];
  },
  fit: Fit,
  engine: Engine,
  goOn: () => void,
): Promise<readonly Binding[]> {
  const rules = rulesFor(file.garment);
  const found: Binding[] = [];
  for (const step of givingSteps(rules)) {
    goOn();
    const giving = await tryStep(file.source, file.name, step, fit, engine, file.drawings);
    const rule = rules.find(({ id }) => id === step.rule)!;
    if (!giving || !(atEnd(rule, step.end, fit) || isHelpful(giving))) continue;
    const back = { ...step, by: step.by === 1 ? (-1 as const) : (1 as const) };
    const holding = await tryStep(file.source, file.name, back, fit, engine, file.drawings);
    found.push({ giving, ...(holding && { holding }) });
  }
  return found;
}
