import { readFileSync } from "node:fs";

/** How long a key takes to become a drawn frame on one sample, beside a bare ink app that draws the same two frames. */
interface ExploreTimes {
  readonly sample: string;
  readonly medianMs: number;
  readonly p95Ms: number;
  readonly bareMedianMs: number;
  readonly bareP95Ms: number;
}

export interface ExploreBench {
  readonly columns: number;
  readonly rows: number;
  readonly keysPerSample: number;
  readonly times: readonly ExploreTimes[];
  /** Heap in MB after a collection, before and after so many keys. */
  readonly memory: { readonly keys: number; readonly beforeMb: number; readonly afterMb: number };
}

const samples = ["cable-sleeve", "front", "scarf", "sleeve", "too-narrow"] as const;
const [columns, rows] = [120, 40];
const keysPerSample = 120;
const keysForMemory = 5_000;

/** Moves, a change, its undoing: every key changes the frame, and all of them together change nothing. */
const round = ["j", "l", "-", "u", "h", "k"] as const;

/**
 * Measures from the moment a key arrives to the moment its frame is written, with the fit being sought in its own
 * thread meanwhile, as in use. Run it on an idle machine.
 */
export async function benchExplore(): Promise<ExploreBench> {
  // React decides when it is loaded which of its builds it is.
  Object.assign(process.env, { NODE_ENV: "production" });
  const { measureSample, measureMemory } = await import("./explore-measured.tsx");
  const times: ExploreTimes[] = [];
  for (const sample of samples)
    times.push({
      sample,
      ...(await measureSample(textOf(sample), { columns, rows, keys: keysPerSample, round, restMs: 8 })),
    });
  const memory = await measureMemory(textOf("sleeve"), {
    columns,
    rows,
    keys: keysForMemory,
    round,
    restMs: 0,
  });
  return { columns, rows, keysPerSample, times, memory };
}

/** The samples lie beside the folder that the benchmarks are built into, and two above their sources. */
function textOf(sample: string): string {
  for (const place of ["../samples/", "../../samples/"])
    try {
      return readFileSync(new URL(`${place}${sample}.yaml`, import.meta.url), "utf8");
    } catch {
      // The other place, then.
    }
  throw new Error(`the sample ${sample} is missing`);
}

/** The same as lines of text. */
export function exploreBenchText({ times, memory, keysPerSample: keys }: ExploreBench): readonly string[] {
  const ms = (value: number): string => value.toFixed(1).padStart(9);
  return [
    `Key press to drawn frame at ${columns} x ${rows}, ${keys} keys on each sample, ms`,
    "sample            median       p95   bare ink median       p95    ratio of medians",
    ...times.map(
      ({ sample, medianMs, p95Ms, bareMedianMs, bareP95Ms }) =>
        `${sample.padEnd(14)} ${ms(medianMs)} ${ms(p95Ms)}         ${ms(bareMedianMs)} ${ms(bareP95Ms)}         ${(medianMs / bareMedianMs).toFixed(2).padStart(10)}`,
    ),
    `Heap before and after ${memory.keys} keys: ${memory.beforeMb.toFixed(1)} MB, ${memory.afterMb.toFixed(1)} MB`,
  ];
}
