import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { movedEnd, typedAllowed, writtenAllowed } from "../../../src/explore/allowed-values.ts";
import { allowedText } from "../../../src/explore/rule-words.ts";
import { type Allowed, anyFrom, only } from "../../../src/garment/allowed.ts";

const limits = { least: 0, most: 100 };

describe("what is typed", () => {
  test.each<[string, Allowed]>([
    ["4", only(4)],
    ["2..5", only(2, 3, 4, 5)],
    ["2-5", only(2, 3, 4, 5)],
    ["2 to 5", only(2, 3, 4, 5)],
    ["2..8 by 3", only(2, 5, 8)],
    ["8, 2 4", only(2, 4, 8)],
    ["5 or more", anyFrom(5)],
    ["5+", anyFrom(5)],
    ["5..", anyFrom(5)],
  ])("%s is read", (text, expected) => {
    expect(typedAllowed(text, 0, 100)).toEqual(expected);
  });

  test.each([
    ["", "Type a number such as 4"],
    ["four", "Type a number such as 4"],
    ["5..2", "A range starts at its lower end: 2..5"],
    ["2..5 by 0", "A range goes up by steps of 1 or more"],
    ["101", "101 is out of the question: from 0 to 100"],
    ["-1..3", "-1 is out of the question: from 0 to 100"],
  ])("%s is refused with a word about what is right", (text, words) => {
    expect(typedAllowed(text, 0, 100)).toContain(words);
  });

  test("whatever a set is called can be typed again, and gives the same set", () => {
    const sets = fc.oneof(
      fc
        .uniqueArray(fc.integer({ min: 0, max: 100 }), { minLength: 1, maxLength: 12 })
        .map((list) => only(...list)),
      fc.integer({ min: 0, max: 100 }).map(anyFrom),
    );
    fc.assert(
      fc.property(sets, (allowed) => {
        expect(typedAllowed(allowedText(allowed), 0, 100)).toEqual(allowed);
      }),
      { seed: 7, numRuns: 500 },
    );
  });
});

describe("one step at an end", () => {
  test("narrows and widens by the step that the values have there", () => {
    expect(movedEnd(only(2, 4, 6), "from", 1, limits)).toEqual(only(4, 6));
    expect(movedEnd(only(2, 4, 6), "from", -1, limits)).toEqual(only(0, 2, 4, 6));
    expect(movedEnd(only(2, 4, 7), "to", 1, limits)).toEqual(only(2, 4, 7, 10));
    expect(movedEnd(only(2, 4, 7), "to", -1, limits)).toEqual(only(2, 4));
    expect(movedEnd(only(3), "to", 1, limits)).toEqual(only(3, 4));
  });

  test("never takes the last value, nor goes beyond what is possible", () => {
    expect(movedEnd(only(3), "from", 1, limits)).toContain("3 is the only value left");
    expect(movedEnd(only(0, 1), "from", -1, limits)).toBe("Nothing below 0 is possible here");
    expect(movedEnd(only(99, 100), "to", 1, limits)).toBe("Nothing above 100 is possible here");
  });

  test("gives a range without an upper end one at the present value", () => {
    expect(movedEnd(anyFrom(1), "to", -1, { ...limits, chosen: 4 })).toEqual(only(1, 2, 3, 4));
    expect(movedEnd(anyFrom(1), "to", -1, limits)).toContain("no fit to take one from");
    expect(movedEnd(anyFrom(1), "to", 1, limits)).toBe("There is no upper end to move up");
    expect(movedEnd(anyFrom(1), "from", 1, limits)).toEqual(anyFrom(2));
  });
});

test.each<[Allowed, unknown]>([
  [only(4), 4],
  [only(2, 3, 4), "2..4"],
  [only(2, 4, 6), [2, 4, 6]],
  [only(2, 4, 6, 8, 10, 12), { from: 2, to: 12, step: 2 }],
  [only(1, 5, 6), [1, 5, 6]],
  [anyFrom(3), { least: 3 }],
])("%j is written in the shortest form", (allowed, written) => {
  expect(writtenAllowed(allowed)).toEqual(written);
});
