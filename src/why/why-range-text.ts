import type { Place } from "../diagnostics/diagnostic.ts";
import { noRangeText } from "../grading/report/no-range-text.ts";
import { listed } from "../report/words.ts";
import { wrap } from "../report/wrap.ts";
import type { PlacedWhy } from "./why-json.ts";
import type { LeftOut, WhyNotRange, WhySize, WhySoRange } from "./why-range.ts";
import { unfinishedLines, whyLines } from "./why-text.ts";

/** What is found out of all sizes, with the places of the rules in the file. */
export type PlacedWhyRange =
  | WhySoRange
  | (Omit<WhyNotRange, "sizes"> & {
      readonly sizes: readonly WhySize<PlacedWhy>[];
      /** Where the file says what is shared. */
      readonly sharePlace?: Place | undefined;
    });

/** What stands in the way of each size, or which rules bind, size by size in words. */
export function whyRangeText(why: PlacedWhyRange, width: number): string {
  const sizes = (why.sizes as readonly WhySize<PlacedWhy>[]).flatMap(({ size, why: one }) => [
    "",
    size,
    ...whyLines(one, width),
  ]);
  const lines =
    why.status === "fits"
      ? [...headOfFit(why), ...sizes, ...othersLines(why, width)]
      : [noRangeText(why.result, [], width), ...sizes, ...leftOutLines(why, width)];
  return [...lines, ...unfinishedLines(why, width)].join("\n");
}

const headOfFit = ({ title, others }: WhySoRange): readonly string[] => [
  title,
  "=".repeat(title.length),
  "",
  others.length > 0 ? "Every size fits. Of those that give up most:" : "Every size fits.",
];

const othersLines = ({ others }: WhySoRange, width: number): readonly string[] =>
  others.length > 0 ? ["", ...wrap(`For ${listed(others)}: --size NAME`, width)] : [];

function leftOutLines(
  why: Exclude<PlacedWhyRange, { readonly status: "fits" }>,
  width: number,
): readonly string[] {
  const { result, leftOut, complete, sharePlace } = why;
  if (result.misfits.length > 0) return [];
  if (leftOut.length === 0)
    return complete
      ? ["", ...wrap("Nothing that is left out of share, alone or by twos, lets every size fit.", width)]
      : [];
  const place = sharePlace ? ` (line ${sharePlace.line})` : "";
  return [
    "",
    `${leftOut.length === 1 ? "This" : "Any one of these"} would let every size fit${place}:`,
    ...leftOut.flatMap((one) => wrap(`  - ${leftOutWords(one)}`, width, 4)),
  ];
}

/** "leave interval and pickup out of share". */
export const leftOutWords = ({ quantities }: LeftOut): string => `leave ${listed(quantities)} out of share`;
