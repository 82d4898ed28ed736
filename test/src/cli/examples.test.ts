import { copyFileSync, existsSync } from "node:fs";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { commandTable } from "../../../src/cli/command-table.ts";
import { enterWorkshop, readShownLine, type Workshop } from "../../support/command-line.ts";

let workshop: Workshop;
/** What the knitter has beside the samples, where an example takes it for granted. */
const given: Readonly<Record<string, () => void>> = {
  new: () => workshop.write("answers.txt", "\n".repeat(60)),
  gauge: () => {
    workshop.write("answers.txt", "40 stitches 18.2 cm, 60 rows 19.4 cm\n\n");
    copyFileSync("samples/sleeve.yaml", "sleeve.yaml");
  },
};

/** Screens need a terminal; the same commands without their screens do not. */
const opensScreen = (words: readonly string[]): boolean =>
  words[1] === "explore" ||
  (words[1] === "work" && !words.some((word) => /^--(where|next|notes)$/.test(word)));

test.each(commandTable)("$name has two examples at least, and no option twice", ({ examples, options }) => {
  expect(examples.length).toBeGreaterThanOrEqual(2);
  expect(new Set(options.map((option) => option.name)).size).toBe(options.length);
});

describe.each(commandTable)("the help of $name is true:", ({ name, examples }) => {
  beforeEach(() => {
    workshop = enterWorkshop();
  });
  afterEach(() => workshop.leave());

  test.each(examples)("%s", async (example) => {
    const line = readShownLine(example);
    expect(line.words.slice(0, 2)).toEqual(["evenrow", name]);
    given[name]?.();
    if (opensScreen(line.words)) return expect(await workshop.openScreen(line.words)).toBe(0);
    // Questions are asked at a terminal only; without one the answers come from standard input.
    const asked = name === "new" && line.input === undefined ? { ...line, input: "answers.txt" } : line;
    const { code, out, err } = await workshop.run(asked);
    expect(code, err).toBe(example.includes("too-narrow") ? 1 : 0);
    const written = [...example.matchAll(/(?:-o|>|^evenrow new) ([\w.-]+\.\w+|_\w+)/g)].map(
      ([, file]) => file!,
    );
    for (const file of written) expect(existsSync(file), file).toBe(true);
    if (written.length === 0) expect(out).not.toBe("");
  });
});
