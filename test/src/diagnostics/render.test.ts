import { describe, expect, it } from "vitest";
import type { Diagnostic } from "../../../src/diagnostics/diagnostic.ts";
import {
  diagnosticJson,
  inOrder,
  renderBriefly,
  renderDiagnostic,
  renderDiagnostics,
} from "../../../src/diagnostics/render.ts";

const SOURCE = "format: evenrow/1\nbed: { needles: 150, pich: 6.5 mm }\n";

const MISTAKE: Diagnostic = {
  severity: "error",
  code: "unknown-key",
  message: 'there is no key "pich" in the bed',
  found: "pich",
  expected: "pitch (the nearest known key)",
  path: ["bed", "pich"],
  place: { line: 2, column: 22 },
};

describe("a diagnostic as text", () => {
  it("has its place, what was read, what would be right, and the line", () => {
    expect(renderDiagnostic(MISTAKE, { file: "sleeve.yaml", source: SOURCE })).toBe(
      [
        'sleeve.yaml:2:22 error: there is no key "pich" in the bed',
        "  read:  pich",
        "  right: pitch (the nearest known key)",
        "  2 | bed: { needles: 150, pich: 6.5 mm }",
        "    |                      ^",
      ].join("\n"),
    );
  });

  it("goes without what is not known", () => {
    const { found: _found, expected: _expected, place: _place, ...bare } = MISTAKE;
    expect(renderDiagnostic({ ...bare, severity: "warning" }, { file: "sleeve.yaml", source: SOURCE })).toBe(
      'sleeve.yaml warning: there is no key "pich" in the bed',
    );
    expect(
      renderDiagnostic({ ...MISTAKE, place: { line: 99, column: 1 } }, { file: "a", source: SOURCE }),
    ).toBe(
      'a:99:1 error: there is no key "pich" in the bed\n  read:  pich\n  right: pitch (the nearest known key)',
    );
  });

  it("keeps the place in view in a long line, and steers no terminal", () => {
    const source = `${"a".repeat(200)}X${"b".repeat(200)}\u001b[31m`;
    const lines = renderDiagnostic(
      { ...MISTAKE, place: { line: 1, column: 201 } },
      { file: "f", source },
    ).split("\n");
    const [text = "", caret = ""] = lines.slice(-2);
    expect(text[caret.indexOf("^")]).toBe("X");
    expect(text.length).toBeLessThan(80);
    const near = renderDiagnostic({ ...MISTAKE, place: { line: 1, column: 401 } }, { file: "f", source });
    expect(near).not.toContain("\u001b");
  });

  it("counts columns in characters, with a byte order mark, tabs and CRLF", () => {
    const source = "\ufeffa: 1\r\n\t'\u{1F9F6}': X\r\n";
    const lines = renderDiagnostic(
      { ...MISTAKE, place: { line: 2, column: 7 } },
      { file: "f", source },
    ).split("\n");
    const [text = "", caret = ""] = lines.slice(-2);
    expect([...text][caret.indexOf("^")]).toBe("X");
  });

  it("comes in the order of the places", () => {
    const at = (line: number, column: number): Diagnostic => ({ ...MISTAKE, place: { line, column } });
    const { place: _place, ...nowhere } = MISTAKE;
    const mixed = [at(2, 9), at(1, 5), at(2, 3), nowhere];
    expect(inOrder(mixed)).toEqual([nowhere, at(1, 5), at(2, 3), at(2, 9)]);
    expect(renderDiagnostics(mixed, { file: "f" }).match(/^f\S* /gm)).toEqual([
      "f ",
      "f:1:5 ",
      "f:2:3 ",
      "f:2:9 ",
    ]);
  });
});

describe("a diagnostic as JSON", () => {
  it("has line and column beside the rest", () => {
    expect(diagnosticJson(MISTAKE, "sleeve.yaml")).toEqual({
      severity: "error",
      code: "unknown-key",
      message: 'there is no key "pich" in the bed',
      file: "sleeve.yaml",
      line: 2,
      column: 22,
      found: "pich",
      expected: "pitch (the nearest known key)",
      path: ["bed", "pich"],
    });
  });

  it("leaves out what is not known", () => {
    const { found: _found, expected: _expected, place: _place, ...bare } = MISTAKE;
    expect(Object.keys(diagnosticJson(bare, "f"))).toEqual(["severity", "code", "message", "file", "path"]);
  });
});

describe("diagnostics with something else to read below", () => {
  const warnings = (count: number, of: Partial<Diagnostic> = {}): readonly Diagnostic[] =>
    Array.from({ length: count }, (_, index) => ({
      severity: "warning",
      code: "beside-only",
      message: `pair ${index + 1} shares rows`,
      expected: "marks of its own",
      path: [],
      place: { line: index + 1, column: 1 },
      ...of,
    }));
  const brief = (diagnostics: readonly Diagnostic[]): readonly string[] =>
    renderBriefly(diagnostics, { file: "f" })
      .split("\n")
      .filter((line) => !line.startsWith("  right:"));

  it("are the first three of a kind and how many more there are", () => {
    expect(brief([...warnings(21)].reverse())).toEqual([
      "f:1:1 warning: pair 1 shares rows",
      "f:2:1 warning: pair 2 shares rows",
      "f:3:1 warning: pair 3 shares rows",
      "  and 18 more warnings like these, which the command check shows",
    ]);
    expect(brief([...warnings(5), ...warnings(5, { code: "stiff-field" })])).toHaveLength(8);
  });

  it("are all of them where they are few, ask for something else each, or are mistakes", () => {
    expect(brief(warnings(4))).toHaveLength(4);
    expect(brief(warnings(9).map((one, index) => ({ ...one, expected: `${index}` })))).toHaveLength(9);
    expect(brief(warnings(9, { severity: "error" }))).toHaveLength(9);
  });
});
