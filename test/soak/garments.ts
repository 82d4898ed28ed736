import fc from "fast-check";
import { toProgram } from "../../solver/choice.ts";
import { WorkEnded, within } from "../../src/fit/allowance.ts";
import { prepare } from "../../src/fit/prepare.ts";
import { anyBytes, changedBytes, yamlBombs } from "./inputs/bytes.ts";
import { sampleTexts } from "./inputs/samples.ts";
import { changedTrees, nudgedTrees, written } from "./inputs/trees.ts";
import { readAsCommandsDo } from "./reading.ts";
import { must, type Outcome, type Target, targetOf } from "./target.ts";

const read = (input: string | Uint8Array): Outcome => (readAsCommandsDo(input) ? "accepted" : "refused");

/** Samples and random garments with values, keys and whole branches changed, as YAML of several styles and as JSON. */
export const changedGarments: Target = targetOf({
  name: "garments changed",
  usual: 100_000,
  inputs: () => written(changedTrees(1, 5)),
  attempt: async () => read,
});

/** The bytes of a garment file: broken, cut, mixed up, swelling, or of no kind at all. */
export const rawBytes: Target = targetOf({
  name: "garment bytes",
  usual: 60_000,
  inputs: () =>
    fc.oneof(
      { weight: 6, arbitrary: changedBytes(sampleTexts(".yaml")) },
      { weight: 2, arbitrary: anyBytes() },
      yamlBombs(),
    ),
  attempt: async () => read,
});

const limitMs = 250;

/** How much longer than its limit the working out may take before it looks at the clock, on a busy machine. */
const slackMs = 4000;

/**
 * Garments with other numbers, most of which still read: all that can be chosen is worked out, within a limit of time,
 * and what is more than can be held is refused. Looks at this thread's own time, because others share the machine.
 */
export const acceptedGarments: Target = targetOf({
  name: "choices of garments",
  usual: 8000,
  inputs: () => written(nudgedTrees()),
  attempt: async () => (text) => {
    const garment = readAsCommandsDo(text);
    if (!garment) return "refused";
    const before = process.cpuUsage();
    try {
      const prepared = within(limitMs, () => prepare(garment));
      if (prepared) toProgram(prepared.program);
    } catch (error) {
      if (!(error instanceof WorkEnded)) throw error;
    }
    const { user, system } = process.cpuUsage(before);
    const tookMs = (user + system) / 1000;
    must(tookMs < limitMs + slackMs, `working out took ${tookMs.toFixed(0)} ms, and was given ${limitMs}`);
    return "accepted";
  },
});
