import { describe, expect, it } from "vitest";
import { highsEngine } from "../../solver/highs-engine.ts";
import { conformingEngine } from "./support/engine-conformance.ts";
import { knapsacks } from "./support/knapsacks.ts";

conformingEngine("HiGHS", () => highsEngine);

describe("highsEngine", () => {
  it("tells a program without a point from one without an end", async () => {
    // Both rows and the cost are such that presolve alone would leave the two apart undecided.
    const columns = [
      { name: "a", cost: -1, whole: false },
      { name: "b", cost: -1, whole: false },
    ];
    const terms = [
      [0, 1],
      [1, -1],
    ] as const;
    const open = { columns, rows: [{ name: "r", terms, relation: "=" as const, bound: 1 }] };
    expect(await highsEngine(open)).toMatchObject({ status: "unbounded" });
    const none = {
      columns,
      rows: [...open.rows, { name: "s", terms, relation: "=" as const, bound: 2 }],
    };
    expect(await highsEngine(none)).toMatchObject({ status: "infeasible" });
  });

  it("solves to the optimum itself where costs differ by little", async () => {
    const outcome = await highsEngine({
      columns: [100, 100.0004, 99.9998].map((cost) => ({ name: "x", cost, whole: true, upper: 1 })),
      rows: [
        {
          name: "one",
          terms: [
            [0, 1],
            [1, 1],
            [2, 1],
          ],
          relation: "=",
          bound: 1,
        },
      ],
    });
    expect(outcome).toMatchObject({ status: "optimal", point: [0, 0, 1] });
  });

  it("says that it was stopped when its time is over", async () => {
    const outcome = await highsEngine(knapsacks(80, 12), { timeLimitMs: 20 });
    expect(outcome).toMatchObject({ status: "stopped", engine: "HiGHS" });
  });
});
