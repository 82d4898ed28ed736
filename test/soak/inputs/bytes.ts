import fc from "fast-check";

const encoder = new TextEncoder();

/** Bytes that readers of text stumble over: byte order marks, zero, line ends, broken and overlong UTF-8, escapes. */
const oddBytes: readonly Uint8Array[] = [
  ...[
    [0xef, 0xbb, 0xbf],
    [0xff, 0xfe],
    [0xfe, 0xff],
    [0],
    [0x0d, 0x0a],
    [0x0d],
    [0xc3],
    [0xe2, 0x82],
    [0xf0, 0x9f],
  ],
  ...[
    [0xc0, 0xaf],
    [0xed, 0xa0, 0x80],
    [0xf4, 0x90, 0x80, 0x80],
    [0x1b, 0x5b],
    [0x85],
    [0xc2, 0x85],
    [0x09],
    [0x7f],
  ],
].map((list) => Uint8Array.from(list));

/** Marks that mean something in the files we read. */
const oddText: readonly string[] = [
  ...[
    ":",
    ": ",
    "- ",
    "{",
    "}",
    "[",
    "]",
    '"',
    "'",
    "\t",
    "\n",
    "&a ",
    "*a",
    "#",
    "|",
    ">",
    "%YAML 1.1\n",
    "---\n",
  ],
  ...[
    "...\n",
    "? ",
    "!!binary ",
    "!!js/function ",
    "!<tag> ",
    "<<: *a\n",
    "\\x41",
    "\\u0000",
    "@",
    "`",
    "&a [*a]",
  ],
  ...[
    "<!--",
    "<![CDATA[",
    "&lt;",
    "&#0;",
    "<!DOCTYPE x [<!ENTITY a 'b'>]>",
    "</",
    "<use href='#p'/>",
    "0\nEOF\n",
  ],
];

interface Cut {
  readonly from: number;
  readonly length: number;
  readonly put: Uint8Array;
}

const cut: fc.Arbitrary<Cut> = fc.record({
  from: fc.double({ min: 0, max: 1, noNaN: true }),
  length: fc.oneof(
    { weight: 4, arbitrary: fc.integer({ min: 0, max: 3 }) },
    fc.integer({ min: 0, max: 400 }),
    fc.constant(1_000_000),
  ),
  put: fc.oneof(
    fc.constantFrom(...oddBytes),
    { weight: 2, arbitrary: fc.constantFrom(...oddText).map((text) => encoder.encode(text)) },
    fc.uint8Array({ maxLength: 4 }),
    fc.string({ unit: "binary", maxLength: 6 }).map((text) => encoder.encode(text)),
  ),
});

function replaced(bytes: Uint8Array, { from, length, put }: Cut): Uint8Array {
  const at = Math.floor(from * bytes.length);
  return Buffer.concat([bytes.subarray(0, at), put, bytes.subarray(Math.min(bytes.length, at + length))]);
}

/** Files with some of their bytes cut out, put in or changed for others. */
export const changedBytes = (texts: readonly string[]): fc.Arbitrary<Uint8Array> =>
  fc
    .tuple(fc.constantFrom(...texts), fc.array(cut, { minLength: 1, maxLength: 4 }), fc.boolean())
    .map(([text, cuts, windows]) =>
      cuts.reduce(replaced, encoder.encode(windows ? text.replaceAll("\n", "\r\n") : text)),
    );

/** Bytes of no kind at all. */
export const anyBytes = (): fc.Arbitrary<Uint8Array> =>
  fc.oneof(
    fc.uint8Array({ maxLength: 400 }),
    fc.string({ unit: "binary", maxLength: 200 }).map((text) => encoder.encode(text)),
    fc.string({ maxLength: 200 }).map((text) => encoder.encode(text)),
  );

/** Text that swells, nests or slows its reader down, of a size that the reader still takes. */
export function yamlBombs(): fc.Arbitrary<Uint8Array> {
  const times = fc.integer({ min: 1, max: 3000 });
  const bomb = fc.oneof(
    fc.integer({ min: 1, max: 40 }).map(doubling),
    times.map((count) => "[".repeat(count)),
    times.map((count) => "{a: ".repeat(count)),
    times.map((count) => "- ".repeat(count)),
    times.map(
      (count) =>
        `${Array.from({ length: Math.min(count, 300) }, (_, at) => `${" ".repeat(at)}a:\n`).join("")}1`,
    ),
    times.map((count) => `a: &a [${"*a, ".repeat(count)}]`),
    times.map((count) => `a: &a 1\nb: [${"*a, ".repeat(count)}]`),
    times.map((count) => `"${"\\u0041".repeat(count)}`),
    times.map((count) => `? ${"a".repeat(count)}\n`.repeat(3)),
    times.map((count) => `${"a".repeat(count)}: 1\n${"a".repeat(count)}: 2`),
    times.map((count) => `a: |\n${" x\n".repeat(count)}`),
    times.map((count) => "---\n".repeat(count)),
    times.map(
      (count) =>
        `format: evenrow/1\npieces: {${Array.from({ length: count }, (_, at) => `p${at}: 1, `).join("")}}`,
    ),
    times.map((count) => `{${"a, ".repeat(count)}}`),
    times.map((count) => "&a ".repeat(count)),
    times.map((count) => "!!map ".repeat(count)),
    times.map((count) => `<<: &a {b: 1}\n${"<<: *a\n".repeat(count)}`),
  );
  return bomb.map((text) => encoder.encode(text));
}

function doubling(levels: number): string {
  const lines = ["a0: &a0 [x, x]"];
  for (let level = 1; level < levels; level++)
    lines.push(`a${level}: &a${level} [*a${level - 1}, *a${level - 1}]`);
  return lines.join("\n");
}
