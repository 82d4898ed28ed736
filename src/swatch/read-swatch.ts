import { nearest } from "../diagnostics/nearest.ts";
import { quoted } from "../diagnostics/shown.ts";
import { cordNeedles, oneStitchMm, swatchCount, swatchMm } from "../garment/read/limits.ts";
import { parseLength } from "../units/length.ts";
import type { Counted, Swatch } from "./swatch.ts";

/** What is wrong with a swatch's words (a sentence without its full stop), and what would be right. */
export interface SwatchProblem {
  readonly problem: string;
  readonly right: string;
}

const exampleSwatch = "40 stitches 18.2 cm, 60 rows 19.4 cm";
const exampleCord = "cord on 3 needles: 50 stitches 26 cm";

/** Longer than anything that says one swatch. */
const longest = 120;

/**
 * Reads one swatch: stitches over a width and rows over a height, for a cord its stitches over a length of it. What it is
 * (`washed`, `cord`, the needles of a cord) may stand before a colon or among the measures; where nothing is said it is
 * ground as it comes from the bed.
 *
 *     40 stitches 18.2 cm, 60 rows 19.4 cm
 *     washed: 40 stitches 17.8 cm, 60 rows 18.6 cm
 *     cord on 3 needles: 50 stitches 26 cm
 *     cord 50 sts over 26 cm on 3 needles
 *
 * @returns the swatch with lengths in mm, or what is wrong with the words
 */
export function readSwatch(text: string): { readonly swatch: Swatch } | SwatchProblem {
  const written = text.trim();
  if (written.length > longest) return { problem: "this is too long for one swatch", right: exampleSwatch };
  const at = written.lastIndexOf(":");
  const before = written.slice(0, Math.max(0, at));
  const among = apart(written.slice(at + 1), wordsAmongMeasures);
  const label = apart(before, wordsBeforeColon);
  const kind = kindOf([...label.taken, ...among.taken], before, label.left);
  if ("problem" in kind) return kind;
  const example = kind.of === "cord" ? exampleCord : exampleSwatch;
  const found: { stitches?: Counted; rows?: Counted } = {};
  for (const part of among.left.split(betweenMeasures)) {
    const read = countedIn(part.trim(), example);
    if ("problem" in read) return read;
    if (found[read.what]) return { problem: `${read.what} are said twice`, right: example };
    found[read.what] = read.counted;
  }
  const { stitches, rows } = found;
  if (!stitches) return { problem: "the stitches over a width are missing", right: example };
  if (kind.of === "cord") {
    if (rows)
      return {
        problem: "a cord has stitches only, one for each round; rows are not counted",
        right: example,
      };
    return { swatch: { ...kind, stitches } };
  }
  if (!rows) return { problem: "the rows over a height are missing", right: example };
  return { swatch: { ...kind, stitches, rows } };
}

/** A comma between digits is a decimal comma, about which the length has its own words. */
const betweenMeasures = /,(?!\d)|(?<=[a-z"'])\s*,|;|\band\b/i;

/** Words that say what was measured; before a colon the word needles may be left out. */
const wordsAmongMeasures = /\b(?:not\s+washed|unwashed|washed|ground|of|cord|on\s+\d{1,3}\s+needles?)\b/gi;
const wordsBeforeColon =
  /\b(?:not\s+washed|unwashed|washed|ground|cord|on\s+\d{1,3}(?:\s+needles?)?)(?=\s|$)/gi;

/** The words of a text that a pattern finds, and the text without them. */
const apart = (
  text: string,
  words: RegExp,
): { readonly taken: readonly string[]; readonly left: string } => ({
  taken: text.toLowerCase().match(words) ?? [],
  left: text.replace(words, " ").trim(),
});

type Kind =
  | { readonly of: "ground"; readonly washed: boolean }
  | { readonly of: "cord"; readonly washed: boolean; readonly needles?: number };

/** @param left what stands before the colon beside the words that are known */
function kindOf(words: readonly string[], label: string, left: string): Kind | SwatchProblem {
  const needles = words.flatMap((word) => /^on\s+(\d+)/.exec(word)?.[1] ?? []);
  const isCord = needles.length > 0 || words.some((word) => word === "cord");
  if (left !== "" || (isCord && words.includes("ground")))
    return {
      problem: `${quoted(label === "" ? words.join(" ") : label.trim())} does not say what was measured`,
      right: "ground, washed, cord, washed cord or cord on 3 needles, before the colon",
    };
  const washed = words.includes("washed");
  if (!isCord) return { of: "ground", washed };
  const [said] = needles;
  if (said === undefined) return { of: "cord", washed };
  const count = Number(said);
  if (count >= cordNeedles.least && count <= cordNeedles.most) return { of: "cord", washed, needles: count };
  return {
    problem: `no cord is knitted on ${said} needles`,
    right: `from ${cordNeedles.least} to ${cordNeedles.most} needles`,
  };
}

const unitOf = new Map<string, "stitches" | "rows">([
  ...["stitches", "stitch", "sts", "st"].map((word) => [word, "stitches"] as const),
  ...["rows", "row"].map((word) => [word, "rows"] as const),
]);

function countedIn(
  part: string,
  example: string,
): { readonly what: "stitches" | "rows"; readonly counted: Counted } | SwatchProblem {
  const match = /^(?<count>\d+(?:[.,]\d+)?)\s*(?<what>[a-z]+)\.?\s+(?:over\s+)?(?<over>\S.*)$/is.exec(part);
  if (!match)
    return {
      problem:
        part === "" ? "a measure is missing" : `${quoted(part)} does not say how many over what length`,
      right: example,
    };
  const { count = "", what = "", over = "" } = match.groups ?? {};
  const unit = unitOf.get(what.toLowerCase());
  if (unit === undefined) {
    const near = nearest(what, ["stitches", "rows"]);
    return {
      problem: `${quoted(what)} is nothing that is counted on a swatch`,
      right: near === undefined ? example : `${near} (the nearest known word)`,
    };
  }
  if (count.includes(","))
    return { problem: "decimals are written with a point", right: count.replace(",", ".") };
  const length = parseLength(over);
  if ("problem" in length) return { problem: length.problem.message, right: length.problem.expected };
  const counted = { count: Number(count), mm: length.mm };
  return slip(counted, unit) ?? { what: unit, counted };
}

/** A slip in one of two numbers shows in their ratio. */
function slip({ count, mm }: Counted, unit: "stitches" | "rows"): SwatchProblem | undefined {
  if (count < swatchCount.least || count > swatchCount.most)
    return { problem: `${count} ${unit} is no count of a swatch`, right: `from 1 to ${swatchCount.most}` };
  if (mm < swatchMm.least || mm > swatchMm.most)
    return {
      problem: "no swatch is measured over that length",
      right: `from ${swatchMm.least} mm to ${swatchMm.most / 1000} m`,
    };
  const each = mm / count;
  if (each >= oneStitchMm.least && each <= oneStitchMm.most) return undefined;
  const one = unit === "rows" ? "a row would be" : "a stitch would be";
  return {
    problem: `${one} ${Number(each.toPrecision(3))} mm`,
    right: `from ${oneStitchMm.least} to ${oneStitchMm.most} mm; count or measure again`,
  };
}
