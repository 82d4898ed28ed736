import type { CableMotif } from "./motif.ts";
import type { Trace } from "./trace.ts";

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

/** Limits that a traced cable oversteps; they warn and never forbid. */
export function cableWarnings(motif: CableMotif, trace: Trace): readonly CableWarning[] {
  const { left, right, start, leadIn, repeat } = trace.cable!;
  const stitches = left + right;
  const rows = fewestRows(
    [start.row - trace.leadRows, ...leadIn.map(({ row }) => row - trace.leadRows)],
    [...repeat.map(({ row }) => row), ...repeat.map(({ row }) => trace.repeatRows + row)],
  );
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

function fewestRows(before: readonly number[], after: readonly number[]): number {
  const all = [...before, ...after];
  return Math.min(...all.slice(1).map((row, index) => row - all[index]!));
}
