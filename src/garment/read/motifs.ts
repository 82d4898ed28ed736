import { nearest } from "../../diagnostics/nearest.ts";
import { quoted } from "../../diagnostics/shown.ts";
import { BUILT_IN_MOTIFS } from "../../motif/builtin/index.ts";
import type { Motif } from "../../motif/motif.ts";
import { writtenFrom } from "../source/written.ts";
import { cableParts } from "./cable-motif.ts";
import { cordParts } from "./cord-motif.ts";
import {
  type Cursor,
  listAt,
  nameAt,
  type Reading,
  report,
  type Table,
  tableAt,
  unknownKey,
  wordAt,
} from "./cursor.ts";
import { expressionAt, ruleAt } from "./expressions.ts";
import { quantitiesAt } from "./quantities.ts";

/** Keys of every motif, of a cord and of a cable. */
const commonKeys = ["like", "kind", "quantities", "lead", "repeat", "rules"];
const cordKeys = ["strands", "folded", "order", "ease", "reserve"];
const cableKeys = ["cross", "over", "crossings", "draw-in", "limits"];

const example = "like: crossed cord, or a motif written out in full";

/** A value of a motif: as the knitter wrote it, or as the built-in motif has it. */
export type Part = (key: string) => Cursor | undefined;

/** What the parts of a motif of either kind are read with. */
export interface MotifReading {
  readonly reading: Reading;
  readonly name: string;
  readonly part: Part;
  /** The same; a missing key is a mistake. */
  readonly need: (key: string, expected: string) => Cursor | undefined;
  readonly quantities: ReadonlySet<string>;
}

/** Reads one motif of the file, filling in from the built-in one that it is like. */
export function motifAt(reading: Reading, cursor: Cursor, name: string): Motif | undefined {
  const own = tableAt(reading, cursor, `the motif ${name}`, undefined, example);
  if (!own) return undefined;
  const likeCursor = own.at("like");
  const like = likeCursor && likeOf(reading, likeCursor);
  if (likeCursor && like === undefined) return undefined;
  const base = like === undefined ? undefined : builtIn(reading, cursor, like);
  return completed(reading, own, name, base, like);
}

/** A motif that comes with the program, as it is. */
export function builtInMotif(name: string): Motif {
  const reading: Reading = { diagnostics: [] };
  const cursor: Cursor = { written: writtenFrom(BUILT_IN_MOTIFS.get(name)!), path: ["motifs", name] };
  const table = tableAt(reading, cursor, name, undefined, example)!;
  const motif = completed(reading, table, name, undefined, undefined);
  if (!motif) throw new Error(`the built-in motif ${name} does not read: ${reading.diagnostics[0]?.message}`);
  return motif;
}

function likeOf(reading: Reading, cursor: Cursor): string | undefined {
  const name = nameAt(reading, cursor, "like");
  if (name === undefined || BUILT_IN_MOTIFS.has(name)) return name;
  const near = nearest(name, BUILT_IN_MOTIFS.keys());
  return report(reading, cursor, {
    code: "unknown-motif",
    message: `no motif ${quoted(name)} comes with the program`,
    expected: near ?? [...BUILT_IN_MOTIFS.keys()].join(" or "),
  });
}

const builtIn = (reading: Reading, { path }: Cursor, name: string): Table =>
  tableAt(reading, { written: writtenFrom(BUILT_IN_MOTIFS.get(name)!), path }, name, undefined, example)!;

function completed(
  reading: Reading,
  own: Table,
  name: string,
  base: Table | undefined,
  like: string | undefined,
): Motif | undefined {
  const part: Part = (key) => own.at(key) ?? base?.at(key);
  const need = (key: string, expected: string): Cursor | undefined => part(key) ?? own.need(key, expected);
  const kindCursor = need("kind", "cord or cable, or like: and the name of a built-in motif");
  const kind = kindCursor && wordAt(reading, kindCursor, "the kind of a motif", ["cord", "cable"]);
  if (kind === undefined) return undefined;
  const { quantities, shorthands } = quantitiesAt(reading, own, base);
  refuseUnknownKeys(
    reading,
    own,
    name,
    [...commonKeys, ...(kind === "cord" ? cordKeys : cableKeys)],
    shorthands,
  );
  const names = new Set(quantities.map((quantity) => quantity.name));
  const leadCursor = need("lead", "rows worked once before the first repeat, such as lead: interval");
  const repeatCursor = need("repeat", "rows of one repeat, such as repeat: 2 * interval");
  const lead = leadCursor && expressionAt(reading, leadCursor, "the lead-in's rows", names);
  const repeat = repeatCursor && expressionAt(reading, repeatCursor, "a repeat's rows", names);
  const rulesCursor = part("rules");
  const ruleCursors = rulesCursor
    ? (listAt(reading, rulesCursor, "rules", '[ "spread <= interval + 2" ]') ?? [])
    : [];
  const rules = ruleCursors.map((rule) => ruleAt(reading, rule, names)).filter((rule) => rule !== undefined);
  const parts = { reading, name, part, need, quantities: names };
  const ofKind = kind === "cord" ? cordParts(parts) : cableParts(parts);
  if (!lead || !repeat || !ofKind) return undefined;
  return {
    name,
    path: own.cursor.path,
    ...(like !== undefined && { like }),
    quantities,
    lead,
    repeat,
    rules,
    ...ofKind,
  };
}

function refuseUnknownKeys(
  reading: Reading,
  own: Table,
  name: string,
  known: readonly string[],
  shorthands: readonly string[],
): void {
  const { written } = own.cursor;
  if (written.kind !== "table") return;
  for (const [key, entry] of written.entries)
    if (!known.includes(key) && !shorthands.includes(key))
      unknownKey(reading, own.cursor, key, entry, `the motif ${name}`, [...known, ...shorthands]);
}
