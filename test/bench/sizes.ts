import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { stringify } from "yaml";
import { best, toProgram } from "../../solver/choice.ts";
import { highsEngine } from "../../solver/highs-engine.ts";
import { simplexEngine } from "../../solver/simplex-engine.ts";
import type { SizeRange } from "../../src/garment/garment.ts";
import { readGarment } from "../../src/garment/read-garment.ts";
import { fitRange } from "../../src/grading/fit-range.ts";
import { joinSizes, prepareRange } from "../../src/grading/prepare-range.ts";
import type { ReadySize } from "../../src/grading/solve-sizes.ts";
import { growthExponent, medianMs } from "./measure.ts";

/** Asks the bench for the memory that the largest range takes in a process of its own, and for nothing else. */
export const MEMORY_ONLY = "--memory-of-sizes";

const times = 9;
const counts = [3, 9, 27];
const pieces = ["front", "back", "sleeve"];

/** An invented garment of three pieces in so many sizes, all with one crossed cord. */
function rangeWith(count: number, share: readonly string[]): SizeRange {
  const outline = (size: number, at: number): object => ({
    outline: [
      { height: "0 cm", width: `${20 + 0.7 * size + at} cm` },
      { height: `${33 + 0.37 * size + 1.3 * at} cm`, width: `${31 + 0.9 * size} cm` },
    ],
  });
  const text = stringify({
    format: "evenrow/1",
    bed: { needles: 200 },
    gauge: {
      ground: { stitches: 22, rows: 31, over: "10 cm" },
      cord: { needles: 3, stitches: 19, over: "10 cm" },
    },
    pieces: Object.fromEntries(
      pieces.map((name, at) => [
        name,
        { ...outline(0, at), marks: { "rib top": "4 cm" }, grow: "1 cm", shrink: "1 cm" },
      ]),
    ),
    motifs: {
      plait: {
        like: "crossed cord",
        interval: { allow: [2, 4, 6, 8], prefer: 4 },
        spread: { allow: "2..9", prefer: 3 },
      },
    },
    place: pieces.map((on) => ({
      motif: "plait",
      on,
      from: "rib top",
      margins: { bottom: "2..20", top: "0..12", side: { least: 5 } },
    })),
    sizes: Object.fromEntries(
      Array.from({ length: count }, (_, size) => [
        `size ${size + 1}`,
        { pieces: Object.fromEntries(pieces.map((name, at) => [name, outline(size, at)])) },
      ]),
    ),
    share,
  });
  return rangeOf(text);
}

function rangeOf(text: string): SizeRange {
  const { range, diagnostics } = readGarment(text, "bench.yaml");
  if (!range) throw new Error(diagnostics[0]?.message);
  return range;
}

interface Timed {
  /** Reading apart, all that `fit` does: each size by itself, without each size, the next best looks. */
  readonly wholeMs: number;
  /** The joined program made, thinned and solved, from what is worked out for each size. */
  readonly solvingMs: number;
  readonly highsMs: number;
  readonly columns: number;
  readonly nodes: number;
}

async function timed(range: SizeRange): Promise<Timed> {
  const wholeMs = await medianMs(times, () => fitRange(range, simplexEngine));
  const sizes = prepareRange(range, 1).map(
    ({ name, prepared }): ReadySize => ({ name, prepared: prepared! }),
  );
  const solvingMs = await medianMs(times, () => best(joinSizes(range.share, sizes).choice, simplexEngine));
  const { program } = toProgram(joinSizes(range.share, sizes).choice);
  const highsMs = await medianMs(times, () => highsEngine(program, {}));
  const found = await best(joinSizes(range.share, sizes).choice, simplexEngine);
  const nodes = found.status === "picked" && found.proven ? found.nodes : Number.NaN;
  return { wholeMs, solvingMs, highsMs, columns: program.columns.length, nodes };
}

/** Times ranges of sizes beside HiGHS on the same joined program, as lines to print. */
export async function benchSizes(): Promise<readonly string[]> {
  const lines = [
    "Sizes, three pieces each      columns  nodes   whole fit    solving      HiGHS  solving/HiGHS",
  ];
  const row = (name: string, { columns, nodes, wholeMs, solvingMs, highsMs }: Timed): string =>
    [
      name.padEnd(28),
      String(columns).padStart(8),
      String(nodes).padStart(6),
      ...[wholeMs, solvingMs, highsMs].map((ms) => ms.toFixed(1).padStart(11)),
      (solvingMs / highsMs).toFixed(2).padStart(14),
    ].join("");
  const sample = rangeOf(readFileSync("samples/nine-sizes.yaml", "utf8"));
  lines.push(row("samples/nine-sizes.yaml", await timed(sample)));
  for (const [shared, share] of [
    ["the whole look", ["interval", "spread", "pickup"]],
    ["the interval", ["interval"]],
  ] as const) {
    const all: Timed[] = [];
    for (const count of counts) {
      all.push(await timed(rangeWith(count, share)));
      lines.push(row(`${count} share ${shared}`, all.at(-1)!));
    }
    const growth = (of: (one: Timed) => number): string => growthExponent(counts, all.map(of)).toFixed(2);
    lines.push(
      `  over ${counts.join(", ")} sizes the whole fit grows as n^${growth(({ wholeMs }) => wholeMs)}, solving as n^${growth(({ solvingMs }) => solvingMs)}`,
    );
  }
  const bytes = Number(execFileSync(process.execPath, [process.argv[1]!, MEMORY_ONLY], { encoding: "utf8" }));
  lines.push(`Memory of a process that fits ${counts.at(-1)} sizes, at most: ${(bytes / 1e6).toFixed(0)} MB`);
  return lines;
}

/** Most memory that this process has held, in bytes, once it has fitted the largest range. */
export async function memoryOfSizes(): Promise<number> {
  await fitRange(rangeWith(counts.at(-1)!, ["interval", "spread", "pickup"]), simplexEngine);
  return process.resourceUsage().maxRSS * 1024;
}
