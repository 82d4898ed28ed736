import { wrap } from "../report/wrap.ts";
import { textWidth } from "./deliver.ts";

/** A line of a garment file that is shown with its number, and the mark below it: broken, they would not stand together. */
const excerpt = /^ +\d* +\| /;

/** What the lines after the first of a paragraph stand below: its words, where a mark or a label stands before them. */
const lead = /^ *(?:- |read: +|right: +)?/;

/**
 * Words about a result, as they are written to a terminal that many columns wide: wrapped at spaces to the width of results.
 *
 * @param columns undefined where it is no terminal; then a paragraph stays one line, for whatever reads it
 */
export const saidText = (text: string, columns: number | undefined): string =>
  columns === undefined
    ? text
    : text
        .split("\n")
        .flatMap((line) =>
          excerpt.test(line) ? [line] : wrap(line, textWidth(columns), lead.exec(line)![0].length),
        )
        .join("\n");
