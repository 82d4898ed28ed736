import { quoted } from "../diagnostics/shown.ts";
import { ARITHMETIC, type ArithmeticProblem } from "./problem.ts";

/** One word or sign of an expression; `offset` counts characters from the start of the text. */
export interface Token {
  readonly kind: "number" | "name" | "operator" | "open" | "close" | "comma";
  readonly text: string;
  readonly offset: number;
}

const TOKEN =
  /(?<number>\d+(?:\.\d+)?|\.\d+)|(?<name>[A-Za-z_]\w*)|(?<operator>[-+*/])|(?<open>\()|(?<close>\))|(?<comma>,)|[ \t]+/y;

/** Numbers that are not written out in plain digits: 1e3, 0x1F. */
const CODED_NUMBER = /(?:\d(?:\.\d+)?e[-+]?\d+|0[xob][0-9a-f]+)(?!\w)/iy;

/** Cuts a text into the words and signs that arithmetic has, or says which character is none of them. */
export function tokenize(text: string): readonly Token[] | ArithmeticProblem {
  const tokens: Token[] = [];
  let offset = 0;
  while (offset < text.length) {
    CODED_NUMBER.lastIndex = offset;
    const coded = CODED_NUMBER.exec(text)?.[0];
    if (coded !== undefined) {
      return {
        code: "expression-not-arithmetic",
        offset,
        found: coded,
        message: `${quoted(coded)} is not written in plain digits`,
        expected: "a number such as 12 or 1.5",
      };
    }
    TOKEN.lastIndex = offset;
    const match = TOKEN.exec(text);
    if (!match) {
      const found = String.fromCodePoint(text.codePointAt(offset) ?? 0);
      return {
        code: "expression-not-arithmetic",
        offset,
        found,
        message: `${quoted(found)} is not part of a sum`,
        expected: ARITHMETIC,
      };
    }
    const kind = Object.entries(match.groups ?? {}).find(([, value]) => value !== undefined)?.[0];
    if (kind) tokens.push({ kind: kind as Token["kind"], text: match[0], offset });
    offset += match[0].length;
  }
  return tokens;
}
