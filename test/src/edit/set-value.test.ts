import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Path } from "../../../src/diagnostics/path.ts";
import { EditError } from "../../../src/edit/edit-error.ts";
import type { EditValue } from "../../../src/edit/edit-value.ts";
import { removeValue, setValue } from "../../../src/edit/set-value.ts";

interface Case {
  readonly it: string;
  readonly before: string;
  readonly path: Path;
  readonly value: EditValue;
  readonly after: string;
}

const lines = (...all: readonly string[]): string => `${all.join("\n")}\n`;

const settings: readonly Case[] = [
  {
    it: "replaces a number and keeps the comment behind it",
    before: lines("plait:", "  interval: 4      # rows", "  spread: 3"),
    path: ["plait", "interval"],
    value: 12,
    after: lines("plait:", "  interval: 12      # rows", "  spread: 3"),
  },
  {
    it: "turns a number into what is allowed and preferred",
    before: lines("plait:", "  interval: 4 # rows"),
    path: ["plait", "interval"],
    value: { allow: [2, 4, 6], prefer: 4 },
    after: lines("plait:", "  interval: { allow: [2, 4, 6], prefer: 4 } # rows"),
  },
  {
    it: "replaces inside braces, keeping their spacing",
    before: lines("ease: {from: -5 %,   to: 15 %}  # limits"),
    path: ["ease", "to"],
    value: "12.5 %",
    after: lines("ease: {from: -5 %,   to: 12.5 %}  # limits"),
  },
  {
    it: "writes ranges and percentages without quotes",
    before: lines("spread: 4   # needles", "ease: { from: -5 %, to: 15 % }"),
    path: ["spread"],
    value: "2..9",
    after: lines("spread: 2..9   # needles", "ease: { from: -5 %, to: 15 % }"),
  },
  {
    it: "writes a negative percentage inside of braces without quotes",
    before: lines("ease: { from: 0 %, to: 15 % }"),
    path: ["ease", "from"],
    value: "-5 %",
    after: lines("ease: { from: -5 %, to: 15 % }"),
  },
  {
    it: "keeps the quotes that a text had",
    before: lines("title: 'Plain'", 'on: "a"'),
    path: ["title"],
    value: "It's a sleeve",
    after: lines("title: 'It''s a sleeve'", 'on: "a"'),
  },
  {
    it: "quotes a text that would read as something else",
    before: lines("title: Sleeve"),
    path: ["title"],
    value: "1.50",
    after: lines('title: "1.50"'),
  },
  {
    it: "quotes a text with a comma only inside of brackets",
    before: lines("title: Sleeve", "marks: { a: b }"),
    path: ["title"],
    value: "Sleeve, left",
    after: lines("title: Sleeve, left", "marks: { a: b }"),
  },
  {
    it: "adds a key inside of braces",
    before: lines("margins: { bottom: 2..20, top: 0..12 }   # rows"),
    path: ["margins", "side"],
    value: { least: 5 },
    after: lines("margins: { bottom: 2..20, top: 0..12, side: { least: 5 } }   # rows"),
  },
  {
    it: "adds the first key inside of empty braces",
    before: lines("weights: {}"),
    path: ["weights", "length"],
    value: 2,
    after: lines("weights: { length: 2 }"),
  },
  {
    it: "adds a key after its last neighbour, behind that one's comment",
    before: lines("pieces:", "  sleeve:", "    grow: 1 cm   # at most", "# the motifs", "motifs: {}"),
    path: ["pieces", "sleeve", "shrink"],
    value: "5 mm",
    after: lines(
      "pieces:",
      "  sleeve:",
      "    grow: 1 cm   # at most",
      "    shrink: 5 mm",
      "# the motifs",
      "motifs: {}",
    ),
  },
  {
    it: "adds a key to an item of a list",
    before: lines("place:", "  - motif: plait", "    on: sleeve", "  - motif: plait"),
    path: ["place", 0, "columns"],
    value: 2,
    after: lines("place:", "  - motif: plait", "    on: sleeve", "    columns: 2", "  - motif: plait"),
  },
  {
    it: "adds the tables on the way, the innermost in braces",
    before: lines("format: evenrow/1", "pieces:", "    sleeve: { grow: 1 cm }"),
    path: ["motifs", "crossed cord", "like"],
    value: "crossed cord",
    after: lines(
      "format: evenrow/1",
      "pieces:",
      "    sleeve: { grow: 1 cm }",
      "motifs:",
      "    crossed cord: { like: crossed cord }",
    ),
  },
  {
    it: "gives a key without a value one, before its comment",
    before: lines("weights:   # ours", "title: a"),
    path: ["weights", "length"],
    value: 3,
    after: lines("weights: { length: 3 }   # ours", "title: a"),
  },
  {
    it: "replaces a table in lines by a number and keeps the comment at its key",
    before: lines("interval:   # rows", "  allow: [2, 4]", "  prefer: 4  # mostly", "spread: 3"),
    path: ["interval"],
    value: 4,
    after: lines("interval: 4   # rows", "spread: 3"),
  },
  {
    it: "changes a table in lines key by key",
    before: lines("interval:", "  allow: [2, 4]   # even", "  prefer: 4   # mostly", "spread: 3"),
    path: ["interval"],
    value: { allow: [2], prefer: 4, step: 1 },
    after: lines("interval:", "  allow: [2]   # even", "  prefer: 4   # mostly", "  step: 1", "spread: 3"),
  },
  {
    it: "drops keys that a table in lines has no more",
    before: lines("interval:", "  allow: [2, 4]   # even", "  prefer: 4   # mostly", "spread: 3"),
    path: ["interval"],
    value: { prefer: 4 },
    after: lines("interval:", "  prefer: 4   # mostly", "spread: 3"),
  },
  {
    it: "replaces an item of a list in lines",
    before: lines("rules:", "- a <= b  # first", "- b <= c"),
    path: ["rules", 0],
    value: "spread <= interval + 2",
    after: lines("rules:", "- spread <= interval + 2  # first", "- b <= c"),
  },
  {
    it: "adds an item to a list in lines",
    before: lines("rules:", "- a <= b", "- b <= c"),
    path: ["rules", 2],
    value: "c <= d",
    after: lines("rules:", "- a <= b", "- b <= c", "- c <= d"),
  },
  {
    it: "adds an item to a list in brackets",
    before: lines("allow: [2, 4]"),
    path: ["allow", 2],
    value: 6,
    after: lines("allow: [2, 4, 6]"),
  },
  {
    it: "adds a line to braces over several lines",
    before: lines("margins: {", "  bottom: 2,   # rows, of course", "  top: 3   # rows", "}"),
    path: ["margins", "side"],
    value: 4,
    after: lines("margins: {", "  bottom: 2,   # rows, of course", "  top: 3,   # rows", "  side: 4", "}"),
  },
  {
    it: "keeps a comma before a closing brace",
    before: lines("margins: {", "  bottom: 2,  # a, b", "}"),
    path: ["margins", "side"],
    value: 4,
    after: lines("margins: {", "  bottom: 2,  # a, b", "  side: 4,", "}"),
  },
  {
    it: "writes JSON into JSON",
    before: '{\n  "bed": { "needles": 150 },\n  "title": "a"\n}\n',
    path: ["motifs", "plait", "ease"],
    value: { from: "-5 %" },
    after:
      '{\n  "bed": { "needles": 150 },\n  "title": "a",\n  "motifs": { "plait": { "ease": { "from": "-5 %" } } }\n}\n',
  },
  {
    it: "replaces in JSON",
    before: '{"bed":{"needles":150},"title":"a"}',
    path: ["bed", "needles"],
    value: 200,
    after: '{"bed":{"needles":200},"title":"a"}',
  },
  {
    it: "replaces a reference, which changes nothing elsewhere",
    before: lines("a: &cm 4 cm", "b: *cm"),
    path: ["b"],
    value: "5 cm",
    after: lines("a: &cm 4 cm", "b: 5 cm"),
  },
  {
    it: "keeps Windows line breaks",
    before: "a: 1  # x\r\nb: 2\r\n",
    path: ["c", "d", "e"],
    value: 3,
    after: "a: 1  # x\r\nb: 2\r\nc:\r\n  d: { e: 3 }\r\n",
  },
  {
    it: "leaves a file without a last line break without one",
    before: "a: 1\nb: 2  # x",
    path: ["c"],
    value: 3,
    after: "a: 1\nb: 2  # x\nc: 3",
  },
  {
    it: "keeps a byte order mark",
    before: "\ufeffa: 1\nb: 2\n",
    path: ["a"],
    value: 3,
    after: "\ufeffa: 3\nb: 2\n",
  },
  {
    it: "keeps letters of all scripts where they are",
    before: lines("# größer 🧶", "títle: Ärmel 🧶  # größer", "b: 1"),
    path: ["títle"],
    value: "Ärmel 🧵",
    after: lines("# größer 🧶", "títle: Ärmel 🧵  # größer", "b: 1"),
  },
  {
    it: "leaves a value that is there already as it is written",
    before: lines("a: 1.50", "b: { c: [2,4], d: 'x' }"),
    path: ["b"],
    value: { d: "x", c: [2, 4] },
    after: lines("a: 1.50", "b: { c: [2,4], d: 'x' }"),
  },
];

describe("setValue", () => {
  it.each(settings)("$it", ({ before, path, value, after }) => {
    expect(setValue(before, path, value)).toBe(after);
  });

  it.each([
    {
      why: "a path through a reference",
      text: "a: &x { b: 1 }\nc: *x\n",
      path: ["c", "b"],
      says: "reference",
    },
    {
      why: "a value that is referred to",
      text: "a: &x { b: 1 }\nc: *x\n",
      path: ["a", "b"],
      says: "something else",
    },
    {
      why: "a path through a number",
      text: "interval: 4\n",
      path: ["interval", "allow"],
      says: "interval is 4",
    },
    { why: "a path through a long text", text: "a: |\n  x\n  y\n", path: ["a", "b"], says: "a is |" },
    { why: "an item far behind the last", text: "a: [1]\n", path: ["a", 4], says: "only 1 item" },
    { why: "a file that is not well-formed", text: "a: [1\n", path: ["a"], says: "well-formed" },
    { why: "an empty file", text: "\n", path: ["a"], says: "nothing" },
    { why: "no key at all", text: "a: 1\n", path: [], says: "key" },
  ])("refuses $why", ({ text, path, says }) => {
    expect(() => setValue(text, path, 2)).toThrow(EditError);
    expect(() => setValue(text, path, 2)).toThrow(says);
  });

  it("refuses a number that no file can hold", () => {
    expect(() => setValue("a: 1\n", ["a"], { b: [Number.NaN] })).toThrow(EditError);
  });
});

const removals: readonly Omit<Case, "value">[] = [
  {
    it: "takes out a line",
    before: lines("# top", "a: 1", "b: 2  # two", "# about c", "c: 3"),
    path: ["b"],
    after: lines("# top", "a: 1", "# about c", "c: 3"),
  },
  {
    it: "takes out the last line of a file without a last line break",
    before: "a: 1\r\nb: 2",
    path: ["b"],
    after: "a: 1",
  },
  {
    it: "takes out a table in lines",
    before: lines("a:", "  b: 1", "  c: [1,", "    2]", "d: 2"),
    path: ["a"],
    after: lines("d: 2"),
  },
  {
    it: "takes out the key behind a dash",
    before: lines("place:", "  - motif: plait", "    on: sleeve"),
    path: ["place", 0, "motif"],
    after: lines("place:", "  - on: sleeve"),
  },
  {
    it: "takes out an item of a list in lines",
    before: lines("place:", "  - motif: plait", "    on: sleeve", "  - motif: rope"),
    path: ["place", 0],
    after: lines("place:", "  - motif: rope"),
  },
  {
    it: "takes the first, a middle and the last out of braces",
    before: lines("a: { x: 1, y: 2, z: 3 }"),
    path: ["a", "y"],
    after: lines("a: { x: 1, z: 3 }"),
  },
  {
    it: "takes the first out of braces",
    before: lines("a: { x: 1, y: 2 } # c"),
    path: ["a", "x"],
    after: lines("a: { y: 2 } # c"),
  },
  {
    it: "takes the last out of braces",
    before: lines("a: { x: 1, y: 2 } # c"),
    path: ["a", "y"],
    after: lines("a: { x: 1 } # c"),
  },
  {
    it: "leaves empty braces",
    before: lines("a: { x: 1 } # c"),
    path: ["a", "x"],
    after: lines("a: {} # c"),
  },
  {
    it: "leaves empty braces where a table stood in lines",
    before: lines("marks:  # heights", "  a: 1 cm", "b: 2"),
    path: ["marks", "a"],
    after: lines("marks: {}  # heights", "b: 2"),
  },
  {
    it: "takes a line out of braces over several lines, with the comma before it",
    before: '{\n  "a": 1,\n  "b": 2\n}\n',
    path: ["b"],
    after: '{\n  "a": 1\n}\n',
  },
  {
    it: "leaves a text without the key as it is",
    before: lines("a: { x: 1 }", "b: 2"),
    path: ["b", "x"],
    after: lines("a: { x: 1 }", "b: 2"),
  },
];

describe("removeValue", () => {
  it.each(removals)("$it", ({ before, path, after }) => {
    expect(removeValue(before, path)).toBe(after);
  });

  it("refuses to take out what is referred to elsewhere", () => {
    expect(() => removeValue("a: &x 1\nb: *x\n", ["a"])).toThrow(EditError);
  });
});

describe("every sample", () => {
  const folder = new URL("../../../samples/", import.meta.url);
  it.each(readdirSync(folder).filter((name) => name.endsWith(".yaml")))(
    "%s: adding and taking out again changes nothing",
    (name) => {
      const text = readFileSync(new URL(name, folder), "utf8");
      for (const path of [
        ["weights", "gap"],
        ["place", 0, "margins", "extra"],
        ["note"],
        ["pieces", "extra"],
      ]) {
        const longer = setValue(text, path, "4 cm");
        expect(longer).not.toBe(text);
        const added = longer.length - text.length;
        expect(added).toBeLessThan(40);
      }
      expect(removeValue(setValue(text, ["note"], "x"), ["note"])).toBe(text);
      expect(removeValue(setValue(text, ["pieces", "extra"], "x"), ["pieces", "extra"])).toBe(text);
    },
  );
});
