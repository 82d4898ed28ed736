import { roundTo } from "../report/rounding.ts";
import { countFor, misreading, type Pooled } from "./pool.ts";
import type { CordReading, SwatchGauge } from "./swatch-gauge.ts";

export interface Advice {
  readonly about:
    | "too small"
    | "more stitches"
    | "swatches differ"
    | "not washed"
    | "cord too short"
    | "cord's middle"
    | "rest";
  /** A warning says that the gauge should not be relied on as it is. */
  readonly severity: "warning" | "note";
  /** A sentence with its full stop. */
  readonly words: string;
}

/**
 * Fewest stitches and rows of a swatch: those of the coarsest of the published lay-outs, which mark 20 stitches and 30
 * rows on a bulky bed (30 by 40 on a middling one, 40 by 40 on a standard one).
 */
export const fewest = { stitches: 20, rows: 30 } as const;

/** As near as a gauge needs to be known: half a centimetre in a metre. Common practice, no published source. */
const wellKnown = 0.005;

/** Published for a knitted cord: knit 6 in and count the middle 4 in, unstretched. */
export const cordMiddleMm = 4 * 25.4;

/** What a knitter should know of these swatches, warnings first. */
export function adviceOn({ ground, cord }: SwatchGauge): readonly Advice[] {
  const found = [
    ...(ground
      ? [
          ...tooSmall(ground.stitches, "stitches"),
          ...tooSmall(ground.rows, "rows"),
          ...differing(ground.stitches, "stitches"),
          ...differing(ground.rows, "rows"),
          ...moreWould(ground.stitches, "stitches", "width"),
          ...moreWould(ground.rows, "rows", "length"),
        ]
      : []),
    ...(cord ? onCord(cord) : []),
    ...notWashed(ground?.washed === false, cord?.washed === false),
    { about: "rest", severity: "note", words: "Let a swatch rest overnight before it is measured." } as const,
  ];
  return [
    ...found.filter(({ severity }) => severity === "warning"),
    ...found.filter(({ severity }) => severity === "note"),
  ];
}

type Unit = "stitches" | "rows";

function tooSmall({ most }: Pooled, unit: Unit): readonly Advice[] {
  if (most.count >= fewest[unit]) return [];
  return [
    {
      about: "too small",
      severity: "warning",
      words: `${most.count} ${unit} are few for a swatch: count over ${fewest[unit]} at least, on a fine bed over 40.`,
    },
  ];
}

function moreWould(one: Pooled, unit: Unit, measure: string): readonly Advice[] {
  const { most, perMm, within } = one;
  const count = countFor(perMm, wellKnown);
  // Where swatches differ, counting further does not make them agree.
  if (within <= wellKnown || one.spread > one.reading || count <= most.count) return [];
  const then = misreading({ count, mm: count / perMm });
  return [
    {
      about: "more stitches",
      severity: "note",
      words: `Over ${count} ${unit} instead of ${most.count} the ${measure} would be known within ${percent(then)} instead of ${percent(within)}.`,
    },
  ];
}

function differing({ spread, reading }: Pooled, unit: Unit): readonly Advice[] {
  if (spread <= reading) return [];
  return [
    {
      about: "swatches differ",
      severity: "warning",
      words: `The swatches differ in their ${unit} by more than counting and the tape explain (${percent(spread)} from what they say together, ${percent(reading)} explained): look for another tension, or one that has not rested.`,
    },
  ];
}

function onCord({ stitches }: CordReading): readonly Advice[] {
  const long = stitches.most.mm >= cordMiddleMm - 1e-9;
  return [
    long
      ? {
          about: "cord's middle",
          severity: "note",
          words: "Measure a cord in its middle, unstretched; leave out 1 in (2.5 cm) at either end.",
        }
      : {
          about: "cord too short",
          severity: "warning",
          words:
            "The cord was measured over little: knit 6 in (15 cm) of it and count the middle 4 in (10 cm), unstretched.",
        },
  ];
}

function notWashed(ground: boolean, cord: boolean): readonly Advice[] {
  if (!ground && !cord) return [];
  const which = ground && cord ? "Ground and cord were" : ground ? "The ground was" : "The cord was";
  return [
    {
      about: "not washed",
      severity: "note",
      words: `${which} measured unwashed: wash and dry as the garment will be, and measure again.`,
    },
  ];
}

/** "0.5 %". */
export const percent = (fraction: number): string => `${roundTo(fraction * 100, 1)} %`;
