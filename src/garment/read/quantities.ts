import { NAME_PATTERN, RESERVED_WORDS } from "../../arithmetic/tree.ts";
import type { Motif, Quantity } from "../../motif/motif.ts";
import type { Preference } from "../allowed.ts";
import { keysOf } from "../keys.ts";
import { TERMS } from "../weights.ts";
import { preferenceAt } from "./allowed.ts";
import { type Cursor, flagAt, type Reading, report, type Table, tableAt, wordAt } from "./cursor.ts";
import * as limits from "./limits.ts";
import { wholeAt } from "./numbers.ts";

const units = ["rows", "needles", "stitches", "strands"] as const;
const example = "interval: { unit: rows, allow: 2..12, prefer: 4 }";

/**
 * The quantities of a motif: those of the built-in one it is like, each overridden by what the knitter wrote under
 * its name or under `quantities`, and those that the knitter adds. An override that says what is allowed speaks for
 * the preference as well: none is carried over to values it was not meant for.
 *
 * @returns the quantities, and the names under which they may be written straight into the motif
 */
export function quantitiesAt(
  reading: Reading,
  own: Table,
  base: Table | undefined,
  kind: Motif["kind"],
): { readonly quantities: readonly Quantity[]; readonly shorthands: readonly string[] } {
  const based = tableOf(reading, base?.at("quantities"));
  const added = tableOf(reading, own.at("quantities"));
  const shorthands = [...new Set([...(based?.keys() ?? []), ...(added?.keys() ?? [])])];
  const quantities = shorthands.flatMap((name): Quantity[] => {
    const before = based?.at(name);
    const beside = own.at(name);
    const now = beside ?? added?.at(name);
    if (beside && added?.at(name))
      report(reading, beside, {
        code: "conflicting-keys",
        message: `${name} is written twice, in the motif and under quantities`,
        expected: "one of the two",
        ...(beside.keyPlace && { place: beside.keyPlace }),
      });
    const quantity = quantityAt(reading, name, now, before, kind);
    return quantity ? [quantity] : [];
  });
  const [changing, second] = quantities.filter(({ change }) => change !== undefined);
  if (changing && second)
    report(reading, own.at(second.name) ?? added!.at(second.name)!, {
      code: "cannot-change",
      message: `${changing.name} changes from repeat to repeat already, and only one quantity may`,
      expected: "change for one of the two",
    });
  return { quantities, shorthands };
}

const tableOf = (reading: Reading, cursor: Cursor | undefined): Table | undefined =>
  cursor && tableAt(reading, cursor, "the quantities", undefined, example);

/** Words of sums, terms of the cost and keys of a motif. */
const isTaken = (name: string, kind: Motif["kind"]): boolean =>
  RESERVED_WORDS.has(name) ||
  TERMS.some((term) => term === name) ||
  [...keysOf("motif"), ...keysOf(kind)].includes(name);

function quantityAt(
  reading: Reading,
  name: string,
  now: Cursor | undefined,
  before: Cursor | undefined,
  kind: Motif["kind"],
): Quantity | undefined {
  const cursor = now ?? before!;
  if (!NAME_PATTERN.test(name))
    return report(reading, cursor, {
      code: "bad-name",
      message: "the name of a quantity is one word of letters, digits and _, so that sums can use it",
      found: name,
      expected: name.replace(/[^A-Za-z0-9_]+/g, "_").replace(/^(\d)/, "_$1"),
      ...(cursor.keyPlace && { place: cursor.keyPlace }),
    });
  if (!before && isTaken(name, kind))
    return report(reading, cursor, {
      code: "bad-name",
      message: `${name} has a meaning of its own, so no quantity can be called by it`,
      found: name,
      expected: "another name",
      ...(cursor.keyPlace && { place: cursor.keyPlace }),
    });
  const unit = unitOf(reading, name, now, before);
  flagAt(reading, fieldOf(now, "signed"), `whether ${name} may be negative`);
  const range = isSigned(before) || isSigned(now) ? limits.signedCountOf : limits.countOf;
  const basis = before && preferenceAt({ diagnostics: [] }, before, name, range, undefined, "quantity");
  const preference = now ? preferenceAt(reading, now, name, range, basis?.allowed, "quantity") : basis;
  const change = changeAt(reading, fieldOf(now, "change"), name, unit, kind);
  return (
    unit && preference && { name, unit, ...preferred(preference), ...(change !== undefined && { change }) }
  );
}

/** By how much a quantity may change from repeat to repeat: what reaches across, in a cord. */
function changeAt(
  reading: Reading,
  cursor: Cursor | undefined,
  name: string,
  unit: Quantity["unit"] | undefined,
  kind: Motif["kind"],
): number | undefined {
  const change = cursor && wholeAt(reading, cursor, `the change of ${name}`, limits.fromOne);
  if (!cursor || change === undefined || unit === undefined) return undefined;
  if (kind === "cord" && unit === "needles") return change;
  return report(reading, cursor, {
    code: "cannot-change",
    message:
      kind === "cord"
        ? `${name} is counted in ${unit}, and only what is counted in needles may change from repeat to repeat`
        : `${name} belongs to a motif of the kind ${kind}, and only a cord may change from repeat to repeat`,
    expected: "one value from the first repeat to the last",
    found: String(change),
  });
}

const preferred = ({ allowed, prefer }: Preference): Preference => ({
  allowed,
  ...(prefer !== undefined && { prefer }),
});

const fieldOf = (cursor: Cursor | undefined, key: string): Cursor | undefined => {
  const entry = cursor?.written.kind === "table" ? cursor.written.entries.get(key) : undefined;
  return cursor && entry && { written: entry.value, path: [...cursor.path, key] };
};

/** Places on the bed may be negative, distances not. */
function isSigned(cursor: Cursor | undefined): boolean {
  const signed = fieldOf(cursor, "signed")?.written;
  return signed?.kind === "boolean" && /^true$/i.test(signed.text);
}

function unitOf(
  reading: Reading,
  name: string,
  now: Cursor | undefined,
  before: Cursor | undefined,
): Quantity["unit"] | undefined {
  const mine = fieldOf(now, "unit");
  const theirs = fieldOf(before, "unit");
  if (!mine && !theirs)
    return report(reading, now!, {
      code: "missing-key",
      message: `the quantity ${name} lacks its unit`,
      expected: example,
      found: "",
      ...(now?.keyPlace && { place: now.keyPlace }),
    });
  const unit = wordAt(reading, (mine ?? theirs)!, `the unit of ${name}`, units);
  const given = theirs && wordAt({ diagnostics: [] }, theirs, name, units);
  if (mine && given !== undefined && unit !== undefined && unit !== given)
    return report(reading, mine, {
      code: "different-kind",
      message: `${name} is counted in ${given}`,
      expected: given,
    });
  return unit;
}
