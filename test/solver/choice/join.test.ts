import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { best, type ChoiceProgram, join, type Member, rivals, toProgram } from "../../../solver/choice.ts";
import { highsEngine } from "../../../solver/highs-engine.ts";
import { simplexEngine } from "../../../solver/simplex-engine.ts";
import { combinations, costOf, keepsRows } from "../support/exhaustive.ts";
import { treeChoice } from "../support/random-programs.ts";

/** One to four members whose looks are shared by keys of which some tell all options apart and some do not. */
const members = (budget: boolean): fc.Arbitrary<Member[]> =>
  fc
    .array(fc.tuple(treeChoice(budget), fc.integer({ min: 1, max: 6 }), fc.nat(3)), {
      minLength: 1,
      maxLength: 4,
    })
    .map((drawn) =>
      drawn.map(([choice, kinds, first], index) => ({
        name: `size ${index + 1}`,
        choice,
        shared: new Map([["look", choice.groups[0]!.options.map((_, at) => `key ${(at + first) % kinds}`)]]),
      })),
    );

/** For each key the least sum of what the members cost with it, each by trying everything; absent where one cannot. */
function costsByKey(all: readonly Member[]): Map<string, number> {
  const each = all.map(({ choice, shared }) => {
    const least = new Map<string, number>();
    for (const picks of combinations(choice.groups.map(({ options }) => options.length))) {
      if (!keepsRows(choice, picks)) continue;
      const key = shared.get("look")![picks[0]!]!;
      least.set(key, Math.min(least.get(key) ?? Infinity, costOf(choice, picks)));
    }
    return least;
  });
  const keys = [...each[0]!.keys()].filter((key) => each.every((least) => least.has(key)));
  return new Map(keys.map((key) => [key, each.reduce((sum, least) => sum + least.get(key)!, 0)]));
}

const keysTaken = (all: readonly Member[], taken: readonly (readonly number[])[]): Set<string> =>
  new Set(all.map(({ shared }, member) => shared.get("look")![taken[member]![0]!]!));

describe("join", () => {
  it("costs the least sum over all keys, and gives each member picks of its own with one key", async () => {
    await fc.assert(
      fc.asyncProperty(fc.oneof(members(false), members(true)), async (all) => {
        const least = Math.min(...costsByKey(all).values());
        const { choice, picksOf } = join(all);
        for (const engine of [simplexEngine, highsEngine]) {
          const found = await best(choice, engine);
          if (least === Infinity) expect(found.status).toBe("infeasible");
          else {
            if (found.status !== "picked") expect.fail(`ended as ${found.status}`);
            expect(found.proven).toBe(true);
            expect(found.cost).toBeCloseTo(least, 6);
            const taken = all.map((_, member) => picksOf(member, found.picks));
            expect(keysTaken(all, taken).size).toBe(1);
            all.forEach((member, at) => {
              expect(keepsRows(member.choice, taken[at]!)).toBe(true);
            });
            const sum = all.reduce((total, member, at) => total + costOf(member.choice, taken[at]!), 0);
            expect(sum).toBeCloseTo(found.cost, 9);
          }
        }
      }),
      { seed: 80, numRuns: 200 },
    );
  });

  it("needs no branching where the members need none", async () => {
    await fc.assert(
      fc.asyncProperty(members(false), async (all) => {
        const found = await best(join(all).choice, simplexEngine);
        if (found.status === "picked") expect(found.nodes).toBe(1);
      }),
      { seed: 81, numRuns: 200 },
    );
  });

  it("has for rivals the next best keys, each once", async () => {
    await fc.assert(
      fc.asyncProperty(members(false), async (all) => {
        const { choice, picksOf } = join(all);
        const first = await best(choice, simplexEngine);
        if (first.status !== "picked") return;
        const { list, proven } = await rivals(choice, first, 9, simplexEngine);
        const costs = [...costsByKey(all).values()].sort((a, b) => a - b);
        expect(proven).toBe(true);
        expect([first, ...list].map(({ cost }) => cost)).toEqual(costs);
        const keys = [first, ...list].map(({ picks }) =>
          [
            ...keysTaken(
              all,
              all.map((_, member) => picksOf(member, picks)),
            ),
          ].join(),
        );
        expect(new Set(keys).size).toBe(keys.length);
      }),
      { seed: 82, numRuns: 100 },
    );
  });

  const look = (name: string, cost: number) => ({ name, cost, face: name, terms: [[0, 1] as const] });
  const plain = (...options: ReturnType<typeof look>[]): ChoiceProgram => ({
    groups: [{ name: "look", options }],
    rows: [{ name: "most", relation: "<=", bound: 2 }],
  });

  it("makes one group of those whose keys tell everything apart, with the sum of the costs", () => {
    const { choice, picksOf } = join([
      { name: "S", choice: plain(look("a", 1), look("b", 2)), shared: new Map([["look", ["a", "b"]]]) },
      { name: "M", choice: plain(look("c", 8), look("b", 4)), shared: new Map([["look", ["c", "b"]]]) },
    ]);
    expect(choice).toEqual({
      groups: [
        {
          name: "look",
          options: [
            {
              name: "b",
              cost: 6,
              face: "b",
              terms: [
                [0, 1],
                [1, 1],
              ],
            },
          ],
        },
      ],
      rows: [
        { name: "S: most", relation: "<=", bound: 2 },
        { name: "M: most", relation: "<=", bound: 2 },
      ],
    });
    expect([picksOf(0, [0]), picksOf(1, [0])]).toEqual([[1], [1]]);
  });

  it("ties groups in which a key stands for several options, key by key and each member to the next", () => {
    const shared = new Map([["look", ["x", "x"]]]);
    const { choice } = join(
      ["S", "M", "L"].map((name) => ({ name, choice: plain(look("a", 1), look("b", 2)), shared })),
    );
    expect(choice.groups.map(({ name }) => name)).toEqual(["S: look", "M: look", "L: look"]);
    expect(choice.groups.map(({ options }) => options[0]!.face)).toEqual(["x", "", ""]);
    expect(choice.rows.slice(3)).toEqual([
      { name: "look in S and in M: x", relation: "=", bound: 0 },
      { name: "look in M and in L: x", relation: "=", bound: 0 },
    ]);
    expect(choice.groups.map(({ options }) => options[0]!.terms.slice(1))).toEqual([
      [[3, 1]],
      [
        [3, -1],
        [4, 1],
      ],
      [[4, -1]],
    ]);
  });

  it("leaves what is not shared to each member, with nothing to notice", async () => {
    const { choice } = join(
      ["S", "M"].map((name) => ({ name, choice: plain(look("a", 1), look("b", 2)), shared: new Map() })),
    );
    expect(choice.groups.flatMap(({ options }) => options.map(({ face }) => face))).toEqual(["", "", "", ""]);
    expect(await best(choice, simplexEngine)).toMatchObject({ cost: 2, proven: true });
    expect(toProgram(choice).program.columns.map(({ name }) => name)).toEqual(["S: look.a", "M: look.a"]);
  });
});
