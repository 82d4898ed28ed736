import { beforeEach, describe, expect, test } from "vitest";
import { createKept } from "../../../src/fit/kept.ts";

/** Asks for a list of so many things; whether it had to be made. */
let ask: (of: string, length: number) => boolean;
beforeEach(() => {
  const kept = createKept();
  ask = (of, length) => {
    let isMade = false;
    const list = kept(of, () => {
      isMade = true;
      return Array.from({ length }, () => of);
    });
    expect([list.length, list[0], list.at(-1)]).toEqual([length, of, of]);
    return isMade;
  };
});

test("a list is made the first time that it is asked for", () => {
  expect(["a", "b", "a", "a", "b"].map((of) => ask(of, 3))).toEqual([true, true, false, false, false]);
});

test("lets go of what is not asked for again once it keeps too much", () => {
  const asked = ["a", "b", "a", "c", "d", "a", "e", "f", "a", "g", "h", "a"];
  expect(asked.filter((of) => ask(of, 9_000))).toEqual(["a", "b", "c", "d", "e", "f", "g", "h"]);
  expect(ask("b", 9_000)).toBe(true);
});

describe("too much is more than 30,000, each list taking one beside its things", () => {
  test("so many are kept together", () => {
    ask("a", 14_999);
    ask("b", 14_999);
    // One more list: what was kept so far stays until there is too much again.
    ask("c", 14_999);
    expect([ask("a", 14_999), ask("b", 14_999)]).toEqual([false, false]);
  });

  test("with one more the first is the next to be let go", () => {
    ask("a", 14_999);
    ask("b", 15_000);
    // 15,001 of the second are in use; 14,999 more are 30,000, and 2 more too much.
    ask("c", 14_998);
    ask("d", 1);
    expect(ask("a", 14_999)).toBe(true);
  });

  test("what was kept last counts from then on", () => {
    ask("a", 14_999);
    ask("b", 14_999);
    ask("c", 14_999);
    ask("d", 15_000);
    expect(ask("a", 14_999)).toBe(true);
  });

  test("what is asked for many times counts once", () => {
    for (let time = 0; time < 9; time++) ask("a", 10_000);
    ask("b", 10_000);
    for (let time = 0; time < 9; time++) ask("b", 10_000);
    ask("c", 9_000);
    ask("d", 9_000);
    expect(ask("a", 10_000)).toBe(false);
  });
});
