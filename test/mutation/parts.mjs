/**
 * The core in the parts it is changed in, and the tests each part's changes are held against: those that mirror its
 * files and are quick enough to be run again for each of hundreds of changes.
 *
 * What a part's own tests miss but another part's would see counts as missed: a fault is looked for where it was made.
 */
export const parts = {
  cloth: {
    mutate: ["src/cloth/*.ts"],
    tests: ["test/src/cloth/*.test.ts", "test/checks/even-spacing.test.ts"],
  },
  fit: {
    mutate: ["src/fit/*.ts", "!src/fit/check.ts"],
    tests: ["test/src/fit/*.test.ts"],
  },
  ways: {
    mutate: ["src/fit/{growth,on-hand,steady}/*.ts"],
    tests: [
      "test/src/fit/growth/*.test.ts",
      "test/src/fit/on-hand/*.test.ts",
      "test/src/fit/steady/*.test.ts",
    ],
  },
  refusal: {
    mutate: ["src/fit/refusal/*.ts"],
    tests: ["test/src/fit/refusal/*.test.ts"],
  },
  check: {
    mutate: ["src/fit/check.ts", "src/fit/check/*.ts"],
    tests: ["test/src/fit/check/*.test.ts"],
  },
  sheet: {
    mutate: ["src/sheet/*.ts", "src/sheet/{motifs,document,text}/*.ts"],
    tests: [
      "test/src/sheet/*.test.ts",
      "test/src/sheet/motifs/*.test.ts",
      "test/src/sheet/document/*.test.ts",
      "test/src/sheet/text/*.test.ts",
    ],
  },
  shaping: {
    mutate: ["src/sheet/shaping/*.ts"],
    tests: ["test/src/sheet/shaping/*.test.ts"],
  },
  printed: {
    mutate: ["src/sheet/{html,pdf}/*.ts"],
    tests: ["test/src/sheet/html/*.test.ts", "test/src/sheet/pdf/*.test.ts"],
  },
};

/** Tests of these parts that are no use here: they count on a browser, or take long. */
export const leftOut = [
  "test/src/cloth/outline-differences-of-garments.test.ts",
  "test/src/fit/fit.test.ts",
  "test/src/fit/kept-over-edits.test.ts",
  "test/src/fit/layouts-of-samples.test.ts",
  "test/src/fit/parts-of-garments.test.ts",
  "test/src/fit/allowance-of-garments.test.ts",
  "test/src/fit/growth/growing.test.ts",
  "test/src/fit/on-hand/cord-usage-of-samples.test.ts",
  "test/src/fit/refusal/any-fit-of-garments.test.ts",
  "test/src/sheet/document/sample-documents.test.ts",
  "test/src/sheet/document/sample-phrases.test.ts",
  "test/src/sheet/text/sample-texts.test.ts",
  "test/src/sheet/html/print.test.ts",
  "test/src/sheet/html/whole-sheets.test.ts",
  "test/src/sheet/pdf/whole-sheets.test.ts",
  "test/src/sheet/shaping/garments-in-words.test.ts",
];
