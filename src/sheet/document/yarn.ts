import type { Fit } from "../../fit/fit.ts";
import { needsOf } from "../../on-hand/needs.ts";
import { needWords } from "../../on-hand/words.ts";
import { roundUpTo } from "../../report/rounding.ts";
import { estimateYarn, type YarnNeed } from "../../yarn/estimate.ts";
import type { Range } from "../../yarn/range.ts";
import type { YarnAmount } from "../../yarn/reckoning.ts";
import { type Fact, paragraph, type Section } from "./document.ts";

/** The yarn to have at hand for all pieces, rounded up, because yarn that runs out spoils the piece. */
export function yarnSection(fit: Fit): Section {
  const { ground, cord } = estimateYarn(fit);
  // Told as finely as it is held against what is on hand, so that no more is asked for than there is.
  const decimals = fit.garment.onHand ? 1 : 0;
  return {
    title: "Yarn",
    content: [
      {
        kind: "facts",
        facts: [
          ...needFacts("Ground", ground, "for casting on, seams, tails and waste", decimals),
          ...(cord ? needFacts("Cord", cord, "for its tails", decimals) : []),
          ...needsOf(fit).map(
            (need): Fact => ({ name: `On hand, ${need.supply.of}`, value: needWords(need) }),
          ),
        ],
      },
      paragraph(
        "The gauge leaves room: how fully the swatch has relaxed, and a quarter of a stitch in its count." +
          (ground.byWeight
            ? ""
            : " A swatch that was weighed is surer: put its stitches, rows and weight into the file under yarn."),
      ),
    ],
  };
}

/** @param decimals to which what has to be at hand is told */
function needFacts(whose: string, need: YarnNeed, extraFor: string, decimals: number): readonly Fact[] {
  const { byGauge, byWeight, surer, extra, atHand } = need;
  return [
    { name: `${whose} by the gauge`, value: rangeWords(byGauge) },
    ...(byWeight
      ? [{ name: `${whose} by the weighed swatch`, value: `${rangeWords(byWeight)}: ${surerWords[surer]}` }]
      : []),
    ...(contradicts(need)
      ? [
          {
            name: "Check",
            value: `the two figures for the ${whose.toLowerCase()} cannot both be right: look again at the swatch's weight and counts, and at tex`,
          },
        ]
      : []),
    { name: `${whose}, to add`, value: `${amountWords(extra)} ${extraFor}` },
    { name: `${whose}, to have at hand`, value: `at least ${amountWords(atHand, decimals)}` },
  ];
}

/** Whether the bounds of the two ways have nothing in common; by its weight a swatch is told in grams always. */
const contradicts = ({ byGauge: { grams: one }, byWeight }: YarnNeed): boolean => {
  const other = byWeight?.grams;
  return one !== undefined && other !== undefined && (one.most < other.least || other.most < one.least);
};

const surerWords = {
  weight: "the surer",
  gauge: "less sure than the gauge, for so small a swatch",
} as const;

/** "about 381 m (355 to 402 m) or 141 g (132 to 149 g)". */
function rangeWords({ metres, grams }: YarnAmount<Range>): string {
  const words = ({ least, about, most }: Range, unit: string): string =>
    `about ${Math.ceil(about)} ${unit} (${Math.floor(least)} to ${Math.ceil(most)} ${unit})`;
  return both(metres && words(metres, "m"), grams && words(grams, "g"));
}

const amountWords = ({ metres, grams }: YarnAmount<number>, decimals = 0): string =>
  both(
    metres === undefined ? undefined : `${roundUpTo(metres, decimals)} m`,
    grams === undefined ? undefined : `${roundUpTo(grams, decimals)} g`,
  );

const both = (metres: string | undefined, grams: string | undefined): string =>
  [metres, grams].filter((one) => one !== undefined).join(" or ");
