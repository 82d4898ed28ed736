import { afterAll, expect, test, vi } from "vitest";
import { commandLinesTried } from "./command-lines.ts";

// Defined by the build.
vi.stubGlobal("EVENROW_VERSION", "0.0.0");

// The commands are run in a folder of their own.
const folder = process.cwd();
afterAll(() => process.chdir(folder));

test("every command line ends with an exit code that there is, and with words", async () => {
  const outcomes: string[] = [];
  for (const trial of await commandLinesTried.trials(7, 80)) {
    try {
      outcomes.push(await trial.run());
    } catch (error) {
      throw new Error(`for ${trial.shown()}`, { cause: error });
    }
  }
  expect(outcomes).toContain("accepted");
  expect(outcomes).toContain("refused");
});
