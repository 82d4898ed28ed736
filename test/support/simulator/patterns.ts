import type { SheetAct } from "../sheet-piece.ts";
import { needlesBetween } from "./needles.ts";
import type { Report } from "./violation.ts";

type PatternAct = Extract<SheetAct, { act: "pattern" }>;
type PlainAct = Extract<SheetAct, { act: "plain" }>;

export interface PatternRun {
  readonly motif: string;
  readonly from: number;
  readonly to: number;
  readonly firstRow: number;
  readonly lastRow: number;
  readonly repeats: number;
}

interface Open {
  readonly firstRow: number;
  readonly row: number;
  readonly act: PatternAct;
}

/** Keeps watch over patterns: whole repeats across, one repeat straight after another, each from the card's start. */
export class PatternBook {
  readonly runs: PatternRun[] = [];
  readonly #open = new Map<number, Open>();
  readonly #report: Report;

  constructor(report: Report) {
    this.#report = report;
  }

  /** Needles that a pattern is being knitted on. */
  get needles(): number[] {
    return [...this.#open.values()].flatMap(({ act }) => needlesBetween(act.from, act.to));
  }

  begin(act: PatternAct, row: number): void {
    const { from, to, stitches, across, edge, repeat, card } = act;
    if (needlesBetween(from, to).length !== across * stitches + edge.left + edge.right)
      this.#report("pattern", `${from} to ${to} are not ${across} repeats of ${stitches} and their edges`);
    if (card) this.#checkCard(act, card);
    const before = this.#open.get(act.placement);
    if (repeat !== (before?.act.repeat ?? 0) + 1) this.#report("pattern", `repeat ${repeat} is out of turn`);
    if (before?.act.unfinished) this.#report("pattern", "a repeat begins above one that is unfinished");
    if (before) this.#checkRows(before, row);
    if (before && (before.act.from !== from || before.act.to !== to))
      this.#report("pattern", "a repeat lies on other needles than the one below it");
    this.#open.set(act.placement, { firstRow: before?.firstRow ?? row, row, act });
  }

  finish({ placement, motif }: PlainAct, row: number): void {
    const open = this.#open.get(placement);
    if (!open) {
      this.#report("pattern", `${motif} ends and never began`);
      return;
    }
    this.#checkRows(open, row);
    const { from, to, repeat, repeats, unfinished } = open.act;
    const whole = unfinished ? repeat - 1 : repeat;
    if (whole !== repeats) this.#report("pattern", `${whole} repeats are knitted of ${repeats}`);
    this.runs.push({ motif, from, to, firstRow: open.firstRow, lastRow: row, repeats });
    this.#open.delete(placement);
  }

  requireAllEnded(): void {
    for (const { act } of this.#open.values()) this.#report("pattern", `${act.motif} never ends`);
  }

  #checkRows({ row: began, act }: Open, row: number): void {
    if (row - began !== act.rows)
      this.#report("pattern", `a repeat of ${act.rows} rows is knitted over ${row - began}`);
  }

  // The card's middle is between L1 and R1, and it repeats to both sides.
  #checkCard({ from, stitches, edge }: PatternAct, card: NonNullable<PatternAct["card"]>): void {
    if (card.stitches % stitches !== 0)
      this.#report("pattern", `a card of ${card.stitches} cannot repeat ${stitches}`);
    const first = needlesBetween(from, from + edge.left + 1)[edge.left]!;
    const fromMiddle = first > 0 ? first - 1 : first;
    const fromCard = fromMiddle + Math.floor(card.stitches / 2);
    const stitch = (((fromCard % card.stitches) + card.stitches) % card.stitches) + 1;
    if (card.stitch !== stitch) this.#report("pattern", `needle ${first} meets stitch ${stitch} of the card`);
    if (card.row !== 1) this.#report("pattern", "a repeat begins within the card");
  }
}
