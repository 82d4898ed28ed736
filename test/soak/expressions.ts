import fc from "fast-check";
import { evaluateTree } from "../../src/arithmetic/evaluate-tree.ts";
import { parseArithmetic } from "../../src/arithmetic/parse-arithmetic.ts";
import type { ExpressionNode } from "../../src/arithmetic/tree.ts";
import { edgeNumbers } from "./inputs/trees.ts";
import { must, type Target, targetOf } from "./target.ts";

const values: Readonly<Record<string, number>> = { interval: 4, spread: 3, constructor: 2, __proto___: 1 };
const names = new Set(Object.keys(values));

/**
 * Known ways out of expression evaluators and sandboxes of JavaScript: the constructor of a function, prototypes, getters,
 * template strings, escapes in names, and functions of mathjs that make or run code.
 */
export const escapes: readonly string[] = [
  ...[
    "constructor.constructor('return process')()",
    "interval.constructor",
    "spread['constructor']",
    "spread.__proto__",
  ],
  ...[
    "cos.constructor('return process')()",
    "(1).constructor",
    "''.constructor",
    "[].constructor",
    "{}.constructor",
  ],
  ...[
    "[].map.constructor('return this')()",
    "f.constructor('return process.env')()",
    "this",
    "globalThis",
    "process",
  ],
  ...[
    "require('fs')",
    "import('fs')",
    "import fs",
    'import({ a: 1 }, { wrap: "" })',
    "eval('1')",
    "Function('1')()",
  ],
  ...[
    "new Function('1')",
    "async()",
    "await 1",
    "()=>1",
    "function(){}",
    "class A{}",
    "x=>x",
    "arguments",
    "void 0",
  ],
  ...[
    "`1`",
    "`$" + "{1}`",
    "interval`1`",
    "\\u0063onstructor",
    "\\x63onstructor",
    "co\\u006estructor",
    "𝐜onstructor",
    "const\u200bructor",
  ],
  ...[
    "createUnit('a')",
    "unit('5 cm')",
    "evaluate('1')",
    "parse('1')",
    "compile('1')",
    "parser()",
    "simplify('1')",
  ],
  ...[
    "derivative('x', 'x')",
    "rationalize('x')",
    "resolve('x')",
    "chain(1)",
    "typed('a')",
    "config({})",
    "reviver('a', 1)",
  ],
  ...[
    "replacer(1)",
    "help('sin')",
    "print('a', 1)",
    "format(1)",
    "string(1)",
    "matrix([1])",
    "ones(1e4, 1e4)",
    "zeros(9,9)",
  ],
  ...[
    "range(1, 1e9)",
    "1:1e9",
    "combinations(1e9, 2)",
    "factorial(170)",
    "170!",
    "2^9999999",
    "pow(9, 9e9)",
    "gamma(1e9)",
  ],
  ...[
    "map([1], f(x) = x)",
    "filter([1], x)",
    "forEach([1], x)",
    "apply(1)",
    "f(x) = x",
    "x = 1",
    "spread = 5; spread",
  ],
  ...[
    "a.b.c",
    "a['b']",
    "{a: 1}.a",
    "{get a(){return 1}}",
    "{['__proto__']: 1}",
    "Object.assign(a)",
    "__defineGetter__('a', 1)",
  ],
  ...[
    "__lookupGetter__('a')",
    "valueOf()",
    "toString()",
    "hasOwnProperty('a')",
    "isPrototypeOf(1)",
    "bind(1)",
    "call(1)",
  ],
  ...[
    "1; process.exit()",
    "1\nprocess.exit()",
    "1 // comment",
    "1 /* c */",
    "1 # comment",
    "1, 2",
    "end",
    "i",
    "e",
    "pi",
    "tau",
  ],
  ...[
    "true",
    "null",
    "undefined",
    "NaN",
    "Infinity",
    "-Infinity",
    "version",
    "random()",
    "randomInt(5)",
    "1 to 2",
    "2 in cm",
  ],
  ...[
    "not 1",
    "1 and 1",
    "1 xor 1",
    "1 ? 2 : 3",
    "1 == 1",
    "1 | 2",
    "~1",
    "1 << 2",
    "1 >> 2",
    "1 >>> 2",
    "1 % 2",
    "5'",
    "'",
  ],
  ...[
    "\u0000",
    "\ufeff1",
    "1\u2028+1",
    "\u00d7",
    "2 \u00d7 3",
    "١+٢",
    "1e999",
    "0x1F",
    "0b11",
    "0o17",
    "1_000",
    "1n",
  ],
];

/** What sums are made of, and what looks like it. */
const morsels = fc.oneof(
  { weight: 5, arbitrary: fc.constantFrom("1", "2", "3.5", ".5", "0", "10", "interval", "spread") },
  { weight: 4, arbitrary: fc.constantFrom("+", "-", "*", "/", "(", ")", ",", " ") },
  {
    weight: 2,
    arbitrary: fc.constantFrom("min(", "max(", "abs(", "floor(", "ceil(", "round(", "mod(", "needle("),
  },
  fc.constantFrom(...edgeNumbers),
  fc.constantFrom(...escapes),
  fc.string({ unit: "binary", maxLength: 3 }),
);

const sums = (): fc.Arbitrary<string> =>
  fc.oneof(
    {
      weight: 4,
      arbitrary: fc.array(morsels, { minLength: 1, maxLength: 14 }).map((parts) => parts.join("")),
    },
    { weight: 5, arbitrary: soundSums },
    fc.constantFrom(...escapes),
    fc.tuple(soundSums, fc.constantFrom(...escapes)).map(([sum, way]) => `${sum} + ${way}`),
    fc.string({ unit: "binary", maxLength: 250 }),
    fc.integer({ min: 1, max: 250 }).map((depth) => `${"(".repeat(depth)}1${")".repeat(depth)}`),
    fc.integer({ min: 1, max: 250 }).map((count) => `${"-".repeat(count)}1`),
  );

const { sum: soundSums } = fc.letrec<{ sum: string; leaf: string }>((tie) => ({
  leaf: fc.oneof(
    fc.constantFrom("interval", "spread", "0", "1", "2", "7", "0.5", "12.25"),
    fc.integer({ min: 0, max: 9999 }).map(String),
  ),
  sum: fc.oneof(
    { maxDepth: 4 },
    tie("leaf"),
    fc
      .tuple(tie("sum"), fc.constantFrom("+", "-", "*", "/", " - ", " / "), tie("sum"))
      .map((parts) => parts.join("")),
    tie("sum").map((inner) => `(${inner})`),
    tie("sum").map((inner) => `-${inner}`),
    fc.tuple(fc.constantFrom("abs", "floor", "ceil"), tie("sum")).map(([name, inner]) => `${name}(${inner})`),
    fc
      .tuple(fc.constantFrom("min", "max"), tie("sum"), tie("sum"))
      .map(([name, a, b]) => `${name}(${a}, ${b})`),
  ),
}));

/**
 * Nothing but sums is taken. What is taken holds only the characters of sums, so JavaScript itself can be the referee of
 * what it comes to.
 */
export const expressions: Target = targetOf({
  name: "expressions",
  usual: 100_000,
  inputs: sums,
  attempt: async () => {
    const before = Object.getOwnPropertyNames(globalThis).sort().join();
    return (text) => {
      const parsed = parseArithmetic(text, names);
      must(
        Object.getOwnPropertyNames(globalThis).sort().join() === before,
        "something was put into the program",
      );
      must(Object.keys(Object.prototype).length === 0, "every object was given something");
      if ("problem" in parsed) {
        const { offset, message } = parsed.problem;
        must(
          offset >= 0 && offset <= text.length && message !== "",
          `no place for ${JSON.stringify(parsed.problem)}`,
        );
        return "refused";
      }
      must(/^[\w\s.,+\-*/()]*$/.test(text), "more than arithmetic was taken");
      mustBePlain(parsed.tree);
      const result = evaluateTree(parsed.tree, values);
      if (typeof result !== "number") {
        must(result.problem !== "", "no reason why there is no number");
        return "accepted";
      }
      must(Number.isFinite(result) && !Object.is(result, -0), `the sum came out as ${result}`);
      const referee = byJavaScript(text);
      if (referee !== undefined)
        must(
          Math.abs(referee - result) <= 1e-9 * Math.max(1, Math.abs(result)),
          `${result}, and by JavaScript ${referee}`,
        );
      return "accepted";
    };
  },
});

const kinds: readonly string[] = ["number", "quantity", "negate", "binary", "call"];

function mustBePlain(tree: ExpressionNode): void {
  must(
    kinds.includes(tree.kind) && Object.getPrototypeOf(tree) === Object.prototype,
    `no plain tree: ${tree.kind}`,
  );
  if (tree.kind === "negate") mustBePlain(tree.of);
  if (tree.kind === "binary") for (const side of [tree.left, tree.right]) mustBePlain(side);
  if (tree.kind === "call") tree.args.forEach(mustBePlain);
}

/** Undefined for a sum with a function that JavaScript has not, or rounds otherwise where a sum is nearly whole. */
function byJavaScript(text: string): number | undefined {
  if (/\b(?:round|mod|needle|floor|ceil)\b/.test(text)) return undefined;
  // Leading zeros would make a number octal, and two signs in a row one operator.
  const plain = text.replaceAll(/(?<![\d.])0+(?=\d)/g, "").replaceAll(/[-+]/g, " $& ");
  const body = `"use strict"; const { min, max, abs } = Math; return (${plain});`;
  return Number(new Function("interval", "spread", "constructor", "__proto___", body)(4, 3, 2, 1));
}
