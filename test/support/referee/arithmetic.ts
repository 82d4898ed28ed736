/** The referee's own arithmetic: numbers, names, `+ - * / ( )`, the functions, and comparisons. */

export type Scope = Readonly<Record<string, number>>;

const functions: Readonly<Record<string, (values: readonly number[]) => number>> = {
  min: (values) => Math.min(...values),
  max: (values) => Math.max(...values),
  ceil: ([value]) => Math.ceil(value!),
  floor: ([value]) => Math.floor(value!),
  round: ([value]) => Math.round(value!),
  abs: ([value]) => Math.abs(value!),
  needle: ([place]) => (place! >= 1 ? place! : place! - 1),
  mod: ([value, divisor]) => value! - divisor! * Math.floor(value! / divisor!),
};

const comparisons: Readonly<Record<string, (left: number, right: number) => boolean>> = {
  "<=": (left, right) => left <= right,
  ">=": (left, right) => left >= right,
  "==": (left, right) => left === right,
  "!=": (left, right) => left !== right,
  "<": (left, right) => left < right,
  ">": (left, right) => left > right,
};

/** The value of a formula such as `2 * interval`, its names taken from `scope`; throws on anything else. */
export function evaluate(formula: number | string, scope: Scope): number {
  if (typeof formula === "number") return formula;
  const reader = new Reader(formula);
  const value = sum(reader, scope);
  if (reader.peek() !== undefined) throw new Error(`"${formula}" goes on after its end`);
  return value;
}

/** Whether a rule such as `spread <= interval + 2` holds; throws where there is no comparison in it. */
export function holds(rule: string, scope: Scope): boolean {
  const match = /^(.*?)(<=|>=|==|!=|<|>)(.*)$/.exec(rule);
  if (!match) throw new Error(`"${rule}" compares nothing`);
  const [, left, sign, right] = match;
  return comparisons[sign!]!(evaluate(left!, scope), evaluate(right!, scope));
}

class Reader {
  readonly #tokens: readonly string[];
  #next = 0;

  constructor(formula: string) {
    this.#tokens = formula.match(/\d+(?:\.\d+)?|[A-Za-z_]\w*|\S/g) ?? [];
  }

  peek(): string | undefined {
    return this.#tokens[this.#next];
  }

  take(): string {
    const token = this.#tokens[this.#next++];
    if (token === undefined) throw new Error("a formula ends too early");
    return token;
  }

  expect(token: string): void {
    const found = this.take();
    if (found !== token) throw new Error(`"${token}" expected, "${found}" found`);
  }
}

function sum(reader: Reader, scope: Scope): number {
  let value = product(reader, scope);
  while (reader.peek() === "+" || reader.peek() === "-") {
    const sign = reader.take() === "+" ? 1 : -1;
    value += sign * product(reader, scope);
  }
  return value;
}

function product(reader: Reader, scope: Scope): number {
  let value = factor(reader, scope);
  while (reader.peek() === "*" || reader.peek() === "/") {
    if (reader.take() === "*") value *= factor(reader, scope);
    else value /= factor(reader, scope);
  }
  return value;
}

function factor(reader: Reader, scope: Scope): number {
  const token = reader.take();
  if (token === "-") return -factor(reader, scope);
  if (token === "(") {
    const value = sum(reader, scope);
    reader.expect(")");
    return value;
  }
  if (/^\d/.test(token)) return Number(token);
  if (reader.peek() === "(" && token in functions) return call(functions[token]!, reader, scope);
  const value = scope[token];
  if (value === undefined) throw new Error(`"${token}" is not known here`);
  return value;
}

function call(apply: (values: readonly number[]) => number, reader: Reader, scope: Scope): number {
  reader.expect("(");
  const values = [sum(reader, scope)];
  while (reader.peek() === ",") {
    reader.take();
    values.push(sum(reader, scope));
  }
  reader.expect(")");
  return apply(values);
}
