import { toProgram } from "../../solver/choice.ts";
import { highsEngine } from "../../solver/highs-engine.ts";
import type { Engine, Program } from "../../solver/program.ts";
import { simplexEngine } from "../../solver/simplex-engine.ts";
import { enumerate } from "../../src/fit/enumerate.ts";
import { formulate } from "../../src/fit/formulate.ts";
import { fitGarment } from "../../src/fit/solve.ts";
import type { Garment } from "../../src/garment/garment.ts";
import { glpkEngine } from "../solver/support/glpk-engine.ts";
import { exhaustiveBest } from "../support/exhaustive.ts";
import type { GarmentFile } from "../support/garment-file.ts";
import { fileWith, garmentWith, growingGarment, latticeGarment } from "./garments.ts";
import { growthExponent, medianMs } from "./measure.ts";
import { coldStarts } from "./start-up.ts";

const times = 15;
const placements = [1, 3, 9, 27];

/** Medians in ms; the engines on the same program, the search on the same garment. */
interface Timed {
  readonly wholeFit: number;
  readonly engine: number;
  readonly highs: number;
  readonly glpk: number;
  readonly search?: number;
}

const columns = ["whole fit", "engine", "HiGHS", "GLPK", "search"] as const;
const widths = { name: 24, column: 11 };

/**
 * Times garments with the program, with HiGHS and GLPK on the same linear program, and with a search that tries every
 * look and every layout, where it knows the motif; how each grows, and what a cold start takes. As one table's lines.
 */
export async function garmentsTable(): Promise<readonly string[]> {
  const lines = [
    ["", ...columns.map((name) => name.padStart(widths.column))]
      .join("")
      .padStart(widths.name + widths.column * 5),
  ];
  const all: Timed[] = [];
  for (const count of placements) {
    const name = count === 1 ? "1 placement" : `${count} placements`;
    all.push(await timed(name, garmentWith(count), fileWith(count)));
    lines.push(line(`${name}, ms`, inOrder(all.at(-1)!)));
  }
  lines.push(line("growing, 12 repeats, ms", inOrder(await timed("growing", growingGarment()))));
  lines.push(line("lattice, 9 strands, ms", inOrder(await timed("lattice", latticeGarment()))));
  const exponents = inOrder(all[0]!).map((_, column) =>
    growthExponent(
      placements,
      all.map((one) => inOrder(one)[column]!),
    ),
  );
  lines.push(line("grows with n as n to the", exponents, 2));
  for (const { words, ms, ratio } of coldStarts(times))
    lines.push(
      `${words.padEnd(widths.name)}${ms.toFixed(1).padStart(widths.column)}  ${ratio.toFixed(2)} times a bare node`,
    );
  return lines;
}

const inOrder = ({ wholeFit, engine, highs, glpk, search }: Timed): readonly (number | undefined)[] => [
  wholeFit,
  engine,
  highs,
  glpk,
  search,
];

const line = (name: string, values: readonly (number | undefined)[], digits = 1): string =>
  [
    name.padEnd(widths.name),
    ...values.map((value) => (value === undefined ? "-" : value.toFixed(digits)).padStart(widths.column)),
  ].join("");

async function timed(name: string, garment: Garment, file?: GarmentFile): Promise<Timed> {
  const wholeFit = await medianMs(times, () => fitGarment(garment, simplexEngine, { rivals: 0 }));
  const { program } = toProgram(formulate(enumerate(garment, { fits: 1 })));
  const costs = [
    await costOf(simplexEngine, program),
    await costOf(highsEngine, program),
    await costOf(glpkEngine, program),
  ];
  const search = file && (await medianMs(3, () => exhaustiveBest(file)));
  if (file) costs.push(exhaustiveBest(file)!.cost);
  if (costs.some((cost) => Math.abs(cost - costs[0]!) > 1e-6))
    throw new Error(`${name}: not all of them find the same cost: ${costs.join(", ")}`);
  return {
    wholeFit,
    engine: await medianMs(times, () => simplexEngine(program, {})),
    highs: await medianMs(times, () => highsEngine(program, {})),
    glpk: await medianMs(times, () => glpkEngine(program, {})),
    ...(search !== undefined && { search }),
  };
}

async function costOf(engine: Engine, program: Program): Promise<number> {
  const outcome = await engine(program, {});
  return outcome.status === "optimal" ? outcome.cost : Number.NaN;
}
