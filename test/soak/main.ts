/**
 * Tries inputs on every target, each in a process of its own, and prints what came of them:
 *
 *   npm run soak                                     everything
 *   npm run soak -- "expressions" --seed 7           one target, with another seed
 *   npm run soak -- "DXF drawings" --from 1200       from its 1200th input on, as when a run was broken off there
 *   npm run soak -- "whole runs" --from 17 --inputs 1 --show    one input again, and what it is
 */
import { parseArgs } from "node:util";
import { watchTarget } from "./supervise.ts";
import { targets } from "./targets.ts";
import { workThrough } from "./work-through.ts";

const usualSeed = 20_261_130;

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    seed: { type: "string", default: String(usualSeed) },
    inputs: { type: "string" },
    from: { type: "string", default: "0" },
    show: { type: "boolean", default: false },
    child: { type: "string" },
  },
});
const seed = Number(values.seed);
const from = Number(values.from);

if (values.child !== undefined) {
  const target = targets.find(({ name }) => name === values.child)!;
  await workThrough(target, { seed, from, to: from + Number(values.inputs), show: values.show });
  process.exit(0);
}

const unknown = positionals.filter((word) => !targets.some(({ name }) => name === word));
if (unknown.length > 0) {
  console.error(
    `There is no target ${unknown.join(", ")}; there are: ${targets.map(({ name }) => name).join(", ")}`,
  );
  process.exit(2);
}
const asked = targets.filter(({ name }) => positionals.length === 0 || positionals.includes(name));
console.log(`seed ${seed}; CPU time of the slowest input; memory is the most that the target's process held`);
console.log("target                     inputs  accepted   slowest      at  memory   failures");
let inputs = 0;
let failures = 0;
for (const target of asked) {
  const count = values.inputs === undefined ? target.usual : Number(values.inputs);
  const told = await watchTarget(target, { seed, from, to: from + count, show: values.show });
  inputs += told.inputs;
  failures += told.failures;
  console.log(
    `${target.name.padEnd(24)} ${String(told.inputs).padStart(8)} ${String(told.accepted).padStart(9)} ${told.slowestMs.toFixed(0).padStart(6)} ms ${String(told.slowestAt).padStart(7)} ${told.memoryMb.toFixed(0).padStart(4)} MB ${String(told.failures).padStart(10)}`,
  );
}
console.log(`${inputs} inputs, ${failures} failures`);
process.exitCode = failures > 0 ? 1 : 0;
