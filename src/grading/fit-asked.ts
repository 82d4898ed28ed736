import type { Engine } from "../../solver/program.ts";
import { type FitResult, fitGarment, type SolveOptions } from "../fit/solve.ts";
import type { Garment, SizeRange } from "../garment/garment.ts";
import { fitSize, type SizeResult } from "./fit-size.ts";

/** A garment as read, and which of its sizes is meant where it has several. */
export interface Asked {
  readonly garment: Garment;
  readonly range?: SizeRange;
  readonly size?: string | undefined;
}

/** The fit of a garment, in a file with sizes as one of them has it within all; the first where none is named. */
export async function fitAsked(
  { garment, range, size }: Asked,
  engine: Engine,
  options: SolveOptions = {},
): Promise<FitResult | SizeResult> {
  if (!range) return fitGarment(garment, engine, options);
  return fitSize(range, size ?? range.sizes[0]!.name, engine, options);
}
