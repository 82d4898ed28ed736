import { defineConfig } from "vitest/config";

/** Tests that change nothing that the next file would see, so they share their modules. */
const sharing = [
  "test/src/{arithmetic,cloth,cord,diagnostics,edit,examine,explore,fit,garment,grading,motif,on-hand}/**/*.test.ts",
  "test/src/{refit,report,safety,shape,sheet,sizes,steady,swatch,tradeoff,units,why,wizard,yarn}/**/*.test.ts",
  "test/checks/**/*.test.ts",
  "test/tui/{content,update,work/update,work/view}/**/*.test.{ts,tsx}",
  "test/tui/{drawings,frames,random-keys,sizes,solve-requests,trade,trader,update,why}.test.{ts,tsx}",
  "test/solver/**/*.test.ts",
];

const usual = {
  // The solver's watchdog tests wait for a real time-out of the engine.
  testTimeout: 60_000,
  hookTimeout: 120_000,
};

export default defineConfig({
  test: {
    // Left to itself vitest keeps a core free, which on a machine with two means one file after the other.
    maxWorkers: "100%",
    globalSetup: ["test/support/build-once.ts"],
    projects: [
      // Reading the same modules anew for each of so many files takes longer than all that most of them try.
      { test: { ...usual, name: "shared", include: sharing, isolate: false } },
      { test: { ...usual, name: "apart", include: ["test/**/*.test.{ts,tsx}"], exclude: sharing } },
    ],
  },
});
