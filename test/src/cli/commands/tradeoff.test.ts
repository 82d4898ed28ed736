import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { run } from "../../../../src/cli/commands/tradeoff.ts";

const folder = mkdtempSync(join(tmpdir(), "evenrow-"));
afterAll(() => rmSync(folder, { recursive: true }));

async function tradeoff(file: string, options: Record<string, string | boolean>) {
  let [out, said] = ["", ""];
  const code = await run({
    operands: [`samples/${file}.yaml`],
    options,
    terminal: {
      out: (text) => {
        out += text;
      },
      say: (text) => {
        said += text;
      },
      columns: 80,
      interactive: false,
      readStdin: async () => new Uint8Array(),
    },
  });
  return { code, out, said };
}

const pullover = { between: "length,balance", hold: "rest" };

test("tells every compromise with its amounts, its cost and its fit", async () => {
  const { code, out } = await tradeoff("child-pullover", { ...pullover, json: true });
  expect(code).toBe(0);
  const told = JSON.parse(out);
  expect(told).toMatchObject({
    format: "evenrow-tradeoff/1",
    terms: [
      { term: "length", unit: "rows" },
      { term: "balance", unit: "rows" },
    ],
    held: [{ term: "rest", unit: "cost" }],
    complete: true,
    best: { point: 1 },
  });
  expect(told.points.map(({ amounts }: { amounts: object }) => amounts)).toEqual([
    { length: 0, balance: 2 },
    { length: 1, balance: 1 },
    { length: 2, balance: 0 },
  ]);
  expect(told.points.map(({ best }: { best?: boolean }) => best)).toEqual([true, undefined, undefined]);
  for (const { proven, cost, terms, placements, amounts } of told.points) {
    expect(proven).toBe(true);
    const of = (name: string) =>
      terms
        .filter(({ term }: { term: string }) => term === name)
        .reduce((sum: number, { amount }: { amount: number }) => sum + amount, 0);
    expect([of("length"), of("balance")]).toEqual([amounts.length, amounts.balance]);
    expect(terms.reduce((sum: number, term: { cost: number }) => sum + term.cost, 0)).toBeCloseTo(cost, 4);
    const changed = placements.reduce(
      (sum: number, { rows_changed }: { rows_changed: number }) => sum + Math.abs(rows_changed),
      0,
    );
    expect(changed).toBe(amounts.length);
  }
});

test("tells the same as a table and a plot", async () => {
  const { code, out } = await tradeoff("child-pullover", pullover);
  expect(code).toBe(0);
  expect(out).toContain("Proven: no other fit");
  expect(out).toMatch(/^ 1 {7}0 {9}2 +[\d.]+ +the best fit$/m);
  expect(out).toMatch(/^ 3 {7}2 {9}0 .*1 row shorter/m);
  expect(out).toContain("balance (rows)\n");
  for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
});

test("says that nothing has to be traded where one fit gives up least in all", async () => {
  const { code, out } = await tradeoff("sleeve", { between: "length, evenness" });
  expect([code, out.includes("Nothing has to be traded")]).toEqual([0, true]);
});

test("draws by the output's ending", async () => {
  for (const [ending, start] of [
    ["svg", "<?xml"],
    ["png", "\u0089PNG"],
    ["txt", "Hat with"],
  ] as const) {
    const output = join(folder, `hat.${ending}`);
    expect((await tradeoff("hat", { between: "ease,interval", output })).code).toBe(0);
    expect(readFileSync(output, "latin1").startsWith(start), ending).toBe(true);
  }
});

describe("what cannot be traded is refused, with what can", () => {
  test.each([
    [{}, "--between length,balance"],
    [{ between: "length" }, "Name two terms, or three"],
    [{ between: "length,length" }, "cannot be traded for itself"],
    [{ between: "lenght,ease" }, '"lenght" is no term of this file\'s cost. Did you mean length?'],
    [{ between: "margins,length" }, "Did you mean balance (how uneven the margins are)?"],
    [{ between: "repeat,length" }, "Did you mean repeats?"],
    [{ between: "length,repeats" }, "nothing to trade in repeats: no `prefer` is stated"],
    [{ between: "length,ease", hold: "ease" }, "ease is traded, so it cannot be held"],
    [{ between: "length,ease", hold: "spraed" }, "Did you mean spread?"],
  ])("%j", async (options, words) => {
    await expect(tradeoff("sleeve", options as Record<string, string>)).rejects.toThrow(words);
  });
});

test("ends with 1 where nothing fits, and with 3 where the time is up", async () => {
  const narrow = await tradeoff("too-narrow", { between: "ease,spread", json: true });
  expect([narrow.code, JSON.parse(narrow.out).status]).toEqual([1, "does not fit"]);
  expect(narrow.said).toContain("evenrow why");
  const hurried = await tradeoff("growing-sleeve", { between: "ease,spread,rest", "time-limit": "0.01" });
  expect(hurried.code).toBe(3);
});
