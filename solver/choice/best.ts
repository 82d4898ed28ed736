import type { Engine, EngineOptions } from "../program.ts";
import type { ChoiceProgram, NoPicks, Picks } from "./choice-program.ts";
import { indexChoice, undominated } from "./indexed-choice.ts";
import { solveRestricted } from "./solve-restricted.ts";

/**
 * The cheapest picks of a choice program. Where a limit stops the engine first, the best picks it had, with
 * `proven: false`, or `stopped` where it had none.
 *
 * @throws RangeError where a term names a row that is not there or a number is not finite
 */
export async function best(
  choice: ChoiceProgram,
  engine: Engine,
  options: EngineOptions = {},
): Promise<Picks | NoPicks> {
  const indexed = indexChoice(choice);
  const kept = indexed.groups.map((group) => undominated(group, () => true));
  return solveRestricted(indexed, kept, engine, options);
}
