import { describe, expect, test } from "vitest";
import { duringAll, goOn, hold, unlessEnded, WorkEnded, within } from "../../../src/fit/allowance.ts";
import { withClock } from "../../support/own-clock.ts";

/** What some work that is ended is told. */
function ending(work: () => void): string {
  try {
    work();
  } catch (error) {
    expect(error).toBeInstanceOf(WorkEnded);
    expect((error as WorkEnded).name).toBe("WorkEnded");
    return (error as WorkEnded).message;
  }
  return "went on";
}

const outOfTime = "the time allowed was up before a fit was found";
const tooMuch =
  "there are more ways to lay the motifs than can be held in memory; allow fewer columns, gaps, margins, values or changes of length";

describe("work that has so long", () => {
  test("goes on to the end of it, and no further", () => {
    withClock(0, (moveOn) => {
      moveOn(500);
      const having = (ms: number) => () =>
        within(100, () => {
          moveOn(ms);
          goOn();
        });
      expect(ending(having(100))).toBe("went on");
      expect(ending(having(100.5))).toBe(outOfTime);
    });
  });

  test("has no limit where none is set", () => {
    withClock(0, (moveOn) => {
      moveOn(1e9);
      expect(ending(goOn)).toBe("went on");
      expect(ending(() => within(undefined, goOn))).toBe("went on");
    });
  });

  test("gives back what it comes to", () => {
    expect(within(1000, () => 7)).toBe(7);
  });
});

describe("work inside other work", () => {
  test("has no longer than that has left, and gives it back", () => {
    expect(ending(() => within(-1, () => within(60_000, goOn)))).toBe(outOfTime);
    expect(ending(() => within(-1, () => within(undefined, goOn)))).toBe(outOfTime);
    expect(ending(() => within(60_000, () => within(-1, goOn)))).toBe(outOfTime);
    expect(ending(goOn)).toBe("went on");
    expect(ending(() => within(60_000, () => [within(-1, () => 0), goOn()]))).toBe("went on");
  });

  test("holds as much as it may by itself", () => {
    const much = 300_000;
    const twice = (): void => {
      within(undefined, () => hold(much));
      hold(much);
    };
    expect(ending(() => within(undefined, twice))).toBe("went on");
    expect(ending(() => within(undefined, () => [hold(much), hold(much)]))).toBe(tooMuch);
    // Whatever it was ended for, what is outside of it begins where it was.
    expect(ending(() => within(undefined, () => hold(much)))).toBe("went on");
  });
});

test("four hundred thousand things may be held, and no more", () => {
  expect(ending(() => within(undefined, () => hold(400_000)))).toBe("went on");
  expect(ending(() => within(undefined, () => [hold(400_000), hold(1)]))).toBe(tooMuch);
});

describe("work that waits for others", () => {
  test("has its time over all of it, and gives back what it comes to", async () => {
    await expect(duringAll(-1, async () => goOn())).rejects.toThrow(outOfTime);
    await expect(
      duringAll(-1, async () => {
        await Promise.resolve();
        goOn();
      }),
    ).rejects.toThrow(outOfTime);
    expect(await duringAll(60_000, async () => 7)).toBe(7);
    expect(ending(goOn)).toBe("went on");
  });

  test("keeps its allowance until it is done", async () => {
    await expect(
      duringAll(60_000, async () => {
        hold(300_000);
        await Promise.resolve();
        hold(300_000);
      }),
    ).rejects.toThrow(tooMuch);
    await duringAll(60_000, async () => hold(300_000));
    expect(ending(() => within(undefined, () => hold(300_000)))).toBe("went on");
  });

  test("has no longer than what is around it", async () => {
    await expect(duringAll(-1, () => duringAll(60_000, async () => goOn()))).rejects.toThrow(outOfTime);
    await expect(duringAll(60_000, () => duringAll(-1, async () => goOn()))).rejects.toThrow(outOfTime);
  });

  test("that stands beside an answer is left out where it is ended, and only then", async () => {
    expect(await duringAll(-1, () => unlessEnded(async () => goOn()))).toBeUndefined();
    expect(await unlessEnded(async () => 7)).toBe(7);
    await expect(unlessEnded(() => Promise.reject(new Error("a fault")))).rejects.toThrow("a fault");
  });
});
