import { needleName, needlesBetween, position, rangeName } from "../../cloth/bed.ts";
import { counted } from "../../report/words.ts";
import type { Action, CrossAction, FinishAction, HangAction } from "../sheet.ts";
import type { KnitLine } from "./document.ts";
import { inPhrase, outPhrase, patternPhrase, plainPhrase } from "./ornament-phrases.ts";

/** Plain rows folded: "knit 7 rows, to row 22, carriage right". */
export const knitPhrase = ({ rows, toRow, carriage }: KnitLine): string =>
  `knit ${counted(rows, "row")}, to row ${toRow}, carriage ${carriage}`;

/** The actions of one row as a knitter would say them, in working order; like shaping at both sides is said once. */
export function phrasesOf(actions: readonly Action[], columns: (motif: string) => number): readonly string[] {
  const phrases: string[] = [];
  for (let index = 0; index < actions.length; index++) {
    const pair = [actions[index]!, actions[index + 1]] as const;
    if (isMirrored(pair)) {
      phrases.push(`${pair[0].act} 1 stitch at each side`);
      index++;
    } else if (isFold(pair)) {
      phrases.push(foldPhrase(pair, columns));
      index++;
    } else phrases.push(phraseOf(pair[0], columns));
  }
  return phrases;
}

/** An action and what is done after it on the same row. */
type Pair = readonly [Action, Action | undefined];

type Shaping = Extract<Action, { act: "increase" | "decrease" }>;

const isMirrored = (pair: Pair): pair is readonly [Shaping, Shaping] => {
  const [one, other] = pair;
  return (
    (one.act === "increase" || one.act === "decrease") &&
    other?.act === one.act &&
    other.side !== one.side &&
    one.edge === other.edge
  );
};

/** The two arms of a folded cord at its middle: neighbouring stitches of one cord, hung on neighbouring needles. */
const isFold = (pair: Pair): pair is readonly [HangAction, HangAction] => {
  const [one, other] = pair;
  return (
    one.act === "hang" &&
    other?.act === "hang" &&
    one.with === other.strand &&
    other.with === one.strand &&
    one.column === other.column &&
    one.placement === other.placement
  );
};

function foldPhrase(
  [one, other]: readonly [HangAction, HangAction],
  columns: (motif: string) => number,
): string {
  const column = columns(one.motif) > 1 ? `column ${one.column}, ` : "";
  return `${column}hang the middle of the folded cord: two neighbouring cord stitches, both legs of each, ${one.strand} on ${needleName(one.needle)} and ${other.strand} on ${needleName(other.needle)}`;
}

function phraseOf(action: Action, columns: (motif: string) => number): string {
  switch (action.act) {
    case "cast-on":
      return "side" in action
        ? // Never one alone, which is an increase.
          `cast on ${action.needles} stitches at the ${edgeOf(action)}`
        : `cast on ${rangeName([action.from, action.to])}`;
    case "increase":
    case "decrease":
      return `${action.act} 1 stitch at the ${edgeOf(action)}`;
    case "bind-off":
      if ("side" in action) return `bind off ${action.needles} stitches at the ${edgeOf(action)}`;
      return "yarn" in action
        ? `bind off ${rangeName([action.from, action.to])} with a separate length of yarn`
        : `bind off all stitches, ${rangeName([action.from, action.to])}`;
    case "hold":
      return `put ${rangeName([action.from, action.to])} on hold`;
    case "work":
      return `bring the carriage back to this side, join the yarn again and take ${rangeName([action.from, action.to])} back to work`;
    case "hang":
      return `${armOf(action, columns)}: ${hangPhrase(action)}`;
    case "finish":
      return `${armOf(action, columns)}: ${finishPhrase(action)}`;
    case "cross":
      return crossPhrase(action);
    case "out":
      return outPhrase(action);
    case "in":
      return inPhrase(action);
    case "pattern":
      return patternPhrase(action);
    case "plain":
      return plainPhrase(action);
  }
}

const edgeOf = ({ side, edge }: { side: string; edge?: "neck" }): string =>
  edge === "neck" ? `neck edge (${side})` : side;

const armOf = (
  { strand, motif, column }: HangAction | FinishAction,
  columns: (motif: string) => number,
): string => (columns(motif) > 1 ? `column ${column}, ${strand}` : strand);

function hangPhrase({ count, needle, loop, with: other }: HangAction): string {
  const where = needleName(needle);
  if (count > 0) return `count ${count}${loop ? " for a standing loop" : ""}, hang both legs on ${where}`;
  return other === undefined
    ? `hang the first cord stitch, both legs, on ${where}`
    : `hang a cord stitch at the middle of the cord folded with ${other}, both legs, on ${where}`;
}

const finishPhrase = ({ how, loops, needle }: FinishAction): string =>
  how === "unravel"
    ? `unravel the spare cord down to this hanging and hang its ${loops} open loops on ${needleName(needle)}`
    : `cut the spare cord two rounds beyond this hanging, pick it back and hang its ${loops} loops on ${needleName(needle)}`;

function crossPhrase({ from, to, left, right, over }: CrossAction): string {
  const middle = position(from) - 0.5 + left;
  const groups = {
    left: { count: left, name: rangeName(needlesBetween(middle - left, middle)) },
    right: { count: right, name: rangeName(needlesBetween(middle, middle + right)) },
  };
  const [upper, lower] = over === "left" ? [groups.left, groups.right] : [groups.right, groups.left];
  return `cross ${upper.count} over ${lower.count} on ${rangeName([from, to])}: lift ${groups.left.name} and ${groups.right.name}, put the stitches of ${upper.name} back first`;
}
