import { expect, test } from "vitest";
import { quantitiesToLeaveOut } from "../../../src/grading/leaving-out.ts";

const found = (enough: (left: readonly string[]) => boolean) =>
  quantitiesToLeaveOut(["interval", "spread", "pickup"], async (left) => enough(left));

test("each quantity that helps by itself, and no pairs then", async () => {
  expect(await found((left) => left.includes("spread") || left.includes("pickup"))).toEqual([
    ["spread"],
    ["pickup"],
  ]);
});

test("pairs where none helps by itself", async () => {
  expect(await found((left) => left.length > 1 && left.includes("pickup"))).toEqual([
    ["interval", "pickup"],
    ["spread", "pickup"],
  ]);
});

test("nothing where not even pairs do", async () => {
  expect(await found(() => false)).toEqual([]);
});
