/**
 * The core in the parts it is changed in, and the tests each part's changes are held against: those that mirror its
 * files, and the checks that are quick enough to be run again for each of hundreds of changes.
 *
 * What a part's own tests miss but another part's would see counts as missed: a fault is looked for where it was made.
 */
export const parts = {
  cloth: {
    mutate: ["src/cloth/**/*.ts"],
    tests: ["test/src/cloth/**/*.test.ts", "test/checks/area.test.ts", "test/checks/even-spacing.test.ts"],
  },
  fit: {
    mutate: ["src/fit/*.ts", "!src/fit/check.ts", "src/fit/{growth,on-hand,steady}/**/*.ts"],
    tests: [
      "test/src/fit/*.test.ts",
      "test/src/fit/growth/**/*.test.ts",
      "test/src/fit/on-hand/**/*.test.ts",
      "test/src/fit/steady/**/*.test.ts",
    ],
  },
  refusal: {
    mutate: ["src/fit/refusal/**/*.ts"],
    tests: ["test/src/fit/refusal/**/*.test.ts"],
  },
  check: {
    mutate: ["src/fit/check.ts", "src/fit/check/**/*.ts"],
    tests: ["test/src/fit/check/**/*.test.ts"],
  },
  sheet: {
    mutate: ["src/sheet/**/*.ts"],
    tests: ["test/src/sheet/**/*.test.ts"],
  },
};

/** Tests of these parts that print by a browser, or count on the test runner's own clock. */
export const leftOut = ["test/src/sheet/html/print.test.ts", "test/src/fit/time-left.test.ts"];
