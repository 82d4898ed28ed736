import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { indexChoice } from "../../../solver/choice/indexed-choice.ts";
import { propagate } from "../../../solver/choice/propagate.ts";
import type { ChoiceProgram } from "../../../solver/choice.ts";
import { combinations, keepsRows } from "../support/exhaustive.ts";
import { anyChoice, treeChoice } from "../support/random-programs.ts";

const everything = (choice: ChoiceProgram) =>
  choice.groups.map(({ options }) => options.map((_, index) => index));
const propagated = (choice: ChoiceProgram) => propagate(indexChoice(choice), everything(choice));
const option = (terms: [number, number][]) => ({ name: "", cost: 0, face: "", terms });

describe("propagate", () => {
  it("drops what has no partner, and then what that leaves without one", () => {
    const links = [0, 1, 2].map((key) => ({ name: `${key}`, relation: "=" as const, bound: 0 }));
    const choice: ChoiceProgram = {
      groups: [
        {
          name: "look",
          options: [
            option([[0, -1]]),
            option([[1, -1]]),
            option([
              [1, -1],
              [2, -1],
            ]),
          ],
        },
        { name: "front", options: [option([[0, 1]]), option([[1, 1]])] },
        { name: "back", options: [option([[2, 1]]), option([])] },
      ],
      rows: links,
    };
    expect(propagated(choice)).toEqual([
      [0, 1, 2],
      [0, 1],
      [0, 1],
    ]);
    const withoutBack = {
      ...choice,
      groups: [choice.groups[0]!, choice.groups[1]!, { name: "back", options: [option([[2, 1]])] }],
    };
    expect(propagated(withoutBack)).toEqual([[2], [1], [0]]);
  });

  it("finds that nothing can be picked", () => {
    const row = { name: "r", relation: ">=" as const, bound: 3 };
    const two = { name: "g", options: [option([[0, 1]]), option([])] };
    expect(propagated({ groups: [two, two], rows: [row] })).toBeUndefined();
    expect(propagated({ groups: [{ name: "g", options: [] }], rows: [] })).toBeUndefined();
    expect(propagated({ groups: [], rows: [row] })).toBeUndefined();
  });

  it("drops only what no way to pick uses", () => {
    fc.assert(
      fc.property(fc.oneof(anyChoice, treeChoice(true)), (choice) => {
        const used = choice.groups.map(() => new Set<number>());
        for (const picks of combinations(choice.groups.map(({ options }) => options.length)))
          if (keepsRows(choice, picks)) for (const [group, index] of picks.entries()) used[group]!.add(index);
        const left = propagated(choice);
        for (const [group, options] of used.entries())
          for (const index of options) expect(left?.[group]).toContain(index);
      }),
      { seed: 51, numRuns: 500 },
    );
  });
});
