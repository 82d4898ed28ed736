import { describe, expect, test } from "vitest";
import { saidText } from "../../../src/cli/said-text.ts";
import { renderDiagnostic } from "../../../src/diagnostics/render.ts";

describe("words about a result", () => {
  test("are wrapped at spaces to the terminal's width, and no wider than results", () => {
    const words = "A cord can catch and strangle a child: keep it away from hood and neck.";
    expect(saidText(words, 40).split("\n")).toEqual([
      "A cord can catch and strangle a child:",
      "keep it away from hood and neck.",
    ]);
    const long = Array.from({ length: 60 }, () => "row").join(" ");
    for (const columns of [40, 80, 100, 250])
      for (const line of saidText(long, columns).split("\n"))
        expect(line.length).toBeLessThanOrEqual(Math.min(columns, 100));
  });

  test("stay one line where no terminal shows them", () => {
    const long = "row ".repeat(60);
    expect(saidText(`${long}\n${long}`, undefined)).toBe(`${long}\n${long}`);
  });

  test("keep what is shown of a file as it is, with its mark below", () => {
    const source = `place:\n  - { motif: plait, on: sleeve, from: cast-on, to: bind-off, repeats: 4, margins: 2 }`;
    const text = renderDiagnostic(
      {
        severity: "warning",
        code: "beside-only",
        message: "plait and braid share rows of sleeve, so they are laid side by side only",
        expected: "left and right margins for both, or marks that give each rows of its own",
        path: [],
        place: { line: 2, column: 17 },
      },
      { file: "sleeve.yaml", source },
    );
    expect(saidText(text, 50).split("\n")).toEqual([
      "sleeve.yaml:2:17 warning: plait and braid share",
      "rows of sleeve, so they are laid side by side only",
      "  right: left and right margins for both, or marks",
      "         that give each rows of its own",
      ...text.split("\n").slice(-2),
    ]);
  });
});
