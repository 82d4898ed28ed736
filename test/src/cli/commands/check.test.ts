import { describe, expect, test } from "vitest";
import { run } from "../../../../src/cli/commands/check.ts";

async function check(file: string, options: { json?: true } = {}, columns = 200) {
  let [out, said] = ["", ""];
  const code = await run({
    operands: [file],
    options,
    terminal: {
      out: (text) => {
        out += text;
      },
      say: (text) => {
        said += text;
      },
      columns,
      interactive: false,
      readStdin: async () => new Uint8Array(),
    },
  });
  return { code, out, said };
}

describe("how near the knitted edges come to the outlines", () => {
  test("is told edge by edge, with where and why", async () => {
    const { code, out, said } = await check("samples/drawn-front.yaml");
    expect(code).toBe(0);
    expect(said).toBe("samples/drawn-front.yaml reads well.");
    expect(out).toMatch(
      /^How near the knitted edges come to the outlines\n- front, left edge: at most [\d.]+ mm to the left of the outline, [\d.]+ cm up \(row \d+\): several\s+stitches wait for the carriage/,
    );
    expect(out).toContain("front, right half's neck edge");
  });

  test("is told once of two edges that are mirror images of each other", async () => {
    const { out } = await check("samples/front.yaml");
    expect(
      out
        .replace(/\n {2}/g, " ")
        .split("\n")
        .slice(1),
    ).toEqual([
      "- front, both edges: at most 1.9 mm nearer to the centre than the outline, 36.5 cm up (row 146): needles are whole",
      "- front, both neck edges: at most 2.0 mm nearer to the centre than the outline, 55.8 cm up (row 223): needles are whole",
    ]);
  });

  test("is told to programs as well", async () => {
    const { out } = await check("samples/sleeve.yaml", { json: true });
    expect(JSON.parse(out)).toMatchObject({
      format: "evenrow-check/1",
      sound: true,
      edges: [
        {
          piece: "sleeve",
          edge: "left",
          // 32 needles are 145.45 mm; half a row lower the outline is 100 + 55 * 285.48 / 330 mm from the centre.
          difference_mm: -2.13,
          row: 89,
          height_mm: 287.1,
          cause: "whole needles",
        },
        { piece: "sleeve", edge: "right" },
      ],
    });
  });
});
