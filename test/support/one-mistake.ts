import { expect } from "vitest";
import type { Code } from "../../src/diagnostics/codes.ts";
import { readGarment } from "../../src/garment/read-garment.ts";
import { garmentText, marked, type PartName } from "./garment-text.ts";

export type Changes = Readonly<Partial<Record<PartName, string>>>;

/** One mistake: the file with § where it stands, what it is called, what was read and (a part of) what is right. */
export type Mistake = readonly [changes: Changes, code: Code, found: string | undefined, expected: string];

/** Words of ours or of the libraries that mean nothing to a knitter. */
const JARGON = /scalar|schema|node|mapping|undefined|object|NaN|Error|YAML|null/;

/** The garment is refused for this one mistake, at the place that is marked and in a knitter's words. */
export function expectOnly(changes: Changes, code: Code, found: string | undefined, expected: string): void {
  const { text, place } = marked(garmentText(changes));
  const { garment, diagnostics } = readGarment(text, "sleeve.yaml");
  expect(garment).toBeUndefined();
  expect(diagnostics).toMatchObject([{ severity: "error", code, place }]);
  expect(diagnostics[0]?.found).toBe(found);
  expect(diagnostics[0]?.expected).toContain(expected);
  expect(diagnostics[0]?.message).not.toMatch(JARGON);
}
