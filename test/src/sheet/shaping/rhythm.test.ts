import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type RhythmPart, rhythmOf } from "../../../../src/sheet/shaping/rhythm.ts";
import type { ShapingStep } from "../../../../src/sheet/shaping/shaping-runs.ts";

/** Steps from the first row on, each so many rows after the one before. */
function stepsAt(first: number, gaps: readonly number[], needles = 1): ShapingStep[] {
  const steps = [{ row: first, needles }];
  for (const gap of gaps) steps.push({ row: steps.at(-1)!.row + gap, needles });
  return steps;
}

/** So many gaps, the given ones by turns. */
const turns = (times: number, ...gaps: readonly number[]): number[] =>
  Array.from({ length: times }, (_, index) => gaps[index % gaps.length]!);

const rows = (needles: number, ...at: readonly number[]): RhythmPart => ({ kind: "rows", rows: at, needles });
const every = (needles: number, times: number, ...gaps: readonly number[]): RhythmPart => ({
  kind: "gaps",
  gaps,
  times,
  needles,
});

const alike = (one: RhythmPart, other: RhythmPart | undefined): boolean =>
  one.kind === "gaps" &&
  other?.kind === "gaps" &&
  one.needles === other.needles &&
  String(one.gaps) === String(other.gaps);

/** Three for a part, one for a row, two for a gap, ten where the same turns start again. */
const effortOf = (parts: readonly RhythmPart[]): number =>
  parts
    .map((part, index) => {
      const numbers = part.kind === "rows" ? part.rows.length : 2 * part.gaps.length;
      return 3 + numbers + (alike(part, parts[index + 1]) ? 10 : 0);
    })
    .reduce((sum, effort) => sum + effort, 0);

/** Every way to say the steps from one on: each stretch as rows or, after the first, as one to three gaps by turns. */
function everyWay(steps: readonly ShapingStep[], from: number): RhythmPart[][] {
  if (from === steps.length) return [[]];
  const { needles } = steps[from]!;
  const ways: RhythmPart[][] = [];
  for (let next = from + 1; next <= steps.length && steps[next - 1]!.needles === needles; next++) {
    const stretch = steps.slice(from, next);
    const parts = [rows(needles, ...stretch.map(({ row }) => row))];
    if (from > 0) {
      const gaps = stretch.map(({ row }, index) => row - steps[from + index - 1]!.row);
      for (const count of [1, 2, 3])
        if (gaps.length >= 2 * count && gaps.every((gap, index) => gap === gaps[index % count]))
          parts.push(every(needles, gaps.length, ...gaps.slice(0, count)));
    }
    const rests = everyWay(steps, next);
    ways.push(...parts.flatMap((part) => rests.map((rest) => [part, ...rest])));
  }
  return ways;
}

/** The steps that the parts name. */
function stepsOf(parts: readonly RhythmPart[]): ShapingStep[] {
  const steps: ShapingStep[] = [];
  for (const { needles, ...part } of parts)
    if (part.kind === "rows") steps.push(...part.rows.map((row) => ({ row, needles })));
    else
      for (const gap of turns(part.times, ...part.gaps))
        steps.push({ row: steps.at(-1)!.row + gap, needles });
  return steps;
}

describe("the rhythm of a run", () => {
  test("names its steps and no others, with no more effort than any other way of saying them", () => {
    const step = fc.record({ gap: fc.integer({ min: 1, max: 2 }), needles: fc.constantFrom(1, 1, 1, 2) });
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 7 }), (drawn) => {
        let row = 3;
        const steps = drawn.map(({ gap, needles }) => {
          row += gap;
          return { row, needles };
        });
        const parts = rhythmOf(steps);
        expect(stepsOf(parts)).toEqual(steps);
        expect(effortOf(parts)).toBe(Math.min(...everyWay(steps, 0).map(effortOf)));
      }),
      { seed: 11, numRuns: 50 },
    );
  });

  test("is a single row where there is one step", () => {
    expect(rhythmOf(stepsAt(7, []))).toEqual([rows(1, 7)]);
  });

  // Rows: 3 + 4 = 7. A row and a gap: 4 + 5 = 9.
  test("is a list of rows as long as that is short", () => {
    expect(rhythmOf(stepsAt(6, turns(3, 6)))).toEqual([rows(1, 6, 12, 18, 24)]);
  });

  // With six rows the list takes 9 as well; with seven it takes 10.
  test("is a gap as soon as that takes no more", () => {
    expect(rhythmOf(stepsAt(6, turns(5, 6)))).toEqual([rows(1, 6), every(1, 5, 6)]);
    expect(rhythmOf(stepsAt(6, turns(6, 6)))).toEqual([rows(1, 6), every(1, 6, 6)]);
  });

  // A row and two gaps: 4 + 7 = 11, as much as a list of eight rows.
  test("is two gaps by turns, broken off where the steps end", () => {
    expect(rhythmOf(stepsAt(5, turns(9, 8, 9)))).toEqual([rows(1, 5), every(1, 9, 8, 9)]);
  });

  // A row and three gaps: 4 + 9 = 13. The list of thirteen rows takes 16.
  test("is three gaps by turns", () => {
    expect(rhythmOf(stepsAt(5, turns(12, 2, 3, 4)))).toEqual([rows(1, 5), every(1, 12, 2, 3, 4)]);
  });

  // A row and four gaps would take 4 + 11 = 15, the list of sixteen rows 19.
  test("is never four gaps by turns", () => {
    const parts = rhythmOf(stepsAt(5, turns(15, 2, 3, 4, 5)));
    expect(parts.map(({ kind }) => kind)).toEqual(["rows"]);
  });

  // 3 numbers would do for both gaps of 8 and 9, but a knitter could not tell turns from a list.
  test("has no turns that do not come round twice", () => {
    for (const part of rhythmOf([...stepsAt(4, [2, 3, 2]), { row: 40, needles: 5 }]))
      expect(part.kind).toBe("rows");
  });

  test("breaks where the number of needles changes, and counts the gap from the step before", () => {
    const threes = [80, 82, 84].map((row) => ({ row, needles: 3 }));
    const twos = [86, 88, 90, 92, 94, 96].map((row) => ({ row, needles: 2 }));
    expect(rhythmOf([...threes, ...twos])).toEqual([rows(3, 80, 82, 84), every(2, 6, 2)]);
  });

  // Said twice the turns would take 4 + 7 + 7 + 10 = 28; begun a row later they are 2 and 3 first, and take 5 + 7 + 7 = 19.
  test("does not start the same turns again", () => {
    const gaps = [...turns(11, 3, 2), ...turns(11, 3, 2)];
    expect(rhythmOf(stepsAt(5, gaps))).toEqual([rows(1, 5, 8), every(1, 10, 2, 3), every(1, 11, 3, 2)]);
  });

  test("starts them again where they are said of another number of needles", () => {
    const one = stepsAt(5, turns(11, 3, 2));
    const more = stepsAt(one.at(-1)!.row, turns(11, 3, 2), 4).slice(1);
    expect(rhythmOf([...one, ...more])).toEqual([rows(1, 5), every(1, 11, 3, 2), every(4, 11, 3, 2)]);
  });

  // A list of five rows, turns that take up eleven gaps and a list of four rows: 8 + 7 + 7 = 22. With a gap for the threes
  // and turns to the end it is 4 + 5 + 7 + 7 = 23, but only if those turns are not the ones before them.
  test("looks beyond the next part to see whether turns start again", () => {
    const steps = stepsAt(8, [...turns(4, 3), ...turns(11, 3, 2), ...turns(4, 3, 2)]);
    const last = steps.slice(-4).map(({ row }) => row);
    expect(rhythmOf(steps)).toEqual([rows(1, 8, 11, 14, 17, 20), every(1, 11, 3, 2), rows(1, ...last)]);
  });
});
