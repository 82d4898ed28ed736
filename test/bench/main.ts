import { cpus, loadavg } from "node:os";
import { simplexEngine } from "../../solver/simplex-engine.ts";
import { fitGarment } from "../../src/fit/solve.ts";
import { garmentWith } from "./garments.ts";
import { garmentsTable } from "./garments-table.ts";
import { medianMs } from "./measure.ts";
import { benchSizes, MEMORY_ONLY, memoryOfSizes } from "./sizes.ts";
import { benchTrades } from "./trades.ts";

if (process.argv.includes(MEMORY_ONLY)) {
  console.log(await memoryOfSizes());
  process.exit(0);
}

console.log(
  `node ${process.version}, ${cpus().length} x ${cpus()[0]?.model ?? "unknown processor"}, load ${loadavg()[0]!.toFixed(1)}`,
);
console.log("Medians of 15 runs. Engines: the same program for all, in one thread, started up.\n");
for (const line of await garmentsTable()) console.log(line);

const nine = garmentWith(9);
const rivals = await medianMs(5, () => fitGarment(nine, simplexEngine, { rivals: 5 }));
console.log(`\nNine placements with five rivals: ${rivals.toFixed(1)} ms`);

console.log(["", ...(await benchSizes())].join("\n"));
console.log(["", ...(await benchTrades())].join("\n"));

// The screen redraws through React, which is loaded only for this part.
const { benchExplore, exploreBenchText } = await import("./explore.ts");
console.log(["", ...exploreBenchText(await benchExplore())].join("\n"));
