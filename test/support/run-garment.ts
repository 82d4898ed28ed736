import { stringify } from "yaml";
import { simplexEngine } from "../../solver/simplex-engine.ts";
import { examine } from "../../src/examine/examine.ts";
import { type FitResult, fitGarment, type SolveOptions } from "../../src/fit/solve.ts";
import type { Garment } from "../../src/garment/garment.ts";
import { readGarment } from "../../src/garment/read-garment.ts";

/** Reads a garment that must be sound: a mistake in it is a mistake of the test. */
export function soundGarment(text: string): Garment {
  const { garment, diagnostics } = readGarment(text, "test.yaml");
  const errors = [...diagnostics, ...(garment ? examine(garment) : [])].filter(
    ({ severity }) => severity === "error",
  );
  if (!garment || errors.length > 0)
    throw new Error(errors.map(({ message, path }) => `${path.join(".")}: ${message}`).join("\n"));
  return garment;
}

/** A garment as plain data, through the file format. */
export const garmentOf = (plain: object): Garment => soundGarment(stringify(plain));

/** Fits with the usual engine in this thread, which is quicker than the guarded one for many small garments. */
export const fitHere = (garment: Garment, options: SolveOptions = {}): Promise<FitResult> =>
  fitGarment(garment, simplexEngine, options);
