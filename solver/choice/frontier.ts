import type { Engine, EngineOptions } from "../program.ts";
import type { ChoiceProgram, Picks } from "./choice-program.ts";
import { byAmounts, type Taken } from "./frontier/front.ts";
import { wholePart } from "./frontier/part.ts";
import { settled, TooMuchToSettle } from "./frontier/settle.ts";
import { searchedByZones } from "./frontier/zones.ts";
import { WITHOUT_ENGINE } from "./solve-restricted.ts";

/** The best compromises between what is measured in some rows of a choice program. */
export interface Frontier {
  /** By rising amount of the first row; each proven to be on the frontier and to be the cheapest with its amounts. */
  readonly points: readonly FrontierPoint[];
  /** Whether it is certain that there are no more points. */
  readonly complete: boolean;
  /** Branch and bound nodes; 0 where no engine was needed. */
  readonly nodes: number;
  readonly note?: string;
}

interface FrontierPoint {
  /** By measured row, in the order in which they were given. */
  readonly amounts: readonly number[];
  /** The cheapest picks with these amounts. */
  readonly picks: Picks;
}

export interface FrontierOptions extends EngineOptions {
  /** How many options, classes and sums may be looked at before an engine is asked instead. Default {@link USUAL_WORK}. */
  readonly work?: number;
  /** Told after each point that an engine has found. */
  readonly found?: (points: number) => void;
}

/** A few seconds on a machine of today. */
const USUAL_WORK = 2e7;

/**
 * Every way to pick that no other surpasses in what is measured, the cheapest of those with the same amounts: the
 * exact frontier (the nondominated points) between two or three rows, or more.
 *
 * @param measured rows `<=` whose amounts are whole numbers; a bound may be infinite
 * @throws RangeError where a term names a row that is not there, or a measured row is none of that kind
 */
export async function frontier(
  choice: ChoiceProgram,
  measured: readonly number[],
  engine: Engine,
  { work = USUAL_WORK, ...options }: FrontierOptions = {},
): Promise<Frontier> {
  refuseUnmeasurable(choice, measured);
  try {
    const points = settled(wholePart(choice, measured), work).map(pointOf);
    return { points, complete: true, nodes: 0 };
  } catch (error) {
    if (!(error instanceof TooMuchToSettle)) throw error;
    const searched = await searchedByZones(choice, measured, engine, options);
    return { ...searched, points: [...searched.points].sort(byAmounts) };
  }
}

function pointOf({ amounts, cost, picks }: Taken): FrontierPoint {
  const options = [...picks].sort(([a], [b]) => a - b).map(([, option]) => option);
  return {
    amounts,
    picks: {
      status: "picked",
      picks: options,
      cost,
      bound: cost,
      proven: true,
      nodes: 0,
      engine: WITHOUT_ENGINE,
    },
  };
}

function refuseUnmeasurable({ rows, groups }: ChoiceProgram, measured: readonly number[]): void {
  for (const row of measured)
    if (rows[row]?.relation !== "<=") throw new RangeError(`row ${row} is not one that limits an amount`);
  for (const { options } of groups)
    for (const { name, terms } of options)
      for (const [row, amount] of terms)
        if (measured.includes(row) && !Number.isInteger(amount))
          throw new RangeError(`option "${name}" adds ${amount} to what is measured in row ${row}`);
}
