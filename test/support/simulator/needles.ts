import type { SideName } from "../garment-file.ts";
import type { NeedleSpan } from "../sheet-piece.ts";
import type { Report } from "./violation.ts";

/** L1 and R1 are neighbours: there is no needle 0 between them. */
const neighbour = (needle: number, side: SideName): number => {
  const next = needle + (side === "left" ? -1 : 1);
  return next === 0 ? neighbour(next, side) : next;
};

/** Every needle from one to another, both included. */
export function needlesBetween(from: number, to: number): number[] {
  const needles: number[] = [];
  for (let needle = from; needle <= to; needle++) if (needle !== 0) needles.push(needle);
  return needles;
}

/** Needles in work and needles held, the latter keeping their stitches while the carriage passes them by. */
export class NeedleBed {
  readonly #inWork = new Set<number>();
  readonly #held = new Set<number>();
  /** Needles taken out of work on purpose: the yarn is meant to float past them. */
  readonly #ladders = new Set<number>();
  readonly #furthest: number;
  readonly #report: Report;
  #lastSpan: NeedleSpan | undefined;

  constructor(needles: number, report: Report) {
    this.#furthest = Math.floor(needles / 2);
    this.#report = report;
  }

  isInWork(needle: number): boolean {
    return this.#inWork.has(needle);
  }

  /** The needles in work, from the left. */
  get inWork(): number[] {
    return [...this.#inWork].sort((one, other) => one - other);
  }

  get span(): NeedleSpan | undefined {
    const needles = this.inWork;
    return needles.length === 0 ? undefined : [needles[0]!, needles.at(-1)!];
  }

  /** The span now, or the one just before everything was bound off. */
  get lastSpan(): NeedleSpan | undefined {
    return this.span ?? this.#lastSpan;
  }

  castOn(needles: readonly number[]): void {
    for (const needle of needles) {
      if (needle === 0 || Math.abs(needle) > this.#furthest) {
        this.#report("off the bed", `there is no needle ${needle}`);
      } else if (this.#inWork.has(needle) || this.#held.has(needle)) {
        this.#report("already in work", `needle ${needle} has a stitch`);
      }
      this.#inWork.add(needle);
    }
  }

  widen(side: SideName, count: number): void {
    for (let done = 0; done < count; done++) {
      const edge = this.#edge(side);
      if (edge === undefined) {
        this.#report("not in work", `nothing in work to widen at the ${side}`);
        return;
      }
      this.castOn([neighbour(edge, side)]);
    }
  }

  narrow(side: SideName, count: number): void {
    for (let done = 0; done < count; done++) {
      const edge = this.#edge(side);
      if (edge === undefined) {
        this.#report("not in work", `nothing in work to narrow at the ${side}`);
        return;
      }
      this.#release([edge]);
    }
  }

  bindOffWithin(from: number, to: number): void {
    this.#requireInWork(needlesBetween(from, to));
    this.#release(needlesBetween(from, to));
  }

  bindOffAll(from: number, to: number): void {
    const wanted = needlesBetween(from, to);
    if (String(wanted) !== String(this.inWork)) {
      this.#report("bind-off", `${from} to ${to} are to be bound off, in work are ${this.inWork}`);
    }
    this.#release(this.inWork);
  }

  /** The needle's stitch goes to a neighbour, and the needle stands empty until it comes back. */
  takeOut(needle: number, onto: number): void {
    this.#requireInWork([needle, onto]);
    this.#requireNeighbours(needle, onto);
    this.#inWork.delete(needle);
    this.#ladders.add(needle);
    const span = this.span;
    if (!span || needle < span[0] || needle > span[1])
      this.#report("ladder", `needle ${needle} goes out of work at the edge, where nothing is beside it`);
  }

  bringBack(needle: number, from: number): void {
    this.#requireInWork([from]);
    this.#requireNeighbours(needle, from);
    if (!this.#ladders.delete(needle)) this.#report("ladder", `needle ${needle} was not out of work`);
    this.#inWork.add(needle);
  }

  #requireNeighbours(one: number, other: number): void {
    if (neighbour(one, "left") !== other && neighbour(one, "right") !== other)
      this.#report("ladder", `needle ${other} is no neighbour of needle ${one}`);
  }

  /** `carriage` is where it rests: the half on its side goes on first. */
  hold(from: number, to: number, carriage: SideName): void {
    const needles = needlesBetween(from, to);
    this.#requireInWork(needles);
    for (const needle of needles) {
      this.#inWork.delete(needle);
      this.#held.add(needle);
    }
    const onCarriageSide = this.inWork.every((needle) =>
      carriage === "right" ? needle > to : needle < from,
    );
    if (!onCarriageSide || this.#inWork.size === 0) {
      this.#report("hold", `the half at the ${carriage}, where the carriage rests, is not what goes on`);
    }
  }

  takeUp(from: number, to: number): void {
    if (this.#inWork.size > 0) this.#report("hold", "one half is still in work when the other is taken up");
    for (const needle of needlesBetween(from, to)) {
      if (!this.#held.delete(needle)) this.#report("hold", `needle ${needle} was not held`);
      this.#inWork.add(needle);
    }
    if (this.#held.size > 0) this.#report("hold", "needles are left behind in hold");
  }

  /** A carriage knits every needle in work, and its yarn would float over any gap between them. */
  pass(): void {
    const span = this.span;
    if (!span) this.#report("nothing to knit", "the carriage passes a bed with nothing in work");
    else {
      const empty = needlesBetween(...span).filter((needle) => !this.#inWork.has(needle));
      if (empty.some((needle) => !this.#ladders.has(needle)))
        this.#report("gap", "the carriage passes over needles that are not in work");
      for (const needle of this.#ladders)
        if (needle < span[0] || needle > span[1])
          this.#report("ladder", `nothing is knitted beyond needle ${needle}, which is out of work`);
    }
  }

  requireNothingHeld(): void {
    if (this.#held.size > 0) this.#report("hold", "the piece ends with needles in hold");
    for (const needle of this.#ladders) this.#report("ladder", `needle ${needle} never comes back to work`);
  }

  #edge(side: SideName): number | undefined {
    return this.span?.[side === "left" ? 0 : 1];
  }

  #requireInWork(needles: readonly number[]): void {
    for (const needle of needles) {
      if (!this.#inWork.has(needle)) this.#report("not in work", `needle ${needle} is not in work`);
    }
  }

  #release(needles: readonly number[]): void {
    this.#lastSpan = this.span ?? this.#lastSpan;
    for (const needle of needles) this.#inWork.delete(needle);
  }
}
