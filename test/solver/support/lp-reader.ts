/** A linear program as an LP text states it, by the names in the text. */
export interface LpModel {
  readonly minimise: boolean;
  readonly objective: readonly LpTerm[];
  readonly rows: readonly LpRow[];
  readonly bounds: ReadonlyMap<string, { readonly low: number; readonly high: number }>;
  readonly binaries: ReadonlySet<string>;
  readonly generals: ReadonlySet<string>;
}

interface LpTerm {
  readonly name: string;
  readonly coefficient: number;
}

interface LpRow {
  readonly name: string;
  readonly terms: readonly LpTerm[];
  readonly relation: "<=" | "=" | ">=";
  readonly bound: number;
}

const NUMBER = /^(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/;
/** Characters of a name by the description of the format in the CPLEX manual; no number and no dot opens one. */
const NAME = /^[A-Za-z!"#$%&(),;?@_'`{}~][A-Za-z0-9!"#$%&(),;?@_'`{}~.]*/;
const SECTIONS: readonly (readonly [RegExp, string])[] = [
  [/^minimi[sz]e$|^min$/i, "objective"],
  [/^maximi[sz]e$|^max$/i, "maximise"],
  [/^subject to$|^such that$|^s\.?t\.?$/i, "rows"],
  [/^bounds?$/i, "bounds"],
  [/^bin(?:ary|aries)?$/i, "binaries"],
  [/^gen(?:erals?)?$|^integers?$/i, "generals"],
  [/^end$/i, "end"],
];

/**
 * Reads a text in the CPLEX LP format, strictly: it refuses long lines, names that are not legal or stand twice,
 * a column that a row mentions twice, and anything after the end. Written from the format's description, apart
 * from the writer, so that the two can be held against each other.
 */
export function readLp(text: string): LpModel {
  const sections = new Map<string, string[]>();
  let current: string[] | undefined;
  for (const whole of text.split("\n")) {
    if (whole.length > 255) throw new Error(`a line of ${whole.length} characters`);
    const line = whole.replace(/\\.*$/, "").trim();
    if (line === "") continue;
    if (sections.has("end")) throw new Error(`text after the end: ${line}`);
    const section = SECTIONS.find(([title]) => title.test(line))?.[1];
    if (section === undefined) {
      if (current === undefined) throw new Error(`text before the objective: ${line}`);
      current.push(line);
    } else {
      if (sections.has(section)) throw new Error(`the section ${section} twice`);
      current = [];
      sections.set(section, current);
    }
  }
  if (!sections.has("end")) throw new Error("no end");
  const read = (name: string) => tokens((sections.get(name) ?? []).join(" "));

  const minimise = sections.has("objective");
  const stated = statements(read(minimise ? "objective" : "maximise"));
  if (stated.length !== 1) throw new Error(`${stated.length} objectives`);
  const rows = statements(read("rows")).map(rowOf);
  const names = [stated[0]!.name, ...rows.map(({ name }) => name)];
  if (new Set(names).size !== names.length) throw new Error("a row's name twice");
  return {
    minimise,
    objective: termsOf(stated[0]!.tokens),
    rows,
    bounds: boundsOf(sections.get("bounds") ?? []),
    binaries: new Set(read("binaries").map(nameOf)),
    generals: new Set(read("generals").map(nameOf)),
  };
}

type Token =
  | { readonly kind: "number"; readonly value: number }
  | { readonly kind: "name" | "sign" | "relation" | "colon"; readonly text: string };

function tokens(text: string): Token[] {
  const found: Token[] = [];
  for (let rest = text.trim(); rest !== ""; rest = rest.trim()) {
    const number = NUMBER.exec(rest)?.[0];
    const name = NAME.exec(rest)?.[0];
    const relation = /^(?:<=|=<|>=|=>|<|>|=)/.exec(rest)?.[0];
    const taken = number ?? name ?? relation ?? rest[0]!;
    if (number !== undefined) found.push({ kind: "number", value: Number(number) });
    else if (name !== undefined) {
      if (/^e(?:$|[\d.])/i.test(name)) throw new Error(`the name ${name} reads like an exponent`);
      found.push({ kind: "name", text: name });
    } else if (relation !== undefined) found.push({ kind: "relation", text: relation });
    else if (taken === ":") found.push({ kind: "colon", text: taken });
    else if (taken === "+" || taken === "-") found.push({ kind: "sign", text: taken });
    else throw new Error(`cannot read from here: ${rest.slice(0, 30)}`);
    rest = rest.slice(taken.length);
  }
  return found;
}

interface Statement {
  readonly name: string;
  readonly tokens: readonly Token[];
}

function statements(all: readonly Token[]): Statement[] {
  const starts = all.flatMap(({ kind }, index) => (kind === "colon" ? [index - 1] : []));
  if (all.length > 0 && starts[0] !== 0) throw new Error("a statement without a name");
  return starts.map((start, index) => ({
    name: nameOf(all[start]!),
    tokens: all.slice(start + 2, starts[index + 1] ?? all.length),
  }));
}

function rowOf({ name, tokens: all }: Statement): LpRow {
  const at = all.findIndex(({ kind }) => kind === "relation");
  const relation = all[at];
  if (relation === undefined || relation.kind === "number") throw new Error(`row ${name} has no relation`);
  const text = relation.text;
  return {
    name,
    terms: termsOf(all.slice(0, at)),
    relation: text.includes("<") ? "<=" : text.includes(">") ? ">=" : "=",
    bound: numberOf(all.slice(at + 1)),
  };
}

function termsOf(all: readonly Token[]): LpTerm[] {
  const terms: LpTerm[] = [];
  let sign = 1;
  let size = 1;
  for (const token of all) {
    if (token.kind === "sign") sign = token.text === "-" ? -sign : sign;
    else if (token.kind === "number") size = token.value;
    else {
      terms.push({ name: nameOf(token), coefficient: sign * size });
      sign = 1;
      size = 1;
    }
  }
  if (new Set(terms.map(({ name }) => name)).size !== terms.length)
    throw new Error("a column twice in a row");
  return terms;
}

function boundsOf(lines: readonly string[]): LpModel["bounds"] {
  const bounds = new Map<string, { low: number; high: number }>();
  for (const line of lines) {
    const all = tokens(line);
    const at = all.findIndex(({ kind }) => kind === "relation");
    const relation = all[at];
    if (at !== 1 || relation?.kind !== "relation") throw new Error(`cannot read the bound ${line}`);
    const value = numberOf(all.slice(2));
    const known = bounds.get(nameOf(all[0]!)) ?? { low: 0, high: Infinity };
    if (relation.text === "<=") known.high = value;
    else if (relation.text === ">=") known.low = value;
    else Object.assign(known, { low: value, high: value });
    bounds.set(nameOf(all[0]!), known);
  }
  return bounds;
}

function numberOf(all: readonly Token[]): number {
  const [sign, number] = all.length === 2 ? all : [undefined, all[0]];
  if (number?.kind !== "number" || (sign !== undefined && sign.kind !== "sign") || all.length > 2)
    throw new Error("a number was expected");
  return sign?.kind === "sign" && sign.text === "-" ? -number.value : number.value;
}

function nameOf(token: Token): string {
  if (token.kind !== "name") throw new Error("a name was expected");
  return token.text;
}
