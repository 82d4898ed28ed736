import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type ChoiceProgram, type Frontier, frontier } from "../../../solver/choice.ts";
import { highsEngine } from "../../../solver/highs-engine.ts";
import type { Engine } from "../../../solver/program.ts";
import { simplexEngine } from "../../../solver/simplex-engine.ts";
import { combinations, costOf, keepsRows } from "../support/exhaustive.ts";
import { anyChoice, treeChoice } from "../support/random-programs.ts";

const never: Engine = () => expect.fail("was asked");

/** The choice program with so many measured rows after its own, and which rows they are. */
interface Measured {
  readonly choice: ChoiceProgram;
  readonly measured: readonly number[];
}

/** Amounts are few, so that many are equal; some of the rows that are measured have a bound to keep as well. */
const measuredChoice: fc.Arbitrary<Measured> = fc
  .tuple(fc.oneof(anyChoice, treeChoice(false), treeChoice(true)), fc.integer({ min: 1, max: 3 }))
  .chain(([choice, count]) => {
    const first = choice.rows.length;
    const amounts = fc.array(fc.integer({ min: -2, max: 5 }), { minLength: count, maxLength: count });
    const options = choice.groups.flatMap((group) => group.options);
    return fc
      .tuple(
        fc.array(amounts, { minLength: options.length, maxLength: options.length }),
        fc.array(fc.oneof(fc.constant(Number.POSITIVE_INFINITY), fc.integer({ min: 1, max: 10 })), {
          minLength: count,
          maxLength: count,
        }),
      )
      .map(([all, bounds]) => {
        const amountsOf = new Map(options.map((option, index) => [option, all[index]!]));
        return {
          measured: bounds.map((_, index) => first + index),
          choice: {
            rows: [
              ...choice.rows,
              ...bounds.map((bound) => ({ name: "amount", relation: "<=" as const, bound })),
            ],
            groups: choice.groups.map((group) => ({
              ...group,
              options: group.options.map((option) => ({
                ...option,
                terms: [
                  ...option.terms,
                  ...amountsOf.get(option)!.map((amount, index) => [first + index, amount] as const),
                ],
              })),
            })),
          },
        };
      });
  });

/** By trying every way to pick: amounts that no others surpass, each with the least cost that has them. */
function triedFrontier({
  choice,
  measured,
}: Measured): readonly (readonly [amounts: string, cost: number])[] {
  const all = [...combinations(choice.groups.map(({ options }) => options.length))]
    .filter((picks) => keepsRows(choice, picks))
    .map((picks) => ({ amounts: amountsAt(choice, measured, picks), cost: costOf(choice, picks) }));
  const unsurpassed = all.filter(
    ({ amounts }) =>
      !all.some(
        ({ amounts: other }) =>
          other.every((amount, index) => amount <= amounts[index]!) &&
          other.some((amount, index) => amount < amounts[index]!),
      ),
  );
  const least = new Map<string, number>();
  for (const { amounts, cost } of unsurpassed)
    least.set(amounts.join(), Math.min(cost, least.get(amounts.join()) ?? Number.POSITIVE_INFINITY));
  return [...least].sort(([a], [b]) => (a < b ? -1 : 1));
}

const amountsAt = (choice: ChoiceProgram, measured: readonly number[], picks: readonly number[]) =>
  measured.map((row) =>
    picks.reduce(
      (sum, option, group) =>
        sum +
        choice.groups[group]!.options[option]!.terms.reduce(
          (total, [at, amount]) => (at === row ? total + amount : total),
          0,
        ),
      0,
    ),
  );

const told = ({ points }: Frontier): readonly (readonly [string, number])[] =>
  points
    .map(({ amounts, picks: { cost } }): [string, number] => [amounts.join(), cost])
    .sort(([a], [b]) => (a < b ? -1 : 1));

describe("frontier", () => {
  it("finds what trying everything finds, by settling and by an engine", async () => {
    await fc.assert(
      fc.asyncProperty(
        measuredChoice,
        fc.constantFrom<Engine | undefined>(undefined, simplexEngine, highsEngine),
        async (one, by) => {
          const found =
            by === undefined
              ? await frontier(one.choice, one.measured, never)
              : await frontier(one.choice, one.measured, by, { work: 0 });
          expect(found.complete).toBe(true);
          expect(told(found)).toEqual(triedFrontier(one));
          for (const { amounts, picks } of found.points) {
            expect(keepsRows(one.choice, picks.picks)).toBe(true);
            expect(amountsAt(one.choice, one.measured, picks.picks)).toEqual(amounts);
            expect(picks).toMatchObject({ proven: true, cost: costOf(one.choice, picks.picks) });
          }
        },
      ),
      { seed: 72, numRuns: 600 },
    );
  });

  const amount = (...amounts: readonly number[]) => amounts.map((one, row) => [row, one] as const);
  const option = (face: string, cost: number, ...amounts: readonly number[]) => ({
    name: face,
    face,
    cost,
    terms: amount(...amounts),
  });
  const rows = ["a", "b"].map((name) => ({ name, relation: "<=" as const, bound: Number.POSITIVE_INFINITY }));
  /** Points (0, 4), (1, 2) and (3, 0); (2, 2) and (4, 4) are surpassed. */
  const one: ChoiceProgram = {
    rows,
    groups: [
      {
        name: "g",
        options: [
          option("dear", 5, 1, 2),
          option("cheap", 1, 1, 2),
          option("first", 9, 0, 4),
          option("last", 0, 3, 0),
          option("surpassed", 0, 2, 2),
          option("far", 0, 4, 4),
        ],
      },
    ],
  };

  it("takes the cheapest of those with the same amounts, by rising amounts", async () => {
    const { points, complete } = await frontier(one, [0, 1], never);
    expect(points.map(({ amounts, picks }) => [amounts, picks.picks, picks.cost])).toEqual([
      [[0, 4], [2], 9],
      [[1, 2], [1], 1],
      [[3, 0], [3], 0],
    ]);
    expect(complete).toBe(true);
    expect((await frontier(one, [0, 1], simplexEngine, { work: 0 })).points).toMatchObject(
      points.map(({ amounts }) => ({ amounts })),
    );
  });

  it("has no point where nothing can be picked", async () => {
    const tight = { ...one, rows: rows.map((row) => ({ ...row, bound: 1 })) };
    expect(await frontier(tight, [0, 1], never)).toMatchObject({ points: [], complete: true });
    expect(await frontier(tight, [0, 1], simplexEngine, { work: 0 })).toMatchObject({
      points: [],
      complete: true,
    });
  });

  it("keeps the points it has proven when the time is over, and says that there may be more", async () => {
    let asked = 0;
    const tiring: Engine = async (program, options) => {
      asked += 1;
      return asked <= 4 ? simplexEngine(program, options) : { status: "stopped", nodes: 0, engine: "tired" };
    };
    const counts: number[] = [];
    const { points, complete } = await frontier(one, [0, 1], tiring, {
      work: 0,
      timeLimitMs: 60_000,
      found: (count) => counts.push(count),
    });
    expect(complete).toBe(false);
    expect(points.length).toBe(2);
    expect(counts).toEqual([1, 2]);
    const all = (await frontier(one, [0, 1], never)).points.map(({ amounts }) => amounts);
    for (const { amounts } of points) expect(all).toContainEqual(amounts);
    expect(await frontier(one, [0, 1], simplexEngine, { work: 0, timeLimitMs: 0 })).toMatchObject({
      points: [],
      complete: false,
    });
  });

  it("hands on why an engine failed", async () => {
    const failing: Engine = async () => ({ status: "failed", reason: "No.", engine: "some" });
    expect(await frontier(one, [0, 1], failing, { work: 0 })).toMatchObject({
      points: [],
      complete: false,
      note: "No.",
    });
  });

  it("refuses rows that are no limits, and amounts that are not whole", async () => {
    const exact = { ...one, rows: [{ ...rows[0]!, relation: "=" as const }, rows[1]!] };
    await expect(frontier(exact, [0, 1], never)).rejects.toThrow(RangeError);
    const odd = { rows, groups: [{ name: "g", options: [option("odd", 0, 0.5, 1)] }] };
    await expect(frontier(odd, [0, 1], never)).rejects.toThrow('option "odd" adds');
  });
});
