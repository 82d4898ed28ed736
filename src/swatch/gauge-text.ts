import { roundTo } from "../report/rounding.ts";
import { counted } from "../report/words.ts";
import { wrap } from "../report/wrap.ts";
import { adviceOn, percent } from "./advice.ts";
import type { Pooled } from "./pool.ts";
import type { CordReading, GroundReading, SwatchGauge } from "./swatch-gauge.ts";

/** The gauge in words, with what to know of it below. */
export function gaugeText(gauge: SwatchGauge, width: number): string {
  const { ground, cord } = gauge;
  const advice = adviceOn(gauge).map(
    ({ severity, words }) => `${severity === "warning" ? "Warning: " : ""}${words}`,
  );
  return [
    ...(ground ? groundLines(ground) : []),
    ...(cord ? cordLines(cord) : []),
    "",
    ...advice.flatMap((words) => wrap(`- ${words}`, width, 2)),
  ].join("\n");
}

const groundLines = ({ stitches, rows, washed, change }: GroundReading): readonly string[] => [
  `Ground, over 10 cm, ${from(stitches, washed, "swatch", "swatches")}`,
  line("stitches", stitches),
  line("rows", rows),
  ...(change
    ? [
        `  Washing made it ${changed(change.width, "wider", "narrower")} and ${changed(change.height, "longer", "shorter")}.`,
      ]
    : []),
];

const cordLines = ({ stitches, washed, needles, change }: CordReading): readonly string[] => [
  `Cord${needles === undefined ? "" : ` on ${needles} needles`}, over 10 cm, ${from(stitches, washed, "length", "lengths")}`,
  line("stitches", stitches),
  ...(change ? [`  Washing made it ${changed(change.length, "longer", "shorter")}.`] : []),
];

const from = ({ swatches }: Pooled, washed: boolean, one: string, many: string): string =>
  `from ${counted(swatches, one, many)}, ${washed ? "washed" : "not washed"}`;

const line = (what: string, { perMm, within }: Pooled): string =>
  `  ${what.padEnd(8)}  ${roundTo(perMm * 100, 2)
    .toFixed(2)
    .padStart(6)}  within ${percent(within)}`;

function changed(fraction: number, more: string, less: string): string {
  const amount = percent(Math.abs(fraction));
  if (amount === "0 %") return `no ${more}`;
  return `${amount} ${fraction > 0 ? more : less}`;
}
