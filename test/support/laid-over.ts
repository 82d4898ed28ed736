import type { Hanging, KnitReport } from "./bed-simulator.ts";

interface Part {
  readonly from: Hanging;
  readonly to: Hanging;
  /** Place in the order in which everything was hung. */
  readonly laid: number;
}

/**
 * Which strand lies over which, from the order in which a piece was hung alone: of two parts that change sides of each
 * other the one that was hung later was laid over the other. Strands that meet on a needle and leave it on the other
 * side change sides there, and then the parts that lead to it count.
 */
export function laidOver({ hangings }: Pick<KnitReport, "hangings">): string[] {
  const strands = new Map<string, { column: number; name: string; parts: Part[]; last: Hanging }>();
  hangings.forEach((to, laid) => {
    const key = `${to.motif} ${to.column} ${to.strand}`;
    const strand = strands.get(key);
    if (!strand) strands.set(key, { column: to.column, name: to.strand, parts: [], last: to });
    else {
      strand.parts.push({ from: strand.last, to, laid });
      strand.last = to;
    }
  });
  const all = [...strands.values()];
  return all.flatMap((one, index) =>
    all
      .slice(index + 1)
      .filter((other) => other.column === one.column)
      .flatMap((other) => crossingsOf(one, other)),
  );
}

type Named = { readonly name: string; readonly column: number; readonly parts: readonly Part[] };

function crossingsOf(one: Named, other: Named): string[] {
  const rows = [
    ...new Set([...one.parts, ...other.parts].flatMap(({ from, to }) => [from.row, to.row])),
  ].sort((first, second) => first - second);
  const found: string[] = [];
  let side = 0;
  // The row above which they were last apart: the parts that leave it are the ones that cross.
  let apartAt: number | undefined;
  for (const row of rows) {
    const distance = placeAt(one.parts, row) - placeAt(other.parts, row);
    if (Number.isNaN(distance)) continue;
    const now = Math.sign(Math.round(distance * 1e6));
    if (now === 0) continue;
    if (side !== 0 && now !== side) {
      const [mine, theirs] = [partAbove(one.parts, apartAt!), partAbove(other.parts, apartAt!)];
      const [over, under, names] =
        mine.laid > theirs.laid ? [mine, theirs, [one, other]] : [theirs, mine, [other, one]];
      found.push(
        `${one.column}: ${names[0]!.name} to row ${over.to.row} over ${names[1]!.name} to row ${under.to.row}`,
      );
    }
    side = now;
    apartAt = row;
  }
  return found;
}

const partAbove = (parts: readonly Part[], row: number): Part =>
  parts.find(({ from, to }) => from.row <= row && row < to.row)!;

function placeAt(parts: readonly Part[], row: number): number {
  const part = parts.find(({ from, to }) => from.row <= row && row <= to.row);
  if (!part) return Number.NaN;
  const done = (row - part.from.row) / (part.to.row - part.from.row);
  return position(part.from.needle) + done * (position(part.to.needle) - position(part.from.needle));
}

const position = (needle: number): number => (needle > 0 ? needle - 0.5 : needle + 0.5);
