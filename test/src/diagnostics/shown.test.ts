import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { printable, quoted, sentence, shown } from "../../../src/diagnostics/shown.ts";

describe("text from a file, fit to print", () => {
  it("is itself where it is short and plain", () => {
    expect(shown("rib top")).toBe("rib top");
    expect(quoted("rib top")).toBe('"rib top"');
    expect(shown("Ärmel \u{1F9F6}")).toBe("Ärmel \u{1F9F6}");
  });

  it("cannot steer a terminal or turn the direction of writing", () => {
    expect(shown("\u001b[31mred")).toBe("\\u001b[31mred");
    expect(shown("a\nb\tc\u0000")).toBe("a b c\\u0000");
    expect(printable("a\u202eb\u2066c\u009b")).toBe("a\\u202eb\\u2066c\\u009b");
  });

  it("is cut to one short line, between characters", () => {
    expect(shown("a".repeat(60))).toBe("a".repeat(60));
    expect(shown("a".repeat(61))).toBe(`${"a".repeat(57)}...`);
    expect(shown("\u{1F9F6}".repeat(61))).toBe(`${"\u{1F9F6}".repeat(57)}...`);
    expect(shown("\u{1F9F6}".repeat(60))).toBe("\u{1F9F6}".repeat(60));
    expect(sentence("a".repeat(300))).toBe("a".repeat(300));
    expect(sentence("a".repeat(301))).toBe(`${"a".repeat(297)}...`);
  });

  it("never grows without bound", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 2000 }), (text) => {
        expect(shown(text).length).toBeLessThanOrEqual(60 * 6 + 3);
        expect(sentence(text).length).toBeLessThanOrEqual(300 * 6 + 3);
      }),
      { seed: 5 },
    );
  });
});
