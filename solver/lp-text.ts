import { LP_OBJECTIVE, type LpNames, lpNames } from "./lp-names.ts";
import { mergedTerms } from "./merged-terms.ts";
import type { Program, Relation, Row, Term } from "./program.ts";
import { programFault } from "./program-fault.ts";

export interface LpTextOptions {
  /** Put at the top, one line each. */
  readonly comments?: readonly string[];
}

/** Some readers cut a line at 255 characters, others at 560; people read less. */
const LONGEST_LINE = 110;

/**
 * A program in the CPLEX LP format, as read by HiGHS, GLPK, CBC and others.
 *
 * Numbers are written so that they read back exactly. Names are made legal and unique ({@link lpNames}); where
 * that changed one, nothing else tells.
 *
 * @throws RangeError where the program has a {@link programFault}
 */
export function programToLpText(given: Program, options: LpTextOptions = {}): string {
  const fault = programFault(given);
  if (fault !== undefined) throw new RangeError(fault);

  const program = withNegativeBoundsAsRows(given);
  const names = lpNames(program);
  const rows = program.rows.map((row) => ({ ...row, terms: mergedTerms(row.terms) }));
  return [
    ...(options.comments ?? []).flatMap((comment) => comment.split(/\r?\n/).flatMap(commentLines)),
    "Minimize",
    ...statement(LP_OBJECTIVE, objective(program, rows, names)),
    "Subject To",
    ...(rows.length > 0
      ? rows.flatMap(({ terms, relation, bound }, row) =>
          constraint(names.rows[row]!, terms, relation, bound, names),
        )
      : constraint(NO_ROWS, [], ">=", 0, names)),
    ...section("Bounds", boundLines(program, names)),
    ...section("Binaries", wrap(names.columns.filter((_, column) => isBinary(program, column)))),
    ...section(
      "Generals",
      wrap(names.columns.filter((_, column) => program.columns[column]!.whole && !isBinary(program, column))),
    ),
    "End",
    "",
  ].join("\n");
}

const isBinary = (program: Program, column: number): boolean =>
  program.columns[column]!.whole && program.columns[column]!.upper === 1;

/** Stands where the format asks for a column and there is none. */
const NOTHING = "nothing";

/** A row that always holds: GLPK wants at least one. */
const NO_ROWS = "no_rows";

/** Every column that costs something, and with a zero those that would otherwise not be mentioned at all. */
function objective(program: Program, rows: readonly { terms: readonly Term[] }[], names: LpNames): string[] {
  const inRows = new Set(rows.flatMap(({ terms }) => terms.map(([column]) => column)));
  const terms = program.columns.flatMap(({ cost }, column): Term[] =>
    cost !== 0 || !inRows.has(column) ? [[column, cost]] : [],
  );
  return terms.length > 0 ? sum(terms, names) : [`0 ${names.columns[0] ?? NOTHING}`];
}

function constraint(
  name: string,
  terms: readonly Term[],
  relation: Relation,
  bound: number,
  names: LpNames,
): string[] {
  const left = terms.length > 0 ? sum(terms, names) : [`0 ${names.columns[0] ?? NOTHING}`];
  return statement(name, [...left, `${relation} ${bound}`]);
}

const sum = (terms: readonly Term[], names: LpNames): string[] =>
  terms.map(([column, coefficient], index) => {
    const sign = coefficient < 0 ? "- " : index > 0 ? "+ " : "";
    const size = Math.abs(coefficient);
    return `${sign}${size === 1 ? "" : `${size} `}${names.columns[column]}`;
  });

function boundLines(program: Program, names: LpNames): string[] {
  const lines = program.columns.flatMap(({ upper }, column) =>
    upper === undefined || upper < 0 || isBinary(program, column)
      ? []
      : [upper === 0 ? ` ${names.columns[column]} = 0` : ` ${names.columns[column]} <= ${upper}`],
  );
  return program.columns.length > 0 ? lines : [` ${NOTHING} = 0`];
}

/** Readers disagree on a negative upper bound: some move the lower bound below it. As a row it is plain. */
function withNegativeBoundsAsRows(program: Program): Program {
  const rows = program.columns.flatMap(({ name, upper }, column): Row[] =>
    upper !== undefined && upper < 0
      ? [{ name: `upper bound of ${name}`, terms: [[column, 1]], relation: "<=", bound: upper }]
      : [],
  );
  return { ...program, rows: [...program.rows, ...rows] };
}

const section = (title: string, lines: readonly string[]): string[] =>
  lines.length > 0 ? [title, ...lines] : [];

const statement = (name: string, parts: readonly string[]): string[] => wrap([`${name}:`, ...parts]);

/** Lines of at most {@link LONGEST_LINE} characters; a part is never broken. */
function wrap(parts: readonly string[]): string[] {
  const lines: string[] = [];
  let line = "";
  for (const part of parts) {
    if (line !== "" && line.length + part.length + 1 > LONGEST_LINE) {
      lines.push(line);
      line = "  ";
    }
    line += ` ${part}`;
  }
  return line === "" ? lines : [...lines, line];
}

const commentLines = (comment: string): string[] => {
  const words = wrap(comment.split(/\s+/).filter((word) => word !== ""));
  return words.length > 0 ? words.map((line) => `\\ ${line.trim()}`) : ["\\"];
};
