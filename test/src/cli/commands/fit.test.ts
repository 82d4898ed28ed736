import { describe, expect, test } from "vitest";
import { run } from "../../../../src/cli/commands/fit.ts";
import { run as model } from "../../../../src/cli/commands/model.ts";
import { solveTextWithGlpk } from "../../../solver/support/glpk-engine.ts";
import { stripFile } from "../../../support/two-sizes.ts";

const whole = ["interval", "spread", "pickup"];

async function command(
  asked: typeof run,
  file: string,
  options: Record<string, string | boolean> = {},
  stdin = "",
) {
  let [out, err] = ["", ""];
  const code = await asked({
    operands: [file],
    options,
    terminal: {
      out: (text) => {
        out += text;
      },
      say: (text) => {
        err += `${text}\n`;
      },
      columns: 80,
      interactive: false,
      readStdin: async () => new TextEncoder().encode(stdin),
    },
  });
  return { code, out, err };
}

const fitOf = (text: string, options: Record<string, string | boolean> = {}) =>
  command(run, "-", options, text);

describe("fit, of a file with sizes", () => {
  const file = "samples/nine-sizes.yaml";

  test("prints the pattern's table, proven, and the cautions once for all sizes", async () => {
    const { code, out, err } = await command(run, file);
    expect(code).toBe(0);
    expect(out).toContain("Sizes: XS (S, M, L, XL, 2X, 3X, 4X, 5X)");
    expect(out).toContain("proven");
    expect(err.match(/A cord can catch and strangle/g)).toHaveLength(1);
  });

  test("prints one size within all by --size, and the same numbers in the JSON of all", async () => {
    const { code, out } = await command(run, file, { json: true, rivals: "0" });
    expect(code).toBe(0);
    const all = JSON.parse(out);
    expect(all).toMatchObject({ status: "fits", proven: true, rivals: [] });
    const one = JSON.parse((await command(run, file, { json: true, size: "L", rivals: "0" })).out);
    const { placements, terms, cost } = all.sizes.find(({ size }: { size: string }) => size === "L");
    expect([one.placements, one.terms, one.cost]).toEqual([placements, terms, cost]);
    const { out: text } = await command(run, file, { size: "L" });
    expect(text).toContain("the best for all sizes together");
    expect(text).toContain("Next best with what all sizes share");
  });

  test("ends with 1 where a size does not fit, and names its rules by line", async () => {
    const text = stripFile({ rows: { S: 28, M: 8 }, share: whole });
    const { code, out } = await fitOf(text);
    expect(code).toBe(1);
    expect(out).toContain("M does not fit, even without the others.");
    const [, line] = /interval 3 or 4 rows \(line (\d+)\)/.exec(out)!;
    // The value begins on that line, below its key.
    expect(text.split("\n")[Number(line) - 2]).toContain("interval:");
    expect(await fitOf(text, { size: "S" })).toMatchObject({
      code: 1,
      out: expect.stringContaining("M does not fit, even without the others."),
    });
    const { conflict } = JSON.parse((await fitOf(text, { json: true })).out);
    expect(conflict.every(({ size }: { size: string }) => size === "M")).toBe(true);
  });

  test("ends with 1 where sizes cannot share, and says which", async () => {
    const text = stripFile({ rows: { S: 33, M: 36, L: 27 }, share: whole });
    const { code, out } = await fitOf(text);
    expect([code, out.includes("Without M the others could.")]).toEqual([1, true]);
    // No rule of the size itself is to blame.
    const one = await fitOf(text, { size: "S" });
    expect([one.code, one.out.includes("Without M the others could.")]).toEqual([1, true]);
  });
});

test("model writes the joined program of all sizes, and by --size that of one", async () => {
  const text = stripFile({ rows: { S: 28, M: 33 }, share: whole });
  const told = JSON.parse((await fitOf(text, { json: true })).out);
  const cost = async (options: Record<string, string>) => {
    const { out } = await command(model, "-", options, text);
    const solved = await solveTextWithGlpk(out);
    return solved.status === "optimal" ? solved.cost : Number.NaN;
  };
  expect(await cost({})).toBeCloseTo(told.cost, 5);
  expect(await cost({ size: "S" })).toBeCloseTo(told.sizes[0].alone_cost, 5);
});
