import { nearest } from "../../diagnostics/nearest.ts";
import { quoted } from "../../diagnostics/shown.ts";
import { BUILT_IN_MOTIFS } from "../../motif/builtin/index.ts";
import type { Motif } from "../../motif/motif.ts";
import { keysOf } from "../keys.ts";
import { writtenFrom } from "../source/written.ts";
import { bandParts } from "./band-motif.ts";
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
import { constant, expressionAt, ruleAt } from "./expressions.ts";
import type { Part } from "./motif-reading.ts";
import { quantitiesAt } from "./quantities.ts";

const example = "like: crossed cord, or a motif written out in full";

/** Reads one motif of the file, filling in from the built-in one that it is like. */
export function motifAt(reading: Reading, cursor: Cursor, name: string): Motif | undefined {
  const own = tableAt(reading, cursor, `the motif ${name}`, undefined, example);
  if (!own) return undefined;
  const likeCursor = own.at("like");
  if (!likeCursor) return completed(reading, own, name, undefined, undefined);
  const like = likeOf(reading, likeCursor);
  if (like === undefined) return undefined;
  return completed(reading, own, name, builtIn(reading, cursor, like), like);
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
  report(reading, cursor, {
    code: "unknown-motif",
    message: `no motif ${quoted(name)} comes with the program`,
    expected: near ?? `one of ${[...BUILT_IN_MOTIFS.keys()].join(", ")}`,
  });
  // Where it is plain what was meant, the rest is read as if it had been written.
  return near;
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
  // Another kind than the built-in motif's has been refused, so that the rest is read by the latter.
  const part: Part = (key) => (base && key === "kind" ? base.at(key) : (own.at(key) ?? base?.at(key)));
  const need = (key: string, expected: string): Cursor | undefined => part(key) ?? own.need(key, expected);
  checkSameKind(reading, own, base);
  const kindCursor = need("kind", "cord, cable or band, or like: and the name of a built-in motif");
  const kind = kindCursor && wordAt(reading, kindCursor, "the kind of a motif", ["cord", "cable", "band"]);
  if (kind === undefined) return undefined;
  const { quantities, shorthands } = quantitiesAt(reading, own, base, kind);
  refuseUnknownKeys(reading, own, name, [...keysOf("motif"), ...keysOf(kind)], shorthands);
  // Also those that could not be read: their names are there, and only their values are wrong.
  const names = new Set(shorthands);
  const leadCursor =
    kind === "band"
      ? part("lead")
      : need(
          "lead",
          "rows worked once before the first repeat, such as lead: interval; lead: 0 where there is none",
        );
  const repeatCursor = need("repeat", "rows of one repeat, such as repeat: 2 * interval");
  const lead = leadCursor
    ? expressionAt(reading, leadCursor, "the lead-in's rows", names)
    : kind === "band" && constant(0, [...own.cursor.path, "lead"]);
  const repeat = repeatCursor && expressionAt(reading, repeatCursor, "a repeat's rows", names);
  const rulesCursor = part("rules");
  const ruleCursors = rulesCursor
    ? (listAt(reading, rulesCursor, "rules", '[ "spread <= interval + 2" ]') ?? [])
    : [];
  const rules = ruleCursors.map((rule) => ruleAt(reading, rule, names)).filter((rule) => rule !== undefined);
  const ofKind = readers[kind]({ reading, name, own, part, need, quantities: names });
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

const readers = { cord: cordParts, cable: cableParts, band: bandParts };

function checkSameKind(reading: Reading, own: Table, base: Table | undefined): void {
  const [mine, theirs] = [own.at("kind"), base?.at("kind")];
  if (!mine || theirs?.written.kind !== "text") return;
  if (mine.written.kind === "text" && mine.written.text === theirs.written.text) return;
  report(reading, mine, {
    code: "different-kind",
    message: `a motif like this one is a ${theirs.written.text}`,
    expected: `${theirs.written.text}, or no kind at all`,
  });
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
