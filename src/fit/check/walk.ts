import { evaluate } from "../../motif/evaluate.ts";
import type { Expression } from "../../motif/expression.ts";
import type { Anchor, Blocks, CordMotif, Motif } from "../../motif/motif.ts";

/**
 * A motif walked hanging by hanging straight from its anchors, apart from the tracing that the program is made
 * from, so that a fault there cannot hide here.
 */
export interface Walk {
  readonly rows: number;
  readonly strands: readonly { readonly name: string; readonly points: readonly WalkPoint[] }[];
}

export interface WalkPoint {
  /** Places (needle middles for a cord, boundaries for a cable's ends) from the column's centre. */
  readonly from: number;
  readonly to: number;
  readonly needle: number;
  readonly row: number;
}

export type Values = ReadonlyMap<string, number>;

export function walk(motif: Motif, values: Values, repeats: number): Walk {
  const at = (expression: Expression): number => {
    const value = evaluate(expression, values);
    return typeof value === "number" ? value : Number.NaN;
  };
  const lead = at(motif.lead);
  const repeat = at(motif.repeat);
  const anchorsOf = (blocks: Blocks): { needle: number; row: number }[] => {
    const place = (anchor: Anchor, base: number) => ({
      needle: at(anchor.needle),
      row: base + at(anchor.row),
    });
    const points = [place(blocks.start, 0), ...blocks.leadIn.map((anchor) => place(anchor, 0))];
    for (let time = 0; time < repeats; time++)
      points.push(...blocks.repeat.map((anchor) => place(anchor, lead + time * repeat)));
    return points;
  };
  const rows = lead + repeats * repeat;
  if (motif.kind === "cable") {
    const [left, right] = motif.cross.map(at);
    const points = anchorsOf(motif.crossings).map(({ needle, row }) => ({
      needle,
      row,
      from: needle - left!,
      to: needle + right!,
    }));
    return { rows, strands: [{ name: "crossing", points }] };
  }
  return { rows, strands: motif.order.map((name) => ({ name, points: hung(motif, name, anchorsOf) })) };
}

function hung(
  motif: CordMotif,
  name: string,
  anchorsOf: (blocks: Blocks) => { needle: number; row: number }[],
): WalkPoint[] {
  const strand = motif.strands.find((one) => one.name === name)!;
  return anchorsOf(strand).map(({ needle, row }) => {
    // A needle takes up the width from its inner to its outer boundary.
    const outer = needle;
    const inner = needle - Math.sign(needle);
    return { needle, row, from: Math.min(inner, outer), to: Math.max(inner, outer) };
  });
}
