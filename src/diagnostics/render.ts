import type { Diagnostic, Severity } from "./diagnostic.ts";
import { printable } from "./shown.ts";

/** A diagnostic as the machine-readable forms give it. */
export interface DiagnosticJson {
  readonly severity: Severity;
  readonly code: string;
  readonly message: string;
  readonly file: string;
  readonly line?: number;
  readonly column?: number;
  readonly found?: string;
  readonly expected?: string;
  readonly path: readonly (string | number)[];
}

/** A diagnostic as plain data for JSON. */
export function diagnosticJson(diagnostic: Diagnostic, file: string): DiagnosticJson {
  const { severity, code, message, found, expected, path, place } = diagnostic;
  return {
    severity,
    code,
    message,
    file,
    ...place,
    ...(found === undefined ? {} : { found }),
    ...(expected === undefined ? {} : { expected }),
    path,
  };
}

/** How {@link renderDiagnostic} writes. */
export interface Rendering {
  readonly file: string;
  /** The file's text; with it the line in question is shown, with a mark under the place. */
  readonly source?: string;
}

/**
 * A diagnostic as lines of plain text, without a last line break:
 *
 *     sleeve.yaml:12:21 error: a length needs its unit
 *       read:  20
 *       right: 20 cm, or another of mm, cm, m or in
 *       12 |     - { height: 0, width: 20 cm }
 *          |                 ^
 *
 * A note is its first line alone, since nothing in the file has to be looked at.
 */
export function renderDiagnostic(diagnostic: Diagnostic, { file, source }: Rendering): string {
  const { severity, message, found, expected, place } = diagnostic;
  const where = place ? `${printable(file)}:${place.line}:${place.column}` : printable(file);
  const lines = [`${where} ${severity}: ${message}`];
  if (found !== undefined) lines.push(`  read:  ${found}`);
  if (expected !== undefined) lines.push(`  right: ${expected}`);
  if (place && source !== undefined && severity !== "note")
    lines.push(...excerpt(source, place.line, place.column));
  return lines.join("\n");
}

/** All diagnostics, one after the other, in the order of their places. */
export function renderDiagnostics(diagnostics: readonly Diagnostic[], rendering: Rendering): string {
  return inOrder(diagnostics)
    .map((diagnostic) => renderDiagnostic(diagnostic, rendering))
    .join("\n");
}

/** Of warnings that ask for the same so many are shown. */
const mostAlike = 3;

/**
 * The same where something else is to be read below: of warnings of one kind that ask for the same the first few, and how
 * many more there are; mistakes are all told.
 */
export function renderBriefly(diagnostics: readonly Diagnostic[], rendering: Rendering): string {
  const kindOf = ({ severity, code, expected }: Diagnostic): string =>
    JSON.stringify([severity, code, expected]);
  const ordered = inOrder(diagnostics);
  return ordered
    .flatMap((diagnostic) => {
      const alike = ordered.filter((other) => kindOf(other) === kindOf(diagnostic));
      const at = alike.indexOf(diagnostic);
      // To say that there is one more takes as much room as to show it.
      if (diagnostic.severity === "error" || alike.length <= mostAlike + 1)
        return [renderDiagnostic(diagnostic, rendering)];
      if (at >= mostAlike) return [];
      const more = `  and ${alike.length - mostAlike} more warnings like these, which the command check shows`;
      return [renderDiagnostic(diagnostic, rendering), ...(at === mostAlike - 1 ? [more] : [])];
    })
    .join("\n");
}

/** Diagnostics from the top of the file down; those without a place come first. */
export function inOrder(diagnostics: readonly Diagnostic[]): readonly Diagnostic[] {
  const line = ({ place }: Diagnostic): number => place?.line ?? 0;
  const column = ({ place }: Diagnostic): number => place?.column ?? 0;
  return [...diagnostics].sort((a, b) => line(a) - line(b) || column(a) - column(b));
}

/** Characters of a source line that are shown; a longer line is cut so that the place stays in view. */
const WIDEST_EXCERPT = 72;

function excerpt(source: string, line: number, column: number): readonly string[] {
  const text = source.replace(/^\ufeff/, "").split(/\r\n|\n|\r/, line)[line - 1];
  if (text === undefined) return [];
  const characters = [...text.replace(/\t/g, " ")];
  const from = column > WIDEST_EXCERPT ? column - WIDEST_EXCERPT / 2 : 0;
  const cut = characters
    .slice(from, from + WIDEST_EXCERPT)
    .map((character) => (/[\p{C}\p{Zl}\p{Zp}]/u.test(character) ? "?" : character))
    .join("");
  const margin = String(line);
  return [
    `  ${margin} | ${cut}`.trimEnd(),
    `  ${" ".repeat(margin.length)} | ${" ".repeat(Math.max(0, column - 1 - from))}^`,
  ];
}
