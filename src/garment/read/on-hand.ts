import { quoted } from "../../diagnostics/shown.ts";
import type { Motif } from "../../motif/motif.ts";
import { LENGTH } from "../../units/length.ts";
import { isUnit } from "../../units/measure.ts";
import { knownUnits } from "../../yarn/reckoning.ts";
import type { Gauge, OnHand, Stock, Supply, SupplyOf, Yarns } from "../garment.ts";
import { keysOf } from "../keys.ts";
import { type Cursor, type Reading, report, type Table, tableAt, wordAt } from "./cursor.ts";
import * as limits from "./limits.ts";
import { lengthAt, massAt, numberAt } from "./numbers.ts";

const example = "{ cord: 12 m, ground yarn: { balls: 6, each: 50 g } }";
const SUPPLIES = ["cord", "cord yarn", "ground yarn", "yarn"] as const satisfies readonly SupplyOf[];

/** What a supply is measured against. */
export interface AroundSupplies {
  readonly gauge: Gauge | undefined;
  readonly yarn: Yarns;
  /** Those that are placed. */
  readonly motifs: readonly Motif[];
}

/** Cord and yarn on hand; undefined where nothing can be made of it. */
export function onHandAt(
  reading: Reading,
  cursor: Cursor | undefined,
  around: AroundSupplies,
): OnHand | undefined {
  const table = cursor && tableAt(reading, cursor, "what is on hand", keysOf("on hand"), example);
  if (!cursor || !table) return undefined;
  const preferCursor = table.at("prefer");
  const prefer =
    preferCursor && wordAt(reading, preferCursor, "what is preferred of what is on hand", ["least waste"]);
  oneOrTwoYarns(reading, table);
  const written = SUPPLIES.filter((of) => table.at(of));
  if (written.length === 0)
    return report(reading, cursor, {
      code: "missing-key",
      message: "nothing is said to be on hand",
      expected: `an amount of ${SUPPLIES.join(", ")}: ${example}`,
      found: "",
      ...(cursor.keyPlace && { place: cursor.keyPlace }),
    });
  const supplies = written.flatMap((of) => supplyAt(reading, table.at(of)!, of, around) ?? []);
  return supplies.length === 0 ? undefined : { supplies, leastWaste: prefer !== undefined };
}

/** One yarn for both, or a yarn for each. */
function oneOrTwoYarns(reading: Reading, table: Table): void {
  const both = table.at("yarn");
  const own = (["cord yarn", "ground yarn"] as const).find((of) => table.at(of));
  if (!both || own === undefined) return;
  report(reading, both, {
    code: "conflicting-keys",
    message: `yarn is one yarn for cloth and cord, and ${own} is on hand as well`,
    expected: "yarn alone, or ground yarn and cord yarn",
    found: "",
    ...(both.keyPlace && { place: both.keyPlace }),
  });
}

function supplyAt(
  reading: Reading,
  cursor: Cursor,
  of: SupplyOf,
  around: AroundSupplies,
): Supply | undefined {
  const what = `the ${of} on hand`;
  if (of === "cord") {
    const mm = lengthAt(reading, cursor, what, limits.onHandMm);
    return mm === undefined ? undefined : { path: cursor.path, of, amount: mm / 1000, unit: "m" };
  }
  const told =
    cursor.written.kind === "table" ? ballsAt(reading, cursor, what) : stockAt(reading, cursor, what);
  if (!told || !canBeReckoned(reading, cursor, of, told, around)) return undefined;
  return { path: cursor.path, of, ...told };
}

function ballsAt(
  reading: Reading,
  cursor: Cursor,
  what: string,
): (Stock & Pick<Supply, "balls">) | undefined {
  const ballsExample = "{ balls: 6, each: 50 g }";
  const table = tableAt(reading, cursor, what, keysOf("balls"), ballsExample);
  const countCursor = table?.need("balls", ballsExample);
  const count = countCursor && numberAt(reading, countCursor, "the number of balls", limits.balls);
  const eachCursor = table?.need("each", ballsExample);
  const each = eachCursor && stockAt(reading, eachCursor, "one ball");
  if (count === undefined || !each) return undefined;
  return { amount: count * each.amount, unit: each.unit, balls: { count, each } };
}

/** A weight or a length, as its unit says. */
function stockAt(reading: Reading, cursor: Cursor, what: string): Stock | undefined {
  const { written } = cursor;
  if (written.kind === "number")
    return report(reading, cursor, {
      code: "missing-unit",
      message: `${what} is a weight or a length, and needs its unit`,
      expected: `${written.text} g or ${written.text} m`,
    });
  if (written.kind !== "text")
    return report(reading, cursor, {
      code: "wrong-type",
      message: `${what} is a weight or a length`,
      expected: "300 g, 400 m, or { balls: 6, each: 50 g }",
    });
  if (isLength(written.text)) {
    const mm = lengthAt(reading, cursor, what, limits.onHandMm);
    return mm === undefined ? undefined : { amount: mm / 1000, unit: "m" };
  }
  const grams = massAt(reading, cursor, what, limits.onHandGrams);
  return grams === undefined ? undefined : { amount: grams, unit: "g" };
}

function isLength(text: string): boolean {
  const unit = /[\p{L}"'\u2033\u201d]*$/u.exec(text.trim().replace(/\.$/, ""))![0];
  return isUnit(LENGTH, unit) || LENGTH.otherSpellings.has(unit.toLowerCase());
}

/** Whether what a garment takes can be told in the unit that a supply is told in; it is said where it cannot. */
function canBeReckoned(
  reading: Reading,
  cursor: Cursor,
  of: SupplyOf,
  { unit }: Stock,
  { gauge, yarn, motifs }: AroundSupplies,
): boolean {
  if (!gauge) return false;
  const isLaid = motifs.some(({ kind }) => kind === "cord");
  const needed = [
    ...(of === "cord yarn" ? [] : (["ground"] as const)),
    ...(of === "ground yarn" || !isLaid ? [] : (["cord"] as const)),
  ];
  const unknown = needed.find((which) => !knownUnits(gauge, yarn, which).includes(unit));
  if (unknown !== undefined) {
    report(reading, cursor, {
      code: "yarn-not-known",
      message:
        unit === "g"
          ? `the ${of} on hand is told by weight, and the tex of the ${unknown} yarn is not stated, so grams and metres cannot be told from each other`
          : `the ${of} on hand is told by length, and the ${unknown} is reckoned by the weight of a swatch`,
      expected: `yarn: { ${unknown}: { tex: 370 } }, which is the grams of 1000 m`,
    });
    return false;
  }
  const [ground, cord] = [yarn.ground?.tex, yarn.cord?.tex];
  if (of !== "yarn" || ground === undefined || cord === undefined || ground === cord) return true;
  report(reading, cursor, {
    code: "conflicting-keys",
    message: `one yarn is on hand for cloth and cord, and their tex differ: ${ground} and ${cord}`,
    expected: `one tex for both, or ${quoted("ground yarn")} and ${quoted("cord yarn")}`,
    found: "",
    ...(cursor.keyPlace && { place: cursor.keyPlace }),
  });
  return false;
}
