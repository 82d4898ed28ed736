import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { beside, createFlow, type Part, space, stack } from "../../../../src/sheet/pdf/flow.ts";

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

  test("keep a stack whole that just fits a page", () => {
    const { drawn, flow, part } = recorder();
    flow.add(part("first", 10));
    flow.add(stack([part("one", 60), part("two", 40)]));
    expect(drawn.map(({ name, page: on }) => [name, on])).toEqual([
      ["first", 1],
      ["one", 2],
      ["two", 2],
    ]);
  });

  // A page is 100 points high, 10 to 110.
  test("let a stack fall apart that is a little higher than a page, or than what the head leaves of it", () => {
    const { drawn, flow, part } = recorder();
    flow.add(part("first", 90));
    flow.add(stack([part("one", 10), part("two", 95)]));
    flow.repeat(part("head", 20));
    flow.turn();
    flow.add(stack([part("three", 45), part("four", 45)]));
    expect(drawn.map(({ name, page: on, top }) => [name, on, top])).toEqual([
      ["first", 1, 10],
      ["one", 1, 100],
      ["two", 2, 10],
      ["head", 3, 10],
      ["three", 3, 30],
      ["head", 4, 10],
      ["four", 4, 30],
    ]);
  });

  test("that are higher than a page and all of one piece have a page from its top on", () => {
    const { drawn, flow, part } = recorder();
    flow.add(part("first", 10));
    flow.add(stack([part("one", 130)]));
    expect(drawn.map(({ name, page: on, top }) => [name, on, top])).toEqual([
      ["first", 1, 10],
      ["one", 2, 10],
    ]);
  });

  test("fit as long as they are no more than a hundredth of a point too high", () => {
    let turned = 0;
    const flow = createFlow({ top: 0, bottom: 100 }, () => turned++);
    flow.add(space(100.01));
    expect(turned).toBe(0);
    flow.turn();
    flow.add(space(50));
    flow.add(space(50.02));
    expect(turned).toBe(2);
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

describe("something beside the top of a part", () => {
  const besideOf = (part: Part, drawn: string[]) => beside(part, (top) => drawn.push(`beside at ${top}`));

  test("is drawn with it and takes no height", () => {
    const drawn: string[] = [];
    const part = besideOf({ height: 30, draw: (top) => void drawn.push(`part at ${top}`) }, drawn);
    expect(part.height).toBe(30);
    expect(part.split).toBeUndefined();
    part.draw(7);
    expect(drawn).toEqual(["beside at 7", "part at 7"]);
  });

  test("stays with the first of what the part falls into", () => {
    const marks: string[] = [];
    const { drawn, flow, part } = recorder();
    flow.add(part("before", 50));
    flow.add(besideOf(stack([part("one", 20), part("two", 60), part("three", 30)]), marks));
    expect(drawn.map(({ name, page: on, top }) => [name, on, top])).toEqual([
      ["before", 1, 10],
      ["one", 1, 60],
      ["two", 2, 10],
      ["three", 2, 70],
    ]);
    expect(marks).toEqual(["beside at 60"]);
  });
});
