import { describe, expect, it } from "vitest";
import { LARGEST_FILE_BYTES } from "../../../../src/garment/source/decode.ts";
import { parseSource } from "../../../../src/garment/source/parse-source.ts";
import { marked } from "../../../support/garment-text.ts";

describe("text that is not well-formed", () => {
  it.each<[text: string, code: string, message: RegExp]>([
    ["a: §b: c", "file-not-yaml", /two keys in one line/],
    ["a:\n§\tb: 1", "file-not-yaml", /indented with a tab/],
    ["a: §[1, 2", "file-not-yaml", /bracket is never closed/],
    ["a: §{x: [1, 2], y: 2", "file-not-yaml", /bracket is never closed/],
    ["a: {x: §[1, 2}", "file-not-yaml", /./],
    ['a: §"x\nb: 1\nc: 2\n', "file-not-yaml", /quote is never closed/],
    ["a: §'x", "file-not-yaml", /quote is never closed/],
    ["a:\n  b: 1\n§ c: 2", "file-not-yaml", /does not line up/],
    ["a: 1\n§b", "file-not-yaml", /no colon after this key/],
    ["a: §@x", "file-not-yaml", /can't start with this sign/],
    ['a: "§\\q"', "file-not-yaml", /\\ in double quotes/],
    ["a: 'x' §y", "file-not-yaml", /can't stand here/],
    ["a: {b: §1 c: 2}", "file-not-yaml", /comma or a bracket is missing/],
    ["? §[a]\n: 1", "file-not-yaml", /where a key should/],
    ["a: §!!binary aGVsbG8=", "file-not-yaml", /kind \(!name\)/],
    ["a: §!!js/function 'x'", "file-not-yaml", /kind \(!name\)/],
    ["a: §!!timestamp 2001-01-01", "file-not-yaml", /kind \(!name\)/],
    ["a: 1\n§---\nb: 2", "several-documents", /more than one garment/],
    ["a: §*b", "bad-reference", /is not there/],
    ["a: &a [§*a]", "bad-reference", /what it is part of/],
  ])("%j", (marking, code, message) => {
    const { text, place } = marked(marking);
    const { written, diagnostics } = parseSource(text);
    expect(written).toBeUndefined();
    expect(diagnostics[0]).toMatchObject({ severity: "error", code, place });
    expect(diagnostics[0]?.message).toMatch(message);
    expect(diagnostics[0]?.expected).toBeTruthy();
  });

  it("is told line by line, up to ten lines", () => {
    const { diagnostics } = parseSource("a: @x\nb: 1\nc: `y`\n");
    expect(diagnostics.map(({ place }) => place?.line)).toEqual([1, 3]);
    expect(parseSource("a: @x\n".repeat(50)).diagnostics).toHaveLength(10);
  });

  it("counts columns as one sees them", () => {
    const { diagnostics } = parseSource("'\u{1F9F6}\u{1F9F6}': @x");
    expect(diagnostics[0]?.place).toEqual({ line: 1, column: 7 });
  });
});

describe("files that are no text", () => {
  const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

  it.each<[name: string, input: string | Uint8Array, code: string, place?: object]>([
    ["an empty file", "", "file-empty"],
    ["an empty file", new Uint8Array(), "file-empty"],
    ["blanks", " \n\t\n", "file-empty"],
    ["a remark alone", "# later\n", "file-empty"],
    ["a byte order mark alone", "\ufeff", "file-empty"],
    ["the start of a document alone", "---\n", "file-empty"],
    ["the word for nothing", "null", "file-empty"],
    ["zero bytes", new Uint8Array([97, 58, 0, 49]), "file-binary"],
    ["a zero character", "a: \u0000", "file-binary", { line: 1, column: 4 }],
    ["an escape character", "a: 1\nb: \u001b[31m", "file-binary", { line: 2, column: 4 }],
    ["a picture", new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0]), "file-binary"],
    ["UTF-16", new Uint8Array([0xff, 0xfe, 97, 0]), "file-not-utf8"],
    ["UTF-16 the other way", new Uint8Array([0xfe, 0xff, 0, 97]), "file-not-utf8"],
    ["Latin-1", new Uint8Array([97, 58, 32, 0xe9]), "file-not-utf8"],
    ["half a character", utf8("a: é").subarray(0, 4), "file-not-utf8"],
    ["50 MB", "a".repeat(50_000_000), "file-too-large"],
    ["50 MB of bytes", new Uint8Array(50_000_000), "file-too-large"],
    ["one byte too many", "#".repeat(LARGEST_FILE_BYTES + 1), "file-too-large"],
  ])("%s", (_name, input, code, place = { line: 1, column: 1 }) => {
    const { written, diagnostics } = parseSource(input);
    expect(written).toBeUndefined();
    expect(diagnostics).toMatchObject([{ severity: "error", code, place }]);
  });
});

describe("text that is made to be hard to read", () => {
  const letters = "bcdefghijklmnop".split("");
  const most = LARGEST_FILE_BYTES;

  it.each<[name: string, text: string, code: string]>([
    [
      "references to references to references",
      `a: &a [x,x,x,x,x,x,x,x,x]\n${letters
        .map(
          (letter, index) =>
            `${letter}: &${letter} [${Array(9).fill(`*${"abcdefghijklmnop"[index]}`).join(",")}]`,
        )
        .join("\n")}`,
      "too-many-values",
    ],
    ["many references", `- &a x\n${"- *a\n".repeat(400)}`, "bad-reference"],
    ["many values", `[${"1,".repeat(60_000)}1]`, "too-many-values"],
    ["brackets 100 deep", `${"[".repeat(100)}${"]".repeat(100)}`, "too-deep"],
    ["brackets without end", "[".repeat(most), "too-deep"],
    ["keys without end", "{a: ".repeat(most / 4), "too-deep"],
    ["dashes without end", "- ".repeat(most / 2), "too-deep"],
    ["brackets that do not match", "[}".repeat(most / 2), "file-not-yaml"],
    ["commas", `[${",".repeat(most - 1)}`, "file-not-yaml"],
    ["a long key", `${"a".repeat(most - 3)}: 1`, "file-not-yaml"],
    ["documents without end", "---\n".repeat(most / 4), "several-documents"],
  ])("%s", (_name, text, code) => {
    const { written, diagnostics } = parseSource(text);
    expect(written).toBeUndefined();
    expect(diagnostics[0]).toMatchObject({ severity: "error", code, place: { line: expect.any(Number) } });
    expect(diagnostics.length).toBeLessThan(12);
  });

  it("is read where it is only long", () => {
    const { diagnostics } = parseSource(`a: [${"1,".repeat(40_000)}1]`);
    expect(diagnostics).toEqual([]);
  });
});

describe("values", () => {
  const entry = (text: string, key = "a") => {
    const { written, diagnostics } = parseSource(text);
    expect(diagnostics).toEqual([]);
    if (written?.kind !== "table") throw new Error("no table");
    return written.entries.get(key)?.value;
  };

  it.each<[string, object]>([
    ["a: no", { kind: "text", text: "no", indent: 0 }],
    ["a: off", { kind: "text", text: "off" }],
    ["a: 2001-01-01", { kind: "text", text: "2001-01-01" }],
    ["a: 12:30", { kind: "text", text: "12:30" }],
    ["a: 1_000", { kind: "text", text: "1_000" }],
    ["a: true", { kind: "boolean", text: "true" }],
    ["a: 1.10", { kind: "number", value: 1.1, text: "1.10" }],
    ["a: '28'", { kind: "text", text: "28", indent: 1 }],
    ["a: ~", { kind: "nothing" }],
    ["a:", { kind: "nothing" }],
    ["%YAML 1.1\n---\na: yes", { kind: "text", text: "yes" }],
    ["%YAML 1.1\n---\na: 2001-01-01", { kind: "text", text: "2001-01-01" }],
    ["a: !!str 28", { kind: "text", text: "28" }],
    ["{ a: 1,5 cm }", { kind: "text", text: "1,5 cm", place: { line: 1, column: 6 } }],
    ['{ a: 1,5" }', { kind: "text", text: '1,5"' }],
    ["{ a: 1,5 }", { kind: "text", text: "1,5" }],
    ["{ a: -1,5 %, b: 2 }", { kind: "text", text: "-1,5 %" }],
    ["{ a: 1, 5 cm: 3 }", { kind: "number", value: 1 }],
    ["{ a: 1.5, cm }", { kind: "number", value: 1.5 }],
  ])("%s", (text, value) => {
    expect(entry(text)).toMatchObject(value);
  });

  it("keeps keys as they are written", () => {
    const { written } = parseSource("{ on: 1, no: 2, 3: 4, 0x1F: 5, null: 6, __proto__: 7 }");
    expect(written?.kind === "table" && [...written.entries.keys()]).toEqual([
      "on",
      "no",
      "3",
      "0x1F",
      "null",
      "__proto__",
    ]);
  });

  it("tells of a key that stands twice, and keeps the first", () => {
    const { written, diagnostics } = parseSource("a: 1\nb: 2\na: 3\n");
    expect(diagnostics).toMatchObject([
      { code: "duplicate-key", place: { line: 3, column: 1 }, path: ["a"] },
    ]);
    expect(written?.kind === "table" && written.entries.get("a")?.value).toMatchObject({ value: 1 });
  });
});
