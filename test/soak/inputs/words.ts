import fc from "fast-check";
import { commandTable } from "../../../src/cli/command-table.ts";
import { edgeNumbers } from "./trees.ts";

/** Files that a command line may name, in the folder in which it is run. */
const operandFiles: readonly string[] = [
  ...[
    "sleeve.yaml",
    "too-narrow.yaml",
    "broken.yaml",
    "binary.yaml",
    "empty.yaml",
    "missing.yaml",
    "folder",
    "folder/",
  ],
  ...["sleeve.yaml/x", "", ".", "..", "-", "--", "a".repeat(300), "name\nof two lines", "\u001b[31m.yaml"],
];

const swatches: readonly string[] = [
  "40 stitches 18.2 cm, 60 rows 19.4 cm",
  "washed: 40 stitches 17.8 cm, 60 rows 18.6 cm",
  "cord on 3 needles: 50 stitches 26 cm",
  "0 stitches 0 cm",
  "1e308 stitches 5 cm, NaN rows 5 cm",
  "40 stitches -18 cm",
];

const values = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom(...edgeNumbers) },
  {
    weight: 3,
    arbitrary: fc.constantFrom(
      "17 cm",
      "0 cm",
      "-5 cm",
      "1e308 cm",
      "a4",
      "letter",
      "svg",
      "text",
      "worn",
      "both",
    ),
  },
  {
    weight: 2,
    arbitrary: fc.constantFrom(
      "sleeve",
      "front",
      "__proto__",
      "constructor",
      "out.txt",
      "out.svg",
      "folder",
      "highs",
      "38",
    ),
  },
  {
    weight: 2,
    arbitrary: fc.constantFrom("out.html", "taken.txt", "missing/out.txt", "sleeve.yaml", "f5", ""),
  },
  fc.string({ unit: "binary", maxLength: 10 }),
);

/** Neither the screens nor the questions, which need a terminal, and would wait for one. */
const commands = commandTable.map(({ name }) => name);

const commandLine = fc
  .constantFrom(...commandTable)
  .chain(({ name, options }) =>
    fc.tuple(
      fc.constant(name),
      fc.array(
        fc.oneof(
          { weight: 4, arbitrary: fc.constantFrom(...operandFiles).map((word) => [word]) },
          fc.constantFrom(...swatches).map((word) => [word]),
        ),
        { maxLength: 2 },
      ),
      fc.array(
        fc.oneof(
          ...options.map(({ name: option, short, value }) =>
            fc.tuple(values, fc.nat({ max: 3 })).map(([given, form]): string[] => {
              const word = form === 3 && short !== undefined ? `-${short}` : `--${option}`;
              if (value === undefined) return form === 2 ? [`--${option}=${given}`] : [word];
              return form === 2 ? [`--${option}=${given}`] : form === 1 ? [word] : [word, given];
            }),
          ),
          fc
            .constantFrom([["--help"]], [["-x"]], [["--no-such"]], [["--__proto__"]], [["--"]], [["-"]])
            .map(([words]) => words!),
        ),
        { maxLength: 3 },
      ),
    ),
  )
  .map(([name, operands, options]) => [name, ...operands.flat(), ...options.flat()]);

/** Command lines of every command, with odd operands, options, values, and words that are none. */
export const commandLines = (): fc.Arbitrary<readonly string[]> =>
  fc.oneof(
    { weight: 8, arbitrary: commandLine },
    fc.array(fc.oneof(fc.constantFrom(...commands, "--version", "help", "-h", "-V"), values), {
      maxLength: 4,
    }),
  );
