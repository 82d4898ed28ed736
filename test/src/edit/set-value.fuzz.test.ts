import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import type { Path } from "../../../src/diagnostics/path.ts";
import type { EditValue } from "../../../src/edit/edit-value.ts";
import { removeValue, setValue } from "../../../src/edit/set-value.ts";
import {
  pathsIn,
  type RandomSource,
  randomScalar,
  randomSource,
  randomValue,
  withPart,
} from "./random-source.ts";

const runs = { numRuns: 600, seed: 20_240_611 };

const read = (text: string): unknown => parse(text, { schema: "core", stringKeys: true });

const linesOf = (text: string): readonly string[] => text.split("\n");

/** A source and one of its paths. */
const placed: fc.Arbitrary<RandomSource & { readonly path: Path }> = randomSource.chain((source) =>
  fc.constantFrom(...pathsIn(source.value).slice(1)).map((path) => ({ ...source, path })),
);

const partAt = (value: EditValue, path: Path): EditValue =>
  path.reduce((part, step) => (part as Record<string | number, EditValue>)[step]!, value);

/** Lines that two texts share from the top, and from the bottom. */
function sharedLines(before: string, after: string): { readonly above: number; readonly below: number } {
  const [a, b] = [linesOf(before), linesOf(after)];
  let above = 0;
  while (above < Math.min(a.length, b.length) && a[above] === b[above]) above++;
  let below = 0;
  while (below < Math.min(a.length, b.length) - above && a.at(-1 - below) === b.at(-1 - below)) below++;
  return { above, below };
}

describe("the sources that are tried", () => {
  it("read as what they were made from", () => {
    fc.assert(
      fc.property(randomSource, ({ text, value }) => {
        expect(read(text)).toEqual(value);
      }),
      runs,
    );
  });
});

describe("setValue on files of any style", () => {
  it("sets exactly that value and leaves all others", () => {
    fc.assert(
      fc.property(placed, randomValue, ({ text, value, path }, part) => {
        expect(read(setValue(text, path, part))).toEqual(withPart(value, path, part));
      }),
      runs,
    );
  });

  it("adds a missing key or item and leaves all others", () => {
    fc.assert(
      fc.property(randomSource, fc.nat(), randomValue, fc.boolean(), ({ text, value }, pick, part, deep) => {
        const holders = pathsIn(value).filter((path) => typeof partAt(value, path) === "object");
        const holder = holders[pick % holders.length]!;
        const whole = partAt(value, holder);
        const path = [
          ...holder,
          ...(Array.isArray(whole) ? [whole.length] : deep ? ["new", "inner", "key"] : ["new"]),
        ];
        const after = setValue(text, path, part);
        expect(read(after)).toEqual(withPart(value, path, part));
        const { above, below } = sharedLines(text, after);
        expect(linesOf(text).length - above - below).toBeLessThanOrEqual(1);
      }),
      runs,
    );
  });

  it("changes one line where one scalar changes, and nothing before or behind it in that line", () => {
    fc.assert(
      fc.property(placed, randomScalar, ({ text, value, path }, part) => {
        fc.pre(typeof partAt(value, path) !== "object");
        const after = setValue(text, path, part);
        expect(linesOf(after)).toHaveLength(linesOf(text).length);
        const { above, below } = sharedLines(text, after);
        expect(linesOf(text).length - above - below).toBeLessThanOrEqual(1);
      }),
      runs,
    );
  });

  it("gives back the same bytes where a value is set and set back", () => {
    fc.assert(
      fc.property(placed, randomValue, randomValue, ({ text, path }, first, second) => {
        // A list and a table that share nothing with what takes their place: those in part alike are changed in part.
        const whole = typeof first === "object" ? [first, "whole"] : first;
        // Quotes that a text had without needing them are kept, so they go first.
        const once = setValue(text, path, 12_345);
        const set = setValue(once, path, whole);
        const other = typeof second === "object" ? { [JSON.stringify(second).length]: second } : second;
        expect(setValue(setValue(set, path, other), path, whole)).toBe(set);
      }),
      runs,
    );
  });

  it("keeps the line breaks and the end of the file", () => {
    fc.assert(
      fc.property(placed, randomValue, ({ text, path }, part) => {
        const after = setValue(text, path, part);
        const isWindows = text.includes("\r\n");
        expect(/\r\n/.test(after) && /(?<!\r)\n/.test(after)).toBe(false);
        if (after.includes("\n") && text.includes("\n")) expect(after.includes("\r\n")).toBe(isWindows);
        expect(after.endsWith("\n")).toBe(text.endsWith("\n"));
      }),
      runs,
    );
  });

  it("keeps every comment where a scalar changes or a key is added", () => {
    const comments = (text: string): readonly string[] =>
      text.match(/# (?:a comment, of its own: line|behind, \d|one, two)/g) ?? [];
    fc.assert(
      fc.property(placed, randomScalar, ({ text, value, path }, part) => {
        const isScalar = typeof partAt(value, path) !== "object";
        const after = setValue(text, isScalar ? path : ["new"], part);
        expect(comments(after)).toEqual(comments(text));
      }),
      runs,
    );
  });

  it("works on JSON, and leaves it JSON", () => {
    const spaced = fc.constantFrom(0, 1, 2, 4);
    fc.assert(
      fc.property(placed, randomValue, spaced, ({ value, path }, part, space) => {
        const text = JSON.stringify(value, undefined, space);
        expect(JSON.parse(setValue(text, path, part))).toEqual(withPart(value, path, part));
        expect(JSON.parse(setValue(text, ["new", "key"], part))).toEqual(
          withPart(value, ["new", "key"], part),
        );
        expect(JSON.parse(removeValue(text, path))).toEqual(withPart(value, path, undefined));
      }),
      runs,
    );
  });
});

describe("removeValue on files of any style", () => {
  it("takes out exactly that value", () => {
    fc.assert(
      fc.property(placed, ({ text, value, path }) => {
        expect(read(removeValue(text, path))).toEqual(withPart(value, path, undefined));
      }),
      runs,
    );
  });

  it("gives back the same bytes after a key was added", () => {
    fc.assert(
      fc.property(randomSource, fc.nat(), randomValue, ({ text, value }, pick, part) => {
        const holders = pathsIn(value).filter((path) => {
          const whole = partAt(value, path);
          return typeof whole === "object" && Object.keys(whole).length > 0;
        });
        const holder = holders[pick % holders.length]!;
        const whole = partAt(value, holder);
        const path = [...holder, Array.isArray(whole) ? whole.length : "new"];
        expect(removeValue(setValue(text, path, part), path)).toBe(text);
      }),
      runs,
    );
  });
});
