import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { createFlow, type Part, space, stack } from "../../../../src/sheet/pdf/flow.ts";

interface Drawn {
  readonly name: string;
  readonly page: number;
  readonly top: number;
  readonly bottom: number;
}

const page = { top: 10, bottom: 110 };

function recorder() {
  const drawn: Drawn[] = [];
  let number = 1;
  const flow = createFlow(page, () => {
    number++;
  });
  const part = (name: string, height: number): Part => ({
    height,
    draw: (top) => void drawn.push({ name, page: number, top, bottom: top + height }),
  });
  return { drawn, flow, part };
}

describe("parts under one another", () => {
  test("lie whole inside a page, in order, and without gaps on it", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 100 }), { minLength: 1 }), (heights) => {
        const { drawn, flow, part } = recorder();
        for (const [index, height] of heights.entries()) flow.add(part(String(index), height));
        expect(drawn.map(({ name }) => name)).toEqual(heights.map((_, index) => String(index)));
        for (const [index, one] of drawn.entries()) {
          const before = drawn[index - 1];
          expect(one.bottom).toBeLessThanOrEqual(page.bottom);
          if (before?.page === one.page) expect(one.top).toBe(before.bottom);
          else {
            expect(one.top).toBe(page.top);
            if (before) expect(before.bottom + (one.bottom - one.top)).toBeGreaterThan(page.bottom);
          }
        }
      }),
      { seed: 21 },
    );
  });

  test("stay together in a stack", () => {
    const { drawn, flow, part } = recorder();
    flow.add(part("first", 60));
    flow.add(stack([part("heading", 20), space(5), part("text", 30)]));
    expect(drawn.map(({ name, page: on, top }) => [name, on, top])).toEqual([
      ["first", 1, 10],
      ["heading", 2, 10],
      ["text", 2, 35],
    ]);
  });

  test("fall apart only where a whole page is too short for their stack", () => {
    const { drawn, flow, part } = recorder();
    flow.add(part("first", 10));
    flow.add(stack([part("one", 60), part("two", 60), part("three", 30)]));
    expect(drawn.map(({ name, page: on }) => [name, on])).toEqual([
      ["first", 1],
      ["one", 1],
      ["two", 2],
      ["three", 2],
    ]);
  });

  test("have the head above them on each further page, until it is taken back", () => {
    const { drawn, flow, part } = recorder();
    flow.add(part("head", 20));
    flow.repeat(part("head", 20));
    for (const name of ["one", "two", "three"]) flow.add(part(name, 50));
    flow.repeat(undefined);
    flow.turn();
    flow.add(part("after", 10));
    expect(drawn.map(({ name, page: on, top }) => [name, on, top])).toEqual([
      ["head", 1, 10],
      ["one", 1, 30],
      ["head", 2, 10],
      ["two", 2, 30],
      ["head", 3, 10],
      ["three", 3, 30],
      ["after", 4, 10],
    ]);
  });
});
