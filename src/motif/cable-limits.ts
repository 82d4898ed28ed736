import type { CableMotif } from "./motif.ts";
import type { CableTrace, Trace } from "./trace.ts";

/** Where common practice says that a crossing will be hard to work. */
export interface CableWarning {
  readonly what: "stitches" | "rows";
  readonly worked: number;
  readonly limit: number;
}

/**
 * Stitches that one crossing moves with ease: three over three, with two three-pronged tools (machine-knitting blog,
 * "Cables on single bed"; that wider ones need slack at every pitch is from memory).
 */
const usualStitches = 6;

/**
 * Fewest rows from one crossing to the next: as many as its stitches, two over two on every 4th row and three over
 * three on every 6th (knitting handbook; "6 to 8 rows" for three over three on a bed, machine-knitting blog).
 */
const usualRows = (left: number, right: number): number => 2 * Math.max(left, right);

/** Limits that a motif's traced cables overstep, each said once; they warn and never forbid. */
export function cableWarnings(motif: CableMotif, trace: Trace): readonly CableWarning[] {
  const warnings = trace.cables.flatMap((cable) => warningsOf(motif, cable, trace));
  return [...new Map(warnings.map((warning) => [JSON.stringify(warning), warning])).values()];
}

function warningsOf(motif: CableMotif, cable: CableTrace, trace: Trace): readonly CableWarning[] {
  const { left, right } = cable;
  const stitches = left + right;
  const rows = fewestRows(cable, trace);
  const limits = {
    stitches: motif.limits.stitches ?? usualStitches,
    rows: motif.limits.rows ?? usualRows(left, right),
  };
  const warnings: CableWarning[] = [];
  if (stitches > limits.stitches)
    warnings.push({ what: "stitches", worked: stitches, limit: limits.stitches });
  if (rows < limits.rows) warnings.push({ what: "rows", worked: rows, limit: limits.rows });
  return warnings;
}

/** Fewest rows from one crossing to the next, over two repeats. */
function fewestRows({ start, leadIn, repeat }: CableTrace, { leadRows, repeatRows }: Trace): number {
  const rows = [
    ...[start, ...leadIn].map(({ row }) => row - leadRows),
    ...[0, repeatRows].flatMap((base) => repeat.map(({ row }) => base + row)),
  ];
  return Math.min(...rows.slice(1).map((row, index) => row - rows[index]!));
}
