import { quoted } from "../diagnostics/shown.ts";
import { ARITHMETIC, type ArithmeticCode, type ArithmeticProblem } from "./problem.ts";
import type { Token } from "./tokens.ts";
import { FUNCTIONS, isFunctionName } from "./tree.ts";

/** Brackets inside one another; keeps every later walk of the tree shallow. */
const DEEPEST_EXPRESSION = 40;

/**
 * Looks for what is wrong with a row of tokens, so that it can be said with its place: the parser that comes after
 * keeps no positions, and would multiply unasked where a sign is missing ("2 spread").
 *
 * @param names the quantities that may be used
 */
export function checkTokens(
  tokens: readonly Token[],
  names: ReadonlySet<string>,
): ArithmeticProblem | undefined {
  const brackets: Bracket[] = [];
  for (const [index, token] of tokens.entries()) {
    const before = tokens[index - 1];
    const after = tokens[index + 1];
    const problem =
      checkName(token, after, names) ?? checkOrder(token, before) ?? checkBracket(token, before, brackets);
    if (problem) return problem;
  }
  const last = tokens.at(-1);
  if (last?.kind === "operator" || last?.kind === "comma") {
    return notArithmetic(last, `nothing follows ${quoted(last.text)}`, ARITHMETIC);
  }
  const open = brackets.at(-1);
  return open && notArithmetic(open.token, "this bracket is never closed", "a matching )");
}

function checkName(
  token: Token,
  after: Token | undefined,
  names: ReadonlySet<string>,
): ArithmeticProblem | undefined {
  if (token.kind !== "name" || names.has(token.text)) return undefined;
  if (isFunctionName(token.text)) {
    if (after?.kind === "open") return undefined;
    return notArithmetic(token, `${token.text} needs its values in brackets`, callForm(token.text));
  }
  return problemAt(
    "expression-unknown-name",
    token,
    `there is no quantity or function called ${quoted(token.text)} here`,
    names.size > 0 ? [...names].join(", ") : "numbers only",
  );
}

function checkOrder(token: Token, before: Token | undefined): ArithmeticProblem | undefined {
  const endsValue = before?.kind === "number" || before?.kind === "name" || before?.kind === "close";
  const beginsValue = token.kind === "number" || token.kind === "name" || token.kind === "open";
  if (endsValue && beginsValue) {
    if (token.kind === "open" && before.kind === "name" && isFunctionName(before.text)) return undefined;
    return notArithmetic(
      token,
      `something is missing between ${quoted(before.text)} and ${quoted(token.text)}`,
      "one of + - * / between them",
    );
  }
  if (endsValue || beginsValue) return undefined;
  // A sign needs no value before it.
  if (token.text === "-" || token.text === "+") return undefined;
  if (token.kind === "close" && before?.kind === "open") {
    return notArithmetic(token, "there is nothing in these brackets", ARITHMETIC);
  }
  return notArithmetic(token, `a number or a quantity is missing before ${quoted(token.text)}`, ARITHMETIC);
}

interface Bracket {
  readonly token: Token;
  /** The function whose values stand in the bracket; a plain bracket has none. */
  readonly call?: Token;
  values: number;
}

function checkBracket(
  token: Token,
  before: Token | undefined,
  brackets: Bracket[],
): ArithmeticProblem | undefined {
  const inside = brackets.at(-1);
  if (token.kind === "open") {
    if (brackets.length >= DEEPEST_EXPRESSION) {
      return problemAt(
        "expression-too-deep",
        token,
        "the brackets go too deep",
        `at most ${DEEPEST_EXPRESSION} levels`,
      );
    }
    brackets.push({ token, ...(before?.kind === "name" ? { call: before } : {}), values: 1 });
  }
  if (token.kind === "comma") {
    if (!inside?.call) {
      return notArithmetic(
        token,
        "a comma only stands between the values of a function",
        "a point for decimals, such as 1.5",
      );
    }
    inside.values += 1;
  }
  if (token.kind === "close") {
    if (!inside) return notArithmetic(token, "this bracket was never opened", "a matching (");
    brackets.pop();
    return inside.call && checkCount(inside.call, inside.values);
  }
  return undefined;
}

function checkCount(call: Token, values: number): ArithmeticProblem | undefined {
  if (!isFunctionName(call.text)) return undefined;
  const { least, most } = FUNCTIONS[call.text];
  if (values >= least && values <= most) return undefined;
  const takes = `${call.text} takes ${least} value${least === 1 ? "" : "s"}`;
  return problemAt(
    "expression-wrong-count",
    call,
    `${takes}, and here it has ${values}`,
    callForm(call.text),
  );
}

const callForm = (name: string): string =>
  name === "mod" || name === "min" || name === "max" ? `${name}(a, b)` : `${name}(a)`;

const notArithmetic = (token: Token, message: string, expected: string): ArithmeticProblem =>
  problemAt("expression-not-arithmetic", token, message, expected);

function problemAt(code: ArithmeticCode, token: Token, message: string, expected: string): ArithmeticProblem {
  return { code, offset: token.offset, found: token.text, message, expected };
}
