import { afterAll, describe, expect, it } from "vitest";
import { violations } from "../../solver/feasibility.ts";
import { createGuardedEngine } from "../../solver/guarded-engine.ts";
import { highsEngine } from "../../solver/highs-engine.ts";
import type { Outcome } from "../../solver/program.ts";
import { simplexEngine } from "../../solver/simplex-engine.ts";
import { glpkEngine } from "./support/glpk-engine.ts";
import { linesOfTwentySeven, type Textbook, textbookPrograms } from "./support/textbook-programs.ts";

function expectPublished({ optimum, program }: Textbook, outcome: Outcome): void {
  if (optimum === undefined) {
    expect(outcome.status).toBe("infeasible");
    return;
  }
  if (outcome.status !== "optimal") expect.fail(`ended as ${JSON.stringify(outcome)}`);
  expect(outcome.cost).toBeCloseTo(optimum, 6);
  expect(violations(program, outcome.point)).toEqual([]);
}

describe.each([
  ["the usual engine", simplexEngine],
  ["HiGHS", highsEngine],
  ["GLPK", glpkEngine],
])("%s on programs with published optima", (_, engine) => {
  it.each(textbookPrograms.map((textbook) => [textbook.name, textbook] as const))(
    "%s",
    async (_name, textbook) => {
      expectPublished(textbook, await engine(textbook.program));
    },
  );
});

describe("the guarded engine on a program that is slow for the usual one", () => {
  const guarded = createGuardedEngine({ patienceMs: 200 });
  afterAll(() => guarded.close());

  it("comes to the published optimum by the second solver, and says so", async () => {
    const outcome = await guarded.solve(linesOfTwentySeven.program);
    expectPublished(linesOfTwentySeven, outcome);
    expect(outcome).toMatchObject({
      engine: "HiGHS",
      // It may have been silent all the while, where the machine has other things to do.
      note: expect.stringMatching(/did not finish in time|gave no answer in time/),
    });
  });
});
