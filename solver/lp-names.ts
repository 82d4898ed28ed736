import type { Program } from "./program.ts";

/** Names for the LP format, one for each column and row of a program, in their order. */
export interface LpNames {
  readonly columns: readonly string[];
  readonly rows: readonly string[];
}

/** What the objective is called in the text. */
export const LP_OBJECTIVE = "cost";

/** Far below the 255 characters that the format allows, so that several terms fit on a line. */
const LONGEST_NAME = 80;

/** Words that open a section or mean a bound, in any case, in one reader or another. */
const RESERVED = new Set(
  (
    "max maximum maximize maximise min minimum minimize minimise subject such st s.t. st. to that bound bounds " +
    "gen general generals int integer integers bin binary binaries semi semis semi-continuous sos sos1 sos2 " +
    "free inf infinity end"
  ).split(" "),
);

/**
 * Names that every reader of the format takes: letters, digits, `_` and `.`, opened by a letter that does not
 * make the name look like a number's exponent; none reserved, none twice even where case is not told apart.
 * A name that is legal already stays as it is.
 */
export function lpNames(program: Program): LpNames {
  return {
    columns: uniqueNames(
      program.columns.map(({ name }) => name),
      "x",
      [],
    ),
    rows: uniqueNames(
      program.rows.map(({ name }) => name),
      "r",
      [LP_OBJECTIVE],
    ),
  };
}

function uniqueNames(wanted: readonly string[], prefix: string, taken: readonly string[]): string[] {
  const used = new Set(taken);
  const lastNumber = new Map<string, number>();
  return wanted.map((name) => {
    const legal = legalName(name, prefix);
    let unique = legal;
    // Counting goes on where it stopped, so that many columns of one name take no longer than others.
    for (let number = lastNumber.get(legal) ?? 1; used.has(unique.toLowerCase()); ) {
      number += 1;
      unique = `${legal}_${number}`;
      lastNumber.set(legal, number);
    }
    used.add(unique.toLowerCase());
    return unique;
  });
}

function legalName(name: string, prefix: string): string {
  const plain = name
    .normalize("NFKD")
    .replace(/\p{Mark}/gu, "")
    .replace(/[^A-Za-z0-9_.]+/g, "_")
    .slice(0, LONGEST_NAME);
  const opensWell = /^[A-Za-z]/.test(plain) && !/^e(?:$|[\d._])/i.test(plain);
  return opensWell && !RESERVED.has(plain.toLowerCase()) ? plain : `${prefix}_${plain}`;
}
