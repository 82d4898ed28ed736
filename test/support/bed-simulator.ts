import type { SideName } from "./garment-file.ts";
import type { SheetAct, SheetPiece, SheetRow } from "./sheet-piece.ts";
import { NeedleBed, needlesBetween } from "./simulator/needles.ts";
import { PatternBook, type PatternRun } from "./simulator/patterns.ts";
import { type Hanging, StrandBook, type StrandRules } from "./simulator/strands.ts";
import type { Rule, Violation } from "./simulator/violation.ts";

export type { SheetAct, SheetPiece, SheetRow } from "./sheet-piece.ts";
export type { Hanging } from "./simulator/strands.ts";

export interface KnitOptions extends StrandRules {
  /** Needles of the whole bed; without it, every needle is there. */
  readonly bedNeedles?: number;
  /** Where the carriage rests before the first row. */
  readonly carriage?: SideName;
}

export interface Crossing {
  readonly row: number;
  readonly motif: string;
  readonly column: number;
  readonly from: number;
  readonly to: number;
  readonly left: number;
  readonly right: number;
  readonly over: SideName;
}

/** Outermost needles in work after a row's actions; where the actions bind everything off, before that. */
interface RowSpan {
  readonly row: number;
  readonly from: number;
  readonly to: number;
}

export interface KnitReport {
  readonly piece: string;
  /** Empty where the sheet can be knitted as it stands. */
  readonly violations: readonly Violation[];
  /** The highest row reached: the piece's length. */
  readonly rows: number;
  /** Carriage passes over the ground; more than `rows` where a neck is worked in two halves. */
  readonly passes: number;
  /** One for every row from 0, in working order; the rows of a second half follow those of the first. */
  readonly spans: readonly RowSpan[];
  readonly hangings: readonly Hanging[];
  readonly crossings: readonly Crossing[];
  /** Needles that stood out of work, each from the row at which it went out to the one at which it came back. */
  readonly ladders: readonly { readonly needle: number; readonly from: number; readonly to: number }[];
  /** Every pattern from its first repeat to its end. */
  readonly patterns: readonly PatternRun[];
  /** Cord stitches used on this piece: all counts, and one for every strand's first hanging. */
  readonly cordStitches: number;
  readonly cordStitchesOf: Readonly<Record<string, number>>;
  readonly needlesAtEnd: readonly number[];
  readonly carriageAtEnd: SideName;
}

const farSide: Readonly<Record<SideName, SideName>> = { left: "right", right: "left" };

/**
 * Knits one piece of a working sheet, row by row, from its JSON alone, and reports what came of it and every
 * thing in it that cannot be knitted so. It goes on after a violation as well as it can and never throws.
 */
export function knit(piece: SheetPiece, options: KnitOptions = {}): KnitReport {
  const knitter = new Knitter(piece, options);
  for (const [index, entry] of piece.rows.entries()) knitter.work(entry, index === 0);
  return knitter.end();
}

/** Needles between the centre line and the edge of one side, at any row that was knitted. */
export function edgesFrom(report: KnitReport): (side: SideName, row: number) => number {
  return (side, row) => {
    const edges = report.spans
      .filter((span) => span.row === row)
      .map((span) => (side === "left" ? -span.from : span.to));
    if (edges.length === 0) throw new Error(`row ${row} was not knitted`);
    return Math.max(...edges);
  };
}

class Knitter {
  readonly #piece: SheetPiece;
  readonly #options: KnitOptions;
  readonly #violations: Violation[] = [];
  readonly #bed: NeedleBed;
  readonly #strands: StrandBook;
  readonly #spans: RowSpan[] = [];
  readonly #crossings: Crossing[] = [];
  readonly #outAt = new Map<number, number>();
  readonly #ladders: KnitReport["ladders"][number][] = [];
  readonly #patterns: PatternBook;
  #row = 0;
  #passes = 0;
  #highest = 0;
  #carriage: SideName = "right";
  #split: { readonly row: number; readonly carriage: SideName } | undefined;

  constructor(piece: SheetPiece, options: KnitOptions) {
    this.#piece = piece;
    this.#options = options;
    const report = (rule: Rule, message: string): void => {
      this.#violations.push({ row: this.#row, rule, message });
    };
    this.#report = report;
    this.#bed = new NeedleBed(options.bedNeedles ?? Number.POSITIVE_INFINITY, report);
    this.#strands = new StrandBook(options, report);
    this.#patterns = new PatternBook(report);
  }

  readonly #report: (rule: Rule, message: string) => void;

  work(entry: SheetRow, isFirst: boolean): void {
    if (isFirst) this.#start(entry);
    else if (entry.do[0]?.act === "work") this.#returnToSplit(entry);
    else this.#passTo(entry.row);
    if (entry.carriage !== this.#carriage) {
      this.#report("carriage", `the carriage rests at the ${this.#carriage}, not at the ${entry.carriage}`);
    }
    this.#strands.beginRow();
    for (const act of entry.do) this.#act(act);
    this.#checkReach(entry.do);
    this.#checkNeedles(entry);
    this.#record();
  }

  end(): KnitReport {
    this.#strands.requireAllFinished();
    this.#bed.requireNothingHeld();
    this.#patterns.requireAllEnded();
    const { hangings } = this.#strands;
    const motifs = [...new Set(hangings.map(({ motif }) => motif))];
    return {
      piece: this.#piece.piece,
      violations: this.#violations,
      rows: this.#highest,
      passes: this.#passes,
      spans: this.#spans,
      hangings,
      crossings: this.#crossings,
      ladders: this.#ladders,
      patterns: this.#patterns.runs,
      cordStitches: this.#strands.usedOf(),
      cordStitchesOf: Object.fromEntries(motifs.map((motif) => [motif, this.#strands.usedOf(motif)])),
      needlesAtEnd: this.#bed.inWork,
      carriageAtEnd: this.#carriage,
    };
  }

  #start(entry: SheetRow): void {
    this.#row = entry.row;
    if (entry.row !== 0) this.#report("row order", `the sheet begins at row ${entry.row}`);
    this.#carriage = this.#options.carriage ?? entry.carriage;
    const [from, to] = this.#piece.needles_at_start;
    const castOn = entry.do.find((act) => act.act === "cast-on");
    if (!castOn || !("from" in castOn) || castOn.from !== from || castOn.to !== to) {
      this.#report("needles", `the needles at the start, ${from} to ${to}, are not those cast on`);
    }
  }

  #returnToSplit(entry: SheetRow): void {
    if (!this.#split) this.#report("hold", "a half is taken up that was never held");
    else {
      if (entry.row !== this.#split.row) {
        this.#report(
          "row order",
          `the second half begins at ${entry.row}, it was held at ${this.#split.row}`,
        );
      }
      this.#carriage = this.#split.carriage;
    }
    this.#row = entry.row;
  }

  #passTo(row: number): void {
    if (!Number.isInteger(row) || row <= this.#row) {
      this.#report("row order", `row ${row} comes after row ${this.#row}`);
    }
    while (this.#row < row) {
      this.#bed.pass();
      this.#row++;
      this.#passes++;
      for (const needle of this.#patterns.needles)
        if (!this.#bed.isInWork(needle))
          this.#report("pattern", `needle ${needle} of a pattern is not in work`);
      this.#carriage = farSide[this.#carriage];
      if (this.#row < row) this.#record();
    }
    this.#highest = Math.max(this.#highest, this.#row);
  }

  #act(act: SheetAct): void {
    switch (act.act) {
      case "cast-on":
        if ("from" in act) this.#bed.castOn(needlesBetween(act.from, act.to));
        else this.#bed.widen(act.side, act.needles);
        return;
      case "increase":
        this.#bed.widen(act.side, act.needles);
        return;
      case "decrease":
        this.#bed.narrow(act.side, act.needles);
        return;
      case "bind-off":
        if ("side" in act) this.#bed.narrow(act.side, act.needles);
        else if (act.yarn === "separate") this.#bed.bindOffWithin(act.from, act.to);
        else this.#bed.bindOffAll(act.from, act.to);
        return;
      case "hang":
        this.#requireInWork(act.needle);
        this.#strands.hang(act, this.#row);
        return;
      case "finish":
        this.#requireInWork(act.needle);
        this.#strands.finish(act);
        return;
      case "cross":
        this.#cross(act);
        return;
      case "out":
        this.#bed.takeOut(act.needle, act.onto);
        this.#outAt.set(act.needle, this.#row);
        return;
      case "in":
        this.#bed.bringBack(act.needle, act.from);
        this.#ladders.push({
          needle: act.needle,
          from: this.#outAt.get(act.needle) ?? Number.NaN,
          to: this.#row,
        });
        return;
      case "pattern":
        for (const needle of needlesBetween(act.from, act.to)) this.#requireInWork(needle);
        this.#patterns.begin(act, this.#row);
        return;
      case "plain":
        this.#patterns.finish(act, this.#row);
        return;
      case "hold":
        this.#split = { row: this.#row, carriage: this.#carriage };
        this.#bed.hold(act.from, act.to, this.#carriage);
        return;
      case "work":
        this.#bed.takeUp(act.from, act.to);
        return;
      default:
        this.#report("act", `${JSON.stringify(act)} is no act that a bed knows`);
    }
  }

  #cross({ from, to, left, right, over, motif, column }: Extract<SheetAct, { act: "cross" }>): void {
    const needles = needlesBetween(from, to);
    for (const needle of needles) this.#requireInWork(needle);
    if (left < 1 || right < 1 || needles.length !== left + right) {
      this.#report("cross", `${from} to ${to} are not ${left} and ${right} stitches`);
    }
    if (over !== "left" && over !== "right") this.#report("cross", `"${over}" cannot lie over`);
    this.#crossings.push({
      row: this.#row,
      motif: motif ?? "",
      column: column ?? 1,
      from,
      to,
      left,
      right,
      over,
    });
  }

  #requireInWork(needle: number): void {
    if (!this.#bed.isInWork(needle)) this.#report("not in work", `needle ${needle} is not in work`);
  }

  // The working yarn is where the carriage is, and more than one stitch at an edge is worked with it.
  #checkReach(acts: readonly SheetAct[]): void {
    const far = farSide[this.#carriage];
    let moved = 0;
    for (const act of acts) if ("side" in act && act.side === far) moved += act.needles;
    if (moved > 1) {
      this.#report("away from the carriage", `${moved} needles at the ${far}, the carriage rests opposite`);
    }
  }

  #checkNeedles(entry: SheetRow): void {
    const stated = String(entry.needles ?? []);
    const found = String(this.#bed.span ?? []);
    if (stated !== found) this.#report("needles", `in work are ${found || "none"}, not ${stated || "none"}`);
  }

  #record(): void {
    const span = this.#bed.lastSpan;
    if (span) this.#spans.push({ row: this.#row, from: span[0], to: span[1] });
  }
}
