import { listed, ordinal } from "../../report/words.ts";
import type { SheetPiece } from "../sheet.ts";
import { type RhythmPart, rhythmOf } from "./rhythm.ts";
import { type Block, type ShapingRun, shapingRuns } from "./shaping-runs.ts";

/** One run of shaping as knitters say it. */
export interface ShapingPassage {
  /** Rows knitted at its first and at its last step. */
  readonly fromRow: number;
  readonly toRow: number;
  readonly block: Block;
  /** "increase 1 at each side on row 5, then every 8th and 9th row by turns 11 times, to row 98" */
  readonly words: string;
}

/**
 * The shaping of a piece summed up in words, from its sheet's actions alone, in working order. The words name every
 * row exactly: "every 6th row" counts from the step before, "by turns" takes the gaps in the order in which they are
 * said, and the times count steps.
 */
export const shapingPassages = (piece: SheetPiece): readonly ShapingPassage[] =>
  shapingRuns(piece).map((run) => ({
    fromRow: run.steps[0]!.row,
    toRow: run.steps.at(-1)!.row,
    block: run.block,
    words: wordsFor(run),
  }));

function wordsFor(run: ShapingRun): string {
  const parts = rhythmOf(run.steps);
  const [first, ...rest] = parts;
  const said = rest.map((part, index) => {
    const amount = part.needles === parts[index]!.needles ? "" : `${part.needles} `;
    return amount + partWords(part);
  });
  const last = parts.at(-1)!.kind === "gaps" ? [`to row ${run.steps.at(-1)!.row}`] : [];
  const [next, ...others] = said;
  return [
    `${verbs[run.act]} ${first!.needles} ${placeWords(run.at)} ${partWords(first!)}`,
    ...(next === undefined ? [] : [`then ${next}`]),
    ...others,
    ...last,
  ].join(", ");
}

const verbs = { increase: "increase", decrease: "decrease", "cast-on": "cast on", "bind-off": "bind off" };

const placeWords = (at: ShapingRun["at"]): string => (at === "each side" ? "at each side" : `at the ${at}`);

const partWords = (part: RhythmPart): string =>
  part.kind === "rows"
    ? `on ${part.rows.length === 1 ? "row" : "rows"} ${listed(part.rows.map(String))}`
    : `${gapWords(part.gaps)} ${timesWords(part.times)}`;

function gapWords(gaps: readonly number[]): string {
  const [only, another] = gaps;
  if (another !== undefined) return `every ${listed(gaps.map(ordinal))} row by turns`;
  return only === 1 ? "every row" : only === 2 ? "every other row" : `every ${ordinal(only!)} row`;
}

const timesWords = (times: number): string => (times === 2 ? "twice" : `${times} times`);
