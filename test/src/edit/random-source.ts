import fc from "fast-check";
import type { Path } from "../../../src/diagnostics/path.ts";
import type { EditTable, EditValue } from "../../../src/edit/edit-value.ts";

/** The text of a file in one of many styles, and what it holds. */
export interface RandomSource {
  readonly text: string;
  readonly value: EditTable;
}

const words = [
  "rib top",
  "größe",
  "é",
  "2..9",
  "-5 %",
  "20 cm",
  "crossed cord",
  "spread <= interval + 2",
  "🧶 a",
];
const awkward = [
  "",
  " a",
  "a: b",
  "#x",
  "true",
  "1.5",
  "- a",
  "a, b",
  "[x",
  "it's",
  'say "x"',
  "~",
  "*a",
  "x #y",
  "?x",
  ":x",
];

export const randomScalar: fc.Arbitrary<EditValue> = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...words) },
  { weight: 3, arbitrary: fc.constantFrom(...awkward) },
  { weight: 2, arbitrary: fc.string({ unit: "grapheme", maxLength: 12 }) },
  {
    weight: 2,
    arbitrary: fc.string({ unit: "binary", maxLength: 6 }).filter((text) => !/\p{Cs}/u.test(text)),
  },
  { weight: 5, arbitrary: fc.integer({ min: -99, max: 200 }) },
  { weight: 2, arbitrary: fc.double({ noNaN: true, noDefaultInfinity: true }) },
  { weight: 1, arbitrary: fc.boolean() },
);

const randomKey: fc.Arbitrary<string> = fc.oneof(
  {
    weight: 8,
    arbitrary: fc.constantFrom("allow", "prefer", "from", "to", "rib top", "marks", "größe", "7"),
  },
  { weight: 1, arbitrary: fc.constantFrom("a: b", "#k", "x, y", "true", "__proto__x", "") },
);

export const randomValue: fc.Arbitrary<EditValue> = fc.letrec<{ value: EditValue }>((tie) => ({
  value: fc.oneof(
    { maxDepth: 3, depthSize: "small" },
    randomScalar,
    fc.array(tie("value"), { maxLength: 3 }),
    fc.dictionary(randomKey, tie("value"), { maxKeys: 3, noNullPrototype: true }),
  ),
})).value;

/** Decisions of style, taken one after the other while the text is written. */
type Dice = (sides: number) => number;

/** A file of tables in lines and in braces, with comments, odd spacing and either kind of line break. */
export const randomSource: fc.Arbitrary<RandomSource> = fc
  .record({
    value: fc.dictionary(randomKey, randomValue, { minKeys: 1, maxKeys: 4, noNullPrototype: true }),
    rolls: fc.infiniteStream(fc.nat({ max: 1000 })),
    windows: fc.boolean(),
    finalBreak: fc.boolean(),
    step: fc.constantFrom(2, 4),
  })
  .map(({ value, rolls, windows, finalBreak, step }) => {
    const dice: Dice = (sides) => (rolls.next().value as number) % sides;
    const lines = tableLines(value, 0, step, dice);
    const breaks = windows ? "\r\n" : "\n";
    return { value, text: lines.join(breaks) + (finalBreak ? breaks : "") };
  });

function tableLines(table: EditTable, column: number, step: number, dice: Dice): readonly string[] {
  return Object.entries(table).flatMap(([key, item]) => [
    ...(dice(6) === 0 ? [`${" ".repeat(dice(2) * column)}# a comment, of its own: line`] : []),
    ...(dice(9) === 0 ? [""] : []),
    ...entryLines(`${" ".repeat(column)}${scalarText(key, true)}:`, item, column, step, dice),
  ]);
}

function entryLines(
  head: string,
  item: EditValue,
  column: number,
  step: number,
  dice: Dice,
): readonly string[] {
  const comment = dice(3) === 0 ? `   # behind, ${dice(9)}` : "";
  const isLong = typeof item === "object" && Object.keys(item).length > 0;
  if (isLong && dice(2) === 0) {
    const inner = column + step;
    const lines = Array.isArray(item)
      ? item.flatMap((one: EditValue) => entryLines(`${" ".repeat(inner)}-`, one, inner + 1, step, dice))
      : tableLines(item as EditTable, inner, step, dice);
    return [`${head}${comment}`, ...lines];
  }
  if (isLong && dice(3) === 0) return braceLines(head, item, column + step, dice, comment);
  return [`${head}${" ".repeat(1 + dice(3))}${flowText(item, dice)}${comment}`];
}

function braceLines(
  head: string,
  item: object,
  column: number,
  dice: Dice,
  comment: string,
): readonly string[] {
  const isArray = Array.isArray(item);
  const entries = Object.entries(item as EditTable);
  const last = dice(2) === 0 ? "," : "";
  const lines = entries.map(([key, one], index) => {
    const name = isArray ? "" : `${scalarText(key, false)}: `;
    const comma = index === entries.length - 1 ? last : ",";
    return `${" ".repeat(column)}${name}${flowText(one, dice)}${comma}${dice(3) === 0 ? " # one, two" : ""}`;
  });
  return [
    `${head} ${isArray ? "[" : "{"}`,
    ...lines,
    `${" ".repeat(column)}${isArray ? "]" : "}"}${comment}`,
  ];
}

function flowText(item: EditValue, dice: Dice): string {
  const pad = " ".repeat(dice(2));
  const wide = `,${" ".repeat(1 + dice(2))}`;
  if (Array.isArray(item))
    return item.length === 0
      ? `[${pad}]`
      : `[${item.map((one: EditValue) => flowText(one, dice)).join(wide)}]`;
  if (typeof item === "object") {
    const entries = Object.entries(item as EditTable).map(
      ([key, one]) => `${scalarText(key, false)}: ${flowText(one, dice)}`,
    );
    return entries.length === 0 ? `{${pad}}` : `{${pad}${entries.join(wide)}${pad}}`;
  }
  return dice(8) === 0 && typeof item === "string" ? JSON.stringify(item) : scalarText(item, false);
}

/** Written without quotes only where that is beyond doubt. */
function scalarText(value: EditValue, isBlockKey: boolean): string {
  if (typeof value !== "string") return Object.is(value, -0) ? "-0" : String(value);
  const isSafe = /^[a-zé][a-zéöß ]*[a-zéöß]$/.test(value) || /^\d+\.\.\d+$|^-?\d+ (?:%|cm)$/.test(value);
  return isSafe && !(isBlockKey && value.startsWith("-")) && value !== "true" ? value : JSON.stringify(value);
}

/** Every path into a value, those of its tables and lists included. */
export function pathsIn(value: EditValue, path: Path = []): readonly Path[] {
  if (typeof value !== "object") return [path];
  const entries: readonly (readonly [string | number, EditValue])[] = Array.isArray(value)
    ? value.map((item: EditValue, index) => [index, item] as const)
    : Object.entries(value as EditTable);
  return [path, ...entries.flatMap(([key, item]) => pathsIn(item, [...path, key]))];
}

/** The value with another in the place of one of its parts; undefined takes the part out. */
export function withPart(value: EditValue, path: Path, part: EditValue | undefined): EditValue {
  const [step, ...rest] = path;
  if (step === undefined) return part!;
  const inner = (value as Record<string | number, EditValue>)[step];
  const next = rest.length === 0 ? part : withPart(inner ?? {}, rest, part);
  if (Array.isArray(value)) {
    const items: EditValue[] = [...value];
    if (next === undefined) items.splice(Number(step), 1);
    else items[Number(step)] = next;
    return items;
  }
  const entries = Object.entries(value as EditTable).filter(([key]) => key !== step);
  return Object.fromEntries(next === undefined ? entries : [...entries, [step, next]]);
}
