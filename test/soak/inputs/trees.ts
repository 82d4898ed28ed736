import fc from "fast-check";
import { type DocumentOptions, parse, stringify, type ToStringOptions } from "yaml";
import { garmentArbitrary } from "../../support/random-garment.ts";
import { sampleTexts } from "./samples.ts";

/** What YAML and JSON can hold. */
export type Tree = string | number | boolean | null | readonly Tree[] | { readonly [key: string]: Tree };

/** Numbers as they may be written in a file, at every edge that a number has. */
export const edgeNumbers: readonly string[] = [
  ...["0", "-0", "+0", "0.0", "-0.0", "1", "-1", "0.5", "00012", "1.", ".5", "5.", "+7", "1_000"],
  ...["1e308", "-1e308", "1e309", "1e-320", "5e-324", "1e21", "1E3", "2e0", "9007199254740993"],
  ...["NaN", ".nan", ".inf", "-.inf", "Infinity", "0x1F", "0o17", "0b101", "1:30", "١٢", "½", "1,5", "1.5.2"],
  ...["10000", "10001", "600", "601", "400", "401", "2000000", "99999999999999999999"],
];

/** Ranges and measures at their edges; none of them is sensible everywhere, and most are so somewhere. */
const edgeWords: readonly string[] = [
  ...[
    "2..9",
    "9..2",
    "0..0",
    "0..10000",
    "0..9999",
    "-10000..10000",
    "1..50",
    "0..200",
    "-1..1",
    "1..",
    "..1",
  ],
  ...[
    "5 cm",
    "-5 cm",
    "0 cm",
    "-0 cm",
    "10 m",
    "100 m",
    "1000000 mm",
    "0.0001 mm",
    "1e308 cm",
    "1/0 cm",
    "1,5 cm",
  ],
  ...[
    "5 %",
    "-50 %",
    "200 %",
    "1e5 %",
    "-0 %",
    "NaN %",
    "Infinity cm",
    "0x10 cm",
    "4 in",
    "2 1/2 in",
    "5\u00a0cm",
  ],
  ...[
    "interval",
    "2 * interval",
    "interval / 0",
    "-interval",
    "spread <= interval",
    "1 < 2 < 3",
    "a".repeat(500),
  ],
  ...[
    "__proto__",
    "constructor",
    "toString",
    "hasOwnProperty",
    "cast-on",
    "bind-off",
    "neck",
    "crossed cord",
  ],
  ...[
    "\u001b[31m",
    "\u202e",
    "\u0000",
    "\ud800",
    "\ufeff",
    "🧶",
    "no",
    "~",
    "null",
    "",
    " ",
    "whole",
    "half",
  ],
];

const oddTree: fc.Arbitrary<Tree> = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom<Tree[]>(...edgeWords) },
  { weight: 2, arbitrary: fc.constantFrom<Tree[]>(...edgeNumbers.map(Number), ...edgeNumbers) },
  { weight: 2, arbitrary: fc.integer({ min: -3, max: 12_000 }) },
  fc.constantFrom<Tree[]>(
    [],
    {},
    [[]],
    [1, 2],
    { least: 2 },
    { from: 1, to: 4 },
    { from: 0, to: 9999, step: 1 },
  ),
  fc.constantFrom<Tree[]>(
    { allow: "0..400", prefer: 3 },
    { start: [1, 0] },
    { like: "crossed cord" },
    true,
    false,
    null,
  ),
  fc.string({ unit: "binary", maxLength: 12 }),
  fc.double(),
  // Deeper than the reader follows, and keys longer than any word.
  fc.integer({ min: 1, max: 60 }).map((depth) => nested(depth)),
  fc.integer({ min: 1, max: 5000 }).map((length): Tree => ({ ["k".repeat(length)]: 1 })),
);

function nested(depth: number): Tree {
  let tree: Tree = 1;
  for (let level = 0; level < depth; level++) tree = level % 2 === 0 ? [tree] : { a: tree };
  return tree;
}

interface Change {
  readonly how: "replace" | "remove" | "rename" | "misspell" | "double" | "nudge";
  readonly key: string;
  readonly to: Tree;
}

const change: fc.Arbitrary<Change> = fc.record({
  how: fc.constantFrom("replace", "replace", "nudge", "remove", "rename", "misspell", "double"),
  key: fc.oneof(
    fc.constantFrom(
      ...[
        "width",
        "allow",
        "prefer",
        "like",
        "kind",
        "least",
        "unit",
        "from",
        "to",
        "each",
        "next",
        "change",
      ],
      ...["__proto__", "toString", "grow", "columns", "gap", "margins", "neck", "sizes", "within", "steady"],
    ),
    fc.string({ maxLength: 8 }),
  ),
  to: oddTree,
});

const misspelt = (key: string): string => (key.length > 2 ? key[1]! + key[0]! + key.slice(2) : `${key}x`);

/** Takes the first number in a leaf to somewhere near, or far: what it says stays of its kind. */
function nudged(leaf: Tree, { to }: Change): Tree {
  const factor = typeof to === "number" && Number.isFinite(to) ? to : 3;
  const changed = (value: number): number => Math.round(value * (Math.abs(factor % 7) + 0.2));
  if (typeof leaf === "number") return changed(leaf);
  if (typeof leaf !== "string") return leaf;
  return leaf.replace(/\d+/, (digits) => String(changed(Number(digits))));
}

/** A copy in which what lies at the first branch, and so on down, is changed; later branches count from the leaf up. */
function mutated(tree: Tree, steps: readonly number[], one: Change): Tree {
  const [step = 0, ...rest] = steps;
  if (tree === null || typeof tree !== "object") return one.how === "nudge" ? nudged(tree, one) : one.to;
  if (steps.length === 0) return one.how === "nudge" ? tree : one.to;
  const last = rest.length === 0;
  if (Array.isArray(tree)) {
    const items: readonly Tree[] = tree;
    if (items.length === 0) return [one.to];
    const at = step % items.length;
    if (last && one.how === "remove") return items.filter((_, index) => index !== at);
    if (last && one.how === "double") return [...items, items[at]!];
    return items.map((item, index) => (index === at ? mutated(item, rest, one) : item));
  }
  const entries = Object.entries(tree as { readonly [key: string]: Tree });
  if (entries.length === 0) return { [one.key]: one.to };
  const at = step % entries.length;
  if (last && one.how === "remove") return Object.fromEntries(entries.filter((_, index) => index !== at));
  if (last && one.how === "double") return Object.fromEntries([...entries, [one.key, one.to]]);
  return Object.fromEntries(
    entries.map(([key, item], index): [string, Tree] => {
      if (index !== at) return [key, item];
      if (last && one.how === "rename") return [one.key, item];
      if (last && one.how === "misspell") return [misspelt(key), item];
      return [key, mutated(item, rest, one)];
    }),
  );
}

const steps = fc.array(fc.nat({ max: 20 }), { minLength: 1, maxLength: 9 });

/** Garments without a mistake: the samples, and some drawn by lot. */
function soundTrees(): fc.Arbitrary<Tree> {
  const samples = sampleTexts(".yaml").map((text) => parse(text) as Tree);
  return fc.oneof(
    { weight: 2, arbitrary: fc.constantFrom(...samples) },
    garmentArbitrary({ phases: true, mirrored: true, unfinished: true, wearers: true }).map(
      (garment) => JSON.parse(JSON.stringify(garment)) as Tree,
    ),
  );
}

/** Garments changed in so many places. */
export const changedTrees = (fewest: number, most: number): fc.Arbitrary<Tree> =>
  fc
    .tuple(soundTrees(), fc.array(fc.tuple(steps, change), { minLength: fewest, maxLength: most }))
    .map(([tree, changes]) => changes.reduce((before, [path, one]) => mutated(before, path, one), tree));

/** Garments of which only numbers are changed, so that many of them still read. */
export const nudgedTrees = (): fc.Arbitrary<Tree> =>
  fc
    .tuple(
      soundTrees(),
      fc.array(fc.tuple(steps, fc.double({ min: 0, max: 50, noNaN: true })), { minLength: 1, maxLength: 3 }),
    )
    .map(([tree, changes]) =>
      changes.reduce((before, [path, to]) => mutated(before, path, { how: "nudge", key: "", to }), tree),
    );

type Style = "json" | "block" | "flow" | "referring";

/** A tree as text, in one of the styles that a file may have. */
export const written = (tree: fc.Arbitrary<Tree>): fc.Arbitrary<string> =>
  fc.tuple(tree, fc.constantFrom<Style[]>("block", "block", "flow", "json", "referring")).map(inStyle);

function inStyle([tree, style]: readonly [Tree, Style]): string {
  if (style === "json") return JSON.stringify(tree);
  const options: DocumentOptions & ToStringOptions = {
    collectionStyle: style === "flow" ? "flow" : "any",
    lineWidth: style === "flow" ? 0 : 80,
  };
  if (style !== "referring") return stringify(tree, { ...options, aliasDuplicateObjects: false });
  // One value is written once and referred to by its name from then on.
  const shared: Tree = { allow: [1, 2, 3], prefer: 2 };
  return stringify({ ...(tree as object), first: shared, second: shared, third: [shared, shared] }, options);
}
