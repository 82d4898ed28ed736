import type { SheetAct } from "../sheet-piece.ts";
import type { Report } from "./violation.ts";

type HangAct = Extract<SheetAct, { act: "hang" }>;
type FinishAct = Extract<SheetAct, { act: "finish" }>;

export interface Hanging {
  readonly row: number;
  readonly motif: string;
  readonly column: number;
  readonly strand: string;
  readonly needle: number;
  readonly count: number;
  /** Whether the stretch before stands off as a loop. */
  readonly loop: boolean;
}

/** The cord stitches that a fit counts for a segment so many needles across and so many rows up. */
interface Pickup {
  readonly needles: number;
  readonly rows: number;
  readonly pickup: number;
}

export interface StrandRules {
  /**
   * Order of work of each motif's strands, or "row by row" where it changes and is judged by what lies over what;
   * without it, the order first met has to be kept.
   */
  readonly orders?: Readonly<Record<string, readonly string[] | "row by row">>;
  /** Each motif's counts; without them, segments alike have to be counted alike. */
  readonly pickups?: Readonly<Record<string, readonly Pickup[]>>;
  /** Open loops that a cord ends with. */
  readonly cordNeedles?: number;
  /** Names the counts that hold for a hanging of a placement (from 1) at a row, where they were chosen more than once. */
  readonly countsAt?: (placement: number, row: number) => string;
}

interface Length {
  readonly last: Hanging;
  readonly finished: boolean;
}

/** Keeps count of every strand: where it hangs, how much of it is used, in which order it is worked. */
export class StrandBook {
  readonly hangings: Hanging[] = [];
  readonly #lengths = new Map<string, Length>();
  readonly #workedBefore = new Set<string>();
  readonly #counts = new Map<string, number>();
  readonly #rules: StrandRules;
  readonly #report: Report;
  #inThisRow = new Map<string, string[]>();

  constructor(rules: StrandRules, report: Report) {
    this.#rules = rules;
    this.#report = report;
  }

  beginRow(): void {
    this.#inThisRow = new Map();
  }

  hang(act: HangAct, row: number): void {
    const hanging = { ...placeOf(act), row, needle: act.needle, count: act.count, loop: act.loop ?? false };
    const key = keyOf(act);
    const length = this.#lengths.get(key);
    this.#checkOrder(act);
    if (!Number.isInteger(act.count)) this.#report("count", `${act.count} is no number of cord stitches`);
    if (!length || length.finished) {
      if (act.count !== 0) this.#report("count", `${name(act)} is counted before it hangs anywhere`);
    } else this.#checkCount(length.last, hanging, act.placement);
    this.hangings.push(hanging);
    this.#lengths.set(key, { last: hanging, finished: false });
  }

  finish(act: FinishAct): void {
    const key = keyOf(act);
    const length = this.#lengths.get(key);
    if (!length || length.finished) {
      this.#report("finish", `${name(act)} is finished and does not hang`);
      return;
    }
    if (length.last.needle !== act.needle) {
      this.#report("finish", `${name(act)} hangs on ${length.last.needle} and is finished on ${act.needle}`);
    }
    const loops = this.#rules.cordNeedles;
    if (loops !== undefined && act.loops !== loops) {
      this.#report("finish", `${name(act)} has ${loops} open loops, not ${act.loops}`);
    }
    this.#lengths.set(key, { ...length, finished: true });
  }

  requireAllFinished(): void {
    for (const [key, { finished }] of this.#lengths) {
      if (!finished) this.#report("finish", `${key} is never finished`);
    }
  }

  /** Cord stitches between first and last hangings, the first stitch of every length counted in. */
  usedOf(motif?: string): number {
    return this.hangings
      .filter((hanging) => motif === undefined || hanging.motif === motif)
      .reduce((used, { count }) => used + (count === 0 ? 1 : count), 0);
  }

  #checkOrder(act: HangAct): void {
    const panel = [act.motif, act.column ?? 1, act.placement ?? 1].join("/");
    const before = this.#inThisRow.get(panel) ?? [];
    const order = act.motif === undefined ? undefined : this.#rules.orders?.[act.motif];
    if (order && order !== "row by row" && !order.includes(act.strand))
      this.#report("strand order", `${name(act)} is not in the order`);
    for (const strand of before) {
      if (strand === act.strand) this.#report("strand order", `${name(act)} is hung twice in a row`);
      if (order === "row by row") continue;
      const against = order
        ? order.includes(act.strand) && order.indexOf(strand) > order.indexOf(act.strand)
        : this.#workedBefore.has(JSON.stringify([act.motif, act.strand, strand]));
      if (against) this.#report("strand order", `${name(act)} comes after ${strand}`);
      this.#workedBefore.add(JSON.stringify([act.motif, strand, act.strand]));
    }
    this.#inThisRow.set(panel, [...before, act.strand]);
  }

  #checkCount(last: Hanging, next: Hanging, placement: number | undefined): void {
    const across = Math.abs(position(next.needle) - position(last.needle));
    const up = next.row - last.row;
    if (up <= 0) this.#report("count", `${next.strand} hangs again without a row between`);
    if (next.count < 1) this.#report("count", `${next.strand} is not counted on from its last hanging`);
    const counts = this.#rules.countsAt?.(placement ?? 1, next.row) ?? "";
    const segment = `${next.motif}, ${across} across and ${up} up${next.loop ? ", a loop" : ""}${counts}`;
    const stated = next.loop ? undefined : this.#rules.pickups?.[next.motif];
    const wanted = stated
      ? stated.find(({ needles, rows }) => needles === across && rows === up)?.pickup
      : (this.#counts.get(segment) ?? next.count);
    if (wanted === undefined) this.#report("count", `nothing is counted for ${segment}`);
    else if (wanted !== next.count) this.#report("count", `${wanted} for ${segment}, not ${next.count}`);
    this.#counts.set(segment, next.count);
  }
}

const position = (needle: number): number => (needle > 0 ? needle - 0.5 : needle + 0.5);

interface OfStrand {
  readonly strand: string;
  readonly motif?: string;
  readonly column?: number;
  readonly placement?: number;
}

const placeOf = ({ strand, motif, column }: OfStrand) => ({
  strand,
  motif: motif ?? "",
  column: column ?? 1,
});

const name = ({ strand, motif, column }: OfStrand): string =>
  `strand ${strand} of ${motif ?? "the motif"}, column ${column ?? 1}`;

const keyOf = (act: OfStrand): string =>
  act.placement === undefined ? name(act) : `${name(act)}, placement ${act.placement}`;
