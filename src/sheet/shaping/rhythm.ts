import type { ShapingStep } from "./shaping-runs.ts";

/**
 * A stretch of a run of shaping, in the form in which it is said: row by row, or as gaps that come by turns (one gap:
 * "every 6th row"; two: "every 6th and 7th row by turns"), so many times, the turns broken off where the times are up.
 * Gaps come round at least twice.
 */
export type RhythmPart = (
  | { readonly kind: "rows"; readonly rows: readonly number[] }
  | { readonly kind: "gaps"; readonly gaps: readonly number[]; readonly times: number }
) & {
  /** Needles at each step of the part. */
  readonly needles: number;
};

/**
 * The shortest way to say at which rows the steps lie, by the weights below, and still say every row exactly. It
 * begins with the rows of the first part in full, since gaps need a row to count from.
 *
 * @param steps at least one, rows rising
 */
export function rhythmOf(steps: readonly ShapingStep[]): readonly RhythmPart[] {
  // Backwards, the best way to say the steps from each on, and the best that does not begin with the same turns.
  const best: (readonly Saying[])[] = Array.from({ length: steps.length + 1 }, () => [
    { effort: 0, parts: [] },
  ]);
  for (let from = steps.length - 1; from >= 0; from--) {
    const ways = from === 0 ? rowParts(steps, from) : [...gapParts(steps, from), ...rowParts(steps, from)];
    const sayings = ways.map((way) => cheapest(best[way.next]!.map((rest) => goneOn(way, rest))));
    const first = cheapest(sayings);
    best[from] = [first, cheapest(sayings.filter(({ parts }) => !startsAgain(first.parts[0]!, parts[0])))];
  }
  return best[0]![0]!.parts;
}

function goneOn({ effort, part }: Way, rest: Saying): Saying {
  const again = startsAgain(part, rest.parts[0]) ? effortOfStartingAgain : 0;
  return { effort: effort + again + rest.effort, parts: [part, ...rest.parts] };
}

/** The first of those that take the least effort. */
const cheapest = (sayings: readonly Saying[]): Saying =>
  sayings.reduce((one, other) => (other.effort < one.effort ? other : one));

interface Saying {
  readonly effort: number;
  readonly parts: readonly RhythmPart[];
}

interface Way {
  readonly effort: number;
  readonly part: RhythmPart;
  /** The first step that the part leaves over. */
  readonly next: number;
}

/** What it takes to follow a part, in row numbers read: our own choice, so that long lists give way to turns. */
const effortOfPart = 3;
const effortOfGap = 2;
/** Longer turns are harder to keep in mind than a list of rows. */
const mostTurns = 3;
/** The same turns twice in a row look like a slip of the pen. */
const effortOfStartingAgain = 10;

const startsAgain = (part: RhythmPart, next: RhythmPart | undefined): boolean =>
  part.kind === "gaps" &&
  next?.kind === "gaps" &&
  part.needles === next.needles &&
  part.gaps.join() === next.gaps.join();

function rowParts(steps: readonly ShapingStep[], from: number): readonly Way[] {
  const ways: Way[] = [];
  const { needles } = steps[from]!;
  for (let next = from + 1; next <= alikeTo(steps, from); next++) {
    const rows = steps.slice(from, next).map(({ row }) => row);
    ways.push({ effort: effortOfPart + rows.length, part: { kind: "rows", rows, needles }, next });
  }
  return ways;
}

function gapParts(steps: readonly ShapingStep[], from: number): readonly Way[] {
  const ways: Way[] = [];
  const { needles } = steps[from]!;
  const gapBefore = (index: number): number => steps[index]!.row - steps[index - 1]!.row;
  const end = alikeTo(steps, from);
  for (let turns = 1; turns <= mostTurns; turns++) {
    const gaps = steps.slice(from, from + turns).map((_, index) => gapBefore(from + index));
    let next = from + turns;
    while (next < end && gapBefore(next) === gapBefore(next - turns)) next++;
    // Turns show themselves only where they come round twice.
    for (; next >= from + 2 * turns; next--)
      ways.push({
        effort: effortOfPart + turns * effortOfGap,
        part: { kind: "gaps", gaps, times: next - from, needles },
        next,
      });
  }
  return ways;
}

/** The first step after `from` that takes another number of needles. */
function alikeTo(steps: readonly ShapingStep[], from: number): number {
  let next = from + 1;
  while (steps[next]?.needles === steps[from]!.needles) next++;
  return next;
}
