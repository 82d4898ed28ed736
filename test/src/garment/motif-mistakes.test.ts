import { describe, expect, it } from "vitest";
import type { Diagnostic } from "../../../src/diagnostics/diagnostic.ts";
import { examine } from "../../../src/examine/examine.ts";
import { readGarment } from "../../../src/garment/read-garment.ts";
import { parseSource } from "../../../src/garment/source/parse-source.ts";
import { placeAt } from "../../../src/garment/source/written.ts";
import { garmentText, marked } from "../../support/garment-text.ts";

/** What is told of a file, with its place, whether it shows in reading or only once the motif is counted. */
function told(text: string): readonly Diagnostic[] {
  const { garment, diagnostics } = readGarment(text, "test.yaml");
  const { written } = parseSource(text);
  return [
    ...diagnostics,
    ...(garment ? examine(garment) : []).map((one) => {
      const place = written && placeAt(written, one.path);
      return { ...one, ...(place && { place }) };
    }),
  ].filter(({ severity }) => severity === "error");
}

type Mistake = readonly [motif: string, code: string, message: string, expected: string];

const cord = (parts: string): string => `{ kind: cord, lead: 0, repeat: 8, ${parts} }`;
const cable = (parts: string): string => `{ kind: cable, lead: 0, repeat: 6, cross: [2, 2], ${parts} }`;
const band = (parts: string): string => `{ kind: band, repeat: 8, ${parts} }`;
const numbered = (parts: string): string => cord(`strands: { cord: { ${parts} } }`);

const inNumbers: readonly Mistake[] = [
  [numbered("each: §4, start: [1, 0], repeat: [[1, 8]]"), "wrong-type", "for each", "{ i: 1..4 }"],
  [numbered("each: §{}, start: [1, 0], repeat: [[1, 8]]"), "wrong-type", "one name", "{ i: 1..4 }"],
  [numbered("each: §{ i: 1..2, j: 1..2 }, start: [1, 0], repeat: [[1, 8]]"), "wrong-type", "one name", "i"],
  [numbered("each: { §2nd: 1..2 }, start: [1, 0], repeat: [[1, 8]]"), "bad-name", "2nd", "a word"],
  [numbered("each: { §max: 1..2 }, start: [1, 0], repeat: [[1, 8]]"), "bad-name", "max", "a word"],
  [numbered("each: { i: §4 }, start: [i, 0], repeat: [[i, 8]]"), "not-a-range", "range", "1..4 or 1..n"],
  [numbered("each: { i: 1..§n }, start: [i, 0], repeat: [[i, 8]]"), "expression-unknown-name", '"n"', ""],
  [numbered("each: { i: 1..2 }, start: [§j, 0], repeat: [[i, 8]]"), "expression-unknown-name", '"j"', "i"],
  [numbered("each: { i: 1..2 }, start: [i, 0], repeat: [[i §+ , 8]]"), "expression-not-arithmetic", "", ""],
  [numbered("each: { i: §1..30 }, start: [i, 0], repeat: [[i, 8]]"), "anchor", "at most 24", "whole"],
  [numbered("each: { i: §4..2 }, start: [i, 0], repeat: [[i, 8]]"), "anchor", "at least 4", "whole"],
  [
    numbered("each: { i: 1..2 }, start: [i, 0], repeat: [[i, 8]], next: §i + 1"),
    "anchor",
    "numbered 1 to 2, and this comes out as 3",
    "whole",
  ],
  [
    numbered("each: { i: 1..2 }, start: [1, 0], repeat: [[1, 8]], next: §1"),
    "anchor",
    "would both go on in the place of cord 1",
    "whole",
  ],
  [
    numbered("each: { i: 1..2 }, start: [i, 0], repeat: [[§i, 8]], next: 3 - i"),
    "anchor",
    "must end where cord 2 began, at 2, and this comes out as 1",
    "whole",
  ],
];

const inStrands: readonly Mistake[] = [
  [cord("strands: { a: { start: [1, 0], repeat: [[1, 8]], next: §b } }"), "unknown-strand", '"b"', "a"],
  [
    cord(
      "strands: { a: { start: [1, 0], repeat: [[1, 8]], next: b }, b: { start: [1, 0], repeat: [[1, 8]] } }",
    ),
    "anchor",
    "would both go on in the place of b",
    "whole",
  ],
  [
    cord("strands: { a: { start: [1, 0], repeat: [[1, 4], [1, 4, { §cuont: 2 }]] } }"),
    "unknown-key",
    '"cuont"',
    "count",
  ],
  [
    cord("strands: { a: { start: §[1, 0, { count: 4 }], repeat: [[1, 8]] } }"),
    "misplaced-count",
    "",
    "later",
  ],
  [
    cord("strands: { a: { start: [1, 0], repeat: [[1, 8, { count: 2 * §loop }]] } }"),
    "expression-unknown-name",
    '"loop"',
    "numbers only",
  ],
  [
    cord("strands: { a: { start: [1, 0], repeat: [[1, 8, { count: §0 }]] } }"),
    "anchor",
    "count of a loop must be at least 1",
    "whole",
  ],
  [
    cord("strands: { a: { start: [1, 0], repeat: [[1, 8, { turn: §1 / 2 }]] } }"),
    "anchor",
    "a turn must be a whole number",
    "whole",
  ],
  [
    "{ kind: cord, lead: 2, repeat: 8, strands: { a: { start: [1, 0], repeat: [[1, 0], [1, §8]] } } }",
    "anchor",
    "the next repeat is hung at its row 0",
    "whole",
  ],
];

const inCables: readonly Mistake[] = [
  [
    cable(
      "cables: { a: { start: [0, 0], repeat: [[0, 6]] } }, §crossings: { start: [0, 0], repeat: [[0, 6]] }",
    ),
    "conflicting-keys",
    "either cables",
    "one of the two",
  ],
  [cable("cables: §{}"), "empty-range", "no cable", "left:"],
  [
    cable("cables: { a: { start: [0, 0] §} }").replace(" §", "").replace("a:", "§a:"),
    "missing-key",
    "repeat",
    "",
  ],
  [
    cable("cables: { a: { over: §up, start: [0, 0], repeat: [[0, 6]] } }"),
    "wrong-word",
    "over",
    "left or right",
  ],
  [cable("crossings: { start: [0, 0], repeat: [[0, 6, { over: §up }]] }"), "wrong-word", "over", ""],
  [
    cable("cables: { a: { start: [0, 0], repeat: [[0, 6]] }, b: { start: [§3, 0], repeat: [[3, 6]] } }"),
    "anchor",
    "a and b cross the same stitches",
    "whole",
  ],
  [
    cable("crossings: { start: [0, 0], repeat: [[0, 6]] }, ladders: §3"),
    "wrong-type",
    "the ladders",
    "[-5, 5]",
  ],
  [
    cable("crossings: { start: [0, 0], repeat: [[0, 6]] }, ladders: [3, §0]"),
    "anchor",
    "no needle 0",
    "whole",
  ],
  [
    cable("crossings: { start: [0, 0], repeat: [[0, 6]] }, ladders: [§2]"),
    "anchor",
    "needle 2 is crossed",
    "whole",
  ],
  [
    cable("crossings: { start: [0, 0], repeat: [[0, 6]] }, ladders: [3, §3]"),
    "anchor",
    "out of work already",
    "whole",
  ],
  [
    cable("crossings: { start: [0, 0], repeat: [[0, 6]] }, ladders: [3, §4, 5]"),
    "anchor",
    "both neighbours of needle 4",
    "whole",
  ],
];

const inBands: readonly Mistake[] = [
  ["{ kind: §lace }", "wrong-word", "kind", "cord or cable or band"],
  ["{ kind: band, repeat: 8 }", "missing-key", "stitches", "12"],
  [band("stitches: 6, edge: §1"), "wrong-type", "the edge", "[1, 1]"],
  [band("stitches: 6, edge: §[1]"), "wrong-type", "two numbers", "[1, 1]"],
  [band("stitches: 6, edge: [1, §-1]"), "anchor", "at least 0", "whole"],
  [band("stitches: §5, card: 24"), "anchor", "repeats 1, 2, 3, 4, 6, 8, 12 or 24 stitches", "whole"],
  [band("stitches: 6, card: §0"), "zero-size", "card", "from 1"],
  [band("stitches: 6, colours: §0"), "zero-size", "colours", "from 1"],
  ["{ kind: band, repeat: §7, stitches: 6, colours: 2 }", "anchor", "even number of rows", "whole"],
  ["{ kind: band, repeat: 8, stitches: §wide * 2 }", "expression-unknown-name", '"wide"', "numbers only"],
];

describe.each([
  ["strands by number", inNumbers],
  ["strands", inStrands],
  ["cables", inCables],
  ["bands", inBands],
])("a mistake in %s", (_, mistakes) => {
  it.each(mistakes)("%s is %s", (motif, code, message, expected) => {
    // Where a mistake is about a thing as a whole its place is not marked.
    const isMarked = motif.includes("§");
    const written = garmentText({ motifs: `motifs:\n  plait: ${motif}` });
    const { text, place } = isMarked ? marked(written) : { text: written, place: undefined };
    const [first] = told(text);
    expect(first).toMatchObject({ code, ...(place && { place }) });
    expect(first?.message).toContain(message);
    expect(first?.expected ?? "").toContain(expected);
  });
});

it("a gap between the repeats of a band is told where it is written", () => {
  const { text, place } = marked(
    garmentText({
      motifs: `motifs:\n  plait: ${band("stitches: 6")}`,
      place: "place:\n  - { motif: plait, on: sleeve, columns: 2, gap: §2 }",
    }),
  );
  expect(told(text)).toMatchObject([{ code: "gap-in-band", place }]);
});

it("a band that is to be mirrored is told where that is written", () => {
  const { text, place } = marked(
    garmentText({
      motifs: `motifs:\n  plait: ${band("stitches: 6")}`,
      place: "place:\n  - { motif: plait, on: sleeve, columns: 2, mirror: §true }",
    }),
  );
  expect(told(text)).toMatchObject([{ code: "mirrored-band", severity: "error", place }]);
});

it("a mirror beside one column is warned of, and one beside several is not", () => {
  const warned = (columns: string) => {
    const { garment } = readGarment(
      garmentText({ place: `place:\n  - { motif: plait, on: sleeve, columns: ${columns}, mirror: true }` }),
      "test.yaml",
    );
    return examine(garment!);
  };
  expect(warned("1")).toMatchObject([
    { code: "mirror-of-one", severity: "warning", path: ["place", 0, "mirror"] },
  ]);
  expect(warned("{ allow: [1, 2] }")).toEqual([]);
});
