import { execFileSync } from "node:child_process";
import { cpus } from "node:os";
import { toProgram } from "../../solver/choice.ts";
import { highsEngine } from "../../solver/highs-engine.ts";
import { simplexEngine } from "../../solver/simplex-engine.ts";
import { enumerate } from "../../src/fit/enumerate.ts";
import { formulate } from "../../src/fit/formulate.ts";
import { fitGarment } from "../../src/fit/solve.ts";
import type { Garment } from "../../src/garment/garment.ts";
import { garmentWith, growingGarment, latticeGarment } from "./garments.ts";
import { growthExponent, medianMs } from "./measure.ts";
import { benchSizes, MEMORY_ONLY, memoryOfSizes } from "./sizes.ts";
import { benchTrades } from "./trades.ts";

if (process.argv.includes(MEMORY_ONLY)) {
  console.log(await memoryOfSizes());
  process.exit(0);
}

const times = 15;
const sizes = [1, 3, 9, 27];

const ms = (value: number): string => value.toFixed(1).padStart(9);
const ratio = (value: number): string => value.toFixed(2).padStart(7);

console.log(`node ${process.version}, ${cpus().length} x ${cpus()[0]?.model ?? "unknown processor"}`);
console.log(
  `Medians of ${times} runs in ms; the same program for both engines, in one thread, started up.\n`,
);
console.log("garment              whole fit  our engine     HiGHS  fit/HiGHS  engine/HiGHS");

/** Times one garment, prints its line and returns how long the whole fit took. */
async function compare(name: string, garment: Garment): Promise<number> {
  const fit = await medianMs(times, () => fitGarment(garment, simplexEngine, { rivals: 0 }));
  const { program } = toProgram(formulate(enumerate(garment)));
  const ours = await medianMs(times, () => simplexEngine(program, {}));
  const highs = await medianMs(times, () => highsEngine(program, {}));
  console.log(
    `${name.padEnd(19)} ${ms(fit)}   ${ms(ours)} ${ms(highs)}    ${ratio(fit / highs)}       ${ratio(ours / highs)}`,
  );
  return fit;
}

const whole: number[] = [];
for (const size of sizes)
  whole.push(await compare(size === 1 ? "1 placement" : `${size} placements`, garmentWith(size)));
await compare("growing, 12 repeats", growingGarment());
await compare("lattice, 9 strands", latticeGarment());
console.log(
  `\nGrowth of the whole fit over ${sizes.join(", ")} placements: n^${growthExponent(sizes, whole).toFixed(2)}`,
);

const five = garmentWith(9);
const rivals = await medianMs(5, () => fitGarment(five, simplexEngine, { rivals: 5 }));
console.log(`Nine placements with five rivals: ${ms(rivals).trim()} ms`);

console.log(["", ...(await benchSizes())].join("\n"));
console.log(["", ...(await benchTrades())].join("\n"));

const cold = async (words: readonly string[]): Promise<number> =>
  medianMs(times, () => execFileSync(process.execPath, words, { stdio: "ignore" }));
const bare = await cold(["-e", "0"]);
console.log("\nCold start, whole process");
for (const words of [["fit", "samples/sleeve.yaml"], ["--help"]]) {
  const taken = await cold(["dist/evenrow.js", ...words]);
  console.log(
    `  evenrow ${words.join(" ").padEnd(24)} ${ms(taken)} ms  ${ratio(taken / bare)} x a bare node (${ms(bare).trim()} ms)`,
  );
}

// The screen redraws through React, which is loaded only for this part.
const { benchExplore, exploreBenchText } = await import("./explore.ts");
console.log(["", ...exploreBenchText(await benchExplore())].join("\n"));
