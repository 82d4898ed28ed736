import { needleName, rangeName } from "../../cloth/bed.ts";
import { counted } from "../../report/words.ts";
import type { InAction, OutAction, PatternAction, PlainAction } from "../sheet.ts";

export const outPhrase = ({ needle, onto }: OutAction): string =>
  `put the stitch of ${needleName(needle)} onto ${needleName(onto)} and take ${needleName(needle)} out of work: it leaves a ladder`;

export const inPhrase = ({ needle, from }: InAction): string =>
  `bring ${needleName(needle)} back to work and lift the loop below the stitch of ${needleName(from)} onto it, so that no hole is left`;

export function patternPhrase(action: PatternAction): string {
  const { from, to, repeat, repeats, rows, stitches, across, edge, card, motif } = action;
  if (action.unfinished)
    return `${motif}, repeat ${repeat}, left unfinished: its first ${rows === 1 ? "row" : `${rows} rows`}${card ? `, from row ${card.row} of the card` : ""}`;
  const which = `${motif}, repeat ${repeat} of ${repeats}`;
  if (repeat > 1)
    return `${which}: ${card ? `row ${card.row} of the card again` : "from its first row again"}`;
  const edges =
    edge.left + edge.right > 0
      ? `, ${counted(edge.left, "edge stitch", "edge stitches")} at the left and ${edge.right} at the right`
      : "";
  const punched = card
    ? `; set the card at row ${card.row}, where stitch ${card.stitch} of its ${card.stitches} begins the first repeat`
    : "";
  const beside = across > 1 ? " side by side" : "";
  return `${which}: knit the pattern on ${rangeName([from, to])}, ${counted(across, "repeat")} of ${counted(stitches, "stitch", "stitches")} by ${counted(rows, "row")}${beside}${edges}${punched}`;
}

export const plainPhrase = ({ from, to, motif }: PlainAction): string =>
  `${motif} ends: knit plain again on ${rangeName([from, to])}`;
