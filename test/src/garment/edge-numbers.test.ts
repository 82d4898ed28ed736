import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { isScalar, LineCounter, parseDocument, type Scalar, visit } from "yaml";
import { readGarment } from "../../../src/garment/read-garment.ts";

/** Written as YAML and JSON let numbers be written, at the edges of what a number can be; none is a size or a count. */
const edges = [
  ...[
    "1e308",
    "-1e308",
    "1e309",
    "1e-320",
    "-0",
    "-0.0",
    ".inf",
    "-.inf",
    ".nan",
    "NaN",
    "Infinity",
    "0x1F",
    "0o17",
  ],
  ...["0b101", "1e3", "1_000", "99999999999999999999", "-99999999999999999999", "1.5.2"],
];

const measure = /^[-+]?[\d.]+ ?(cm|mm|m|in|%|g|tex)?$/;

/** Every number of a file, and every length and percentage, with what of it is the number. */
function numbersIn(source: string): readonly { readonly offset: number; readonly digits: string }[] {
  const found: { offset: number; digits: string }[] = [];
  visit(parseDocument(source), {
    Scalar(key, node: Scalar) {
      if (key === "key" || !isScalar(node) || !node.range || node.type !== "PLAIN") return;
      const text = source.slice(node.range[0], node.range[1]);
      if (measure.test(text)) found.push({ offset: node.range[0], digits: /^[-+]?[\d.]+/.exec(text)![0] });
    },
  });
  return found;
}

const samples = readdirSync("samples").filter((name) => name.endsWith(".yaml") && !name.startsWith("drawn"));

test.each(samples)("whatever number of %s is one at an edge is refused where it stands", (name) => {
  const source = readFileSync(`samples/${name}`, "utf8");
  const lines = new LineCounter();
  parseDocument(source, { lineCounter: lines });
  const numbers = numbersIn(source);
  expect(numbers.length).toBeGreaterThan(10);
  numbers.forEach(({ offset, digits }, index) => {
    // Each edge often enough over all samples, and each number at one of them.
    const edge = edges[(index * 7 + name.length) % edges.length]!;
    const changed = source.slice(0, offset) + edge + source.slice(offset + digits.length);
    const { garment, diagnostics } = readGarment(changed, name);
    const { line, col: column } = lines.linePos(offset);
    const what = `${edge} in line ${line}, column ${column}`;
    expect(garment, what).toBeUndefined();
    // In a sum it is told at the character where it stops being one.
    const there = diagnostics.some(
      ({ severity, place }) =>
        severity === "error" &&
        place?.line === line &&
        place.column >= column &&
        place.column < column + edge.length,
    );
    expect(there, `${what}: ${JSON.stringify(diagnostics)}`).toBe(true);
  });
});
