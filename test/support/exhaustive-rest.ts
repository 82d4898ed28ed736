import type {
  AllowEntry,
  ChoiceEntry,
  EaseEntry,
  GarmentFile,
  LikeCordEntry,
  SideName,
} from "./garment-file.ts";
import { holds } from "./referee/arithmetic.ts";
import { markRow, stretchedRow } from "./referee/cloth.ts";
import { allowedBetween, choice, fraction, isAllowed, lengthMm } from "./referee/entries.ts";
import { amountBeside, weightOf } from "./referee/weights.ts";

/** A crossed cord that is begun on a piece which was measured at a row. */
export interface BegunCord {
  /** The gauge as measured, in mm. */
  readonly rowMm: number;
  readonly stitchMm: number;
  readonly row: number;
  /** Row of its first hanging, and the mark below it as it was knitted. */
  readonly firstRow: number;
  readonly fromRow: number;
  readonly interval: number;
  readonly spread: number;
  /** Cord stitches counted over the lead-in and over a crossing so far. */
  readonly leadIn: number;
  readonly crossing: number;
  readonly columns: number;
  readonly gap: number;
  /** Boundaries at the outer sides of its panel. */
  readonly leftEdge: number;
  readonly rightEdge: number;
  /** Needles between the centre line and an edge, once the piece is made longer by so many rows; undefined where it cannot be. */
  readonly edges: (change: number) => ((side: SideName, row: number) => number) | undefined;
}

/**
 * The least that going on with a crossed cord can cost, by trying every change of length, every number of repeats,
 * every look and every count; undefined where nothing keeps the limits. The look stays where that can be.
 */
export function exhaustiveRest(garment: GarmentFile, begun: BegunCord): number | undefined {
  return cheapest(garment, begun, false) ?? cheapest(garment, begun, true);
}

function cheapest(garment: GarmentFile, begun: BegunCord, otherLooks: boolean): number | undefined {
  let least: number | undefined;
  for (const cost of costs(garment, begun, otherLooks))
    if (cost < (least ?? Number.POSITIVE_INFINITY)) least = cost;
  return least;
}

function* costs(garment: GarmentFile, begun: BegunCord, otherLooks: boolean): Generator<number> {
  const [placement] = garment.place;
  const piece = garment.pieces[placement!.on]!;
  const motif = garment.motifs[placement!.motif] as LikeCordEntry;
  const weights = garment.weights ?? {};
  const weigh = (term: string, amount: number): number => weightOf(weights, term) * amount;
  const repeatRows = 2 * begun.interval;
  const leadEnd = begun.firstRow + begun.interval;
  const standing = Math.max(0, Math.ceil((begun.row - leadEnd) / repeatRows));
  const endRow = leadEnd + standing * repeatRows;
  const cloth = { rowMm: begun.rowMm, stitchMm: begun.stitchMm, cordStitchMm: undefined };
  const from = markRow(piece, placement!.from, cloth);
  const to = markRow(piece, placement!.to, cloth);
  const margins = placement!.margins ?? {};
  const bottom = begun.firstRow - begun.fromRow;
  const intervals = otherLooks
    ? allowedBetween(choice(motif.interval).allow ?? "2..12", 1, 40)
    : [begun.interval];
  const rows = (length: string | undefined): number =>
    Math.floor(lengthMm(length ?? "0 mm") / begun.rowMm + 1e-9);
  for (let change = -rows(piece.shrink); change <= rows(piece.grow); change++) {
    if (to - from + change < 1) continue;
    const edge = begun.edges(change);
    if (!edge) continue;
    const topMark = Math.max(begun.row, stretchedRow(to, [{ from, to, change }]));
    for (const interval of intervals)
      for (let added = 0; endRow + added * 2 * interval <= topMark; added++) {
        if (added === 0 && interval !== begun.interval) continue;
        const lastRow = endRow + added * 2 * interval;
        const top = topMark - lastRow;
        const repeats = standing + added;
        const repeatsChoice = choice(placement!.repeats);
        if (repeats < 1 || !isAllowed(repeatsChoice.allow, repeats) || !isAllowed(margins.top, top)) continue;
        if (!keepsSides(margins, begun, edge, lastRow)) continue;
        const look = lookCost(garment, motif, begun, interval, added > 0);
        if (look === undefined) continue;
        const columns = choice(placement!.columns);
        const gap = choice(placement!.gap);
        yield look +
          weigh("length", Math.abs(change)) +
          weigh("balance", Math.abs(bottom - top)) +
          weigh("repeats", amountBeside(repeatsChoice.prefer, repeats)) +
          weigh("columns", amountBeside(columns.prefer, begun.columns)) +
          (begun.columns > 1 ? weigh("gap", amountBeside(gap.prefer, begun.gap)) : 0);
      }
  }
}

function keepsSides(
  margins: NonNullable<GarmentFile["place"][number]["margins"]>,
  begun: BegunCord,
  edge: (side: SideName, row: number) => number,
  lastRow: number,
): boolean {
  let [left, right] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (let row = begun.firstRow; row <= lastRow; row++) {
    left = Math.min(left, edge("left", row) + begun.leftEdge);
    right = Math.min(right, edge("right", row) - begun.rightEdge);
  }
  if (margins.left !== undefined || margins.right !== undefined)
    return left >= 0 && right >= 0 && isAllowed(margins.left, left) && isAllowed(margins.right, right);
  const least = margins.side?.least ?? 0;
  return left >= least && right >= least;
}

/** What a look gives up: its quantities, and the mean of its ease over the lead-in that is made and the crossing. */
function lookCost(
  garment: GarmentFile,
  motif: LikeCordEntry,
  begun: BegunCord,
  interval: number,
  isNew: boolean,
): number | undefined {
  const weights = garment.weights ?? {};
  if (!(motif.rules ?? []).every((rule) => holds(rule, { interval, spread: begun.spread }))) return undefined;
  const cord = garment.gauge.cord!;
  const limits = limitsOf(motif.ease);
  const ease = (needles: number, rows: number, pickup: number): number =>
    (pickup * (lengthMm(cord.over) / cord.stitches)) /
      Math.hypot(needles * begun.stitchMm, rows * begun.rowMm) -
    1;
  const off = (value: number): number => 100 * Math.abs(value - limits.prefer);
  const leadIn = off(ease(begun.spread - 1, begun.interval, begun.leadIn));
  const across = 2 * begun.spread - 1;
  let crossing: number | undefined;
  if (!isNew) crossing = off(ease(across, interval, begun.crossing));
  else
    for (let pickup = 1; pickup < 200; pickup++) {
      const value = ease(across, interval, pickup);
      if (value < limits.from - 1e-9 || value > limits.to + 1e-9) continue;
      crossing = Math.min(crossing ?? Number.POSITIVE_INFINITY, off(value));
    }
  if (crossing === undefined) return undefined;
  const prefers = (entry: AllowEntry | ChoiceEntry | undefined, usual: number): number | undefined =>
    entry === undefined ? usual : choice(entry).prefer;
  return (
    (weightOf(weights, "ease") * (leadIn + crossing)) / 2 +
    weightOf(weights, "interval") * amountBeside(prefers(motif.interval, 4), interval) +
    weightOf(weights, "spread") * amountBeside(prefers(motif.spread, 3), begun.spread)
  );
}

const limitsOf = (ease: EaseEntry | undefined) => ({
  from: fraction(ease?.from ?? "-5 %"),
  to: fraction(ease?.to ?? "15 %"),
  prefer: fraction(ease?.prefer ?? "2 %"),
});
