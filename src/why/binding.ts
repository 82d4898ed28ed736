import type { Engine } from "../../solver/program.ts";
import { isHelpful } from "../explore/holding-back.ts";
import type { Beside } from "../explore/read-source.ts";
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

/**
 * The rules whose end a fit has reached, and those by which it would cost less if they gave way by one step.
 *
 * @param goOn called before each step; it ends the search by throwing
 * @param found told of each as soon as it is found
 */
export async function bindingRules(
  file: {
    readonly source: string;
    readonly name: string;
    readonly garment: Garment;
    readonly beside?: Beside;
  },
  fit: Fit,
  engine: Engine,
  goOn: () => void | Promise<void>,
  found: (binding: Binding) => void,
): Promise<void> {
  const { source, name, beside } = file;
  const rules = rulesFor(file.garment);
  for (const step of givingSteps(rules)) {
    await goOn();
    const giving = await tryStep(source, name, step, fit, engine, beside);
    const rule = rules.find(({ id }) => id === step.rule)!;
    if (!giving || !(atEnd(rule, step.end, fit) || isHelpful(giving))) continue;
    const back = { ...step, by: step.by === 1 ? (-1 as const) : (1 as const) };
    const holding = await tryStep(source, name, back, fit, engine, beside);
    found({ giving, ...(holding && { holding }) });
  }
}
