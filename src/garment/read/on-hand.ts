import { quoted } from "../../diagnostics/shown.ts";
import type { Motif } from "../../motif/motif.ts";
import { knownUnits } from "../../yarn/reckoning.ts";
import type { Gauge, OnHand, Stock, Supply, SupplyOf, Yarns } from "../garment.ts";
import { keysOf } from "../keys.ts";
import { type Cursor, type Reading, report, type Table, tableAt, wordAt } from "./cursor.ts";
import * as limits from "./limits.ts";
import { lengthAt } from "./numbers.ts";
import { type Label, takenStockAt } from "./stock.ts";

const example = "{ cord: 12 m, ground yarn: { balls: 6, each: 50 g } }";
const SUPPLIES = ["cord", "cord yarn", "ground yarn", "yarn"] as const satisfies readonly SupplyOf[];

/** What a supply is measured against. */
export interface AroundSupplies {
  readonly gauge: Gauge | undefined;
  readonly yarn: Yarns;
  /** Those that are placed. */
  readonly motifs: readonly Motif[];
}

/** What is on hand (absent where nothing can be made of it), and the yarn with what the labels of its balls tell of it. */
export interface TakenOnHand {
  readonly onHand?: OnHand;
  readonly yarn: Yarns;
}

/** Cord and yarn on hand. */
export function onHandAt(reading: Reading, cursor: Cursor | undefined, around: AroundSupplies): TakenOnHand {
  const { yarn } = around;
  const table = cursor && tableAt(reading, cursor, "what is on hand", keysOf("on hand"), example);
  if (!cursor || !table) return { yarn };
  const preferCursor = table.at("prefer");
  const prefer =
    preferCursor && wordAt(reading, preferCursor, "what is preferred of what is on hand", ["least waste"]);
  oneOrTwoYarns(reading, table);
  const written = SUPPLIES.filter((of) => table.at(of));
  if (written.length === 0) {
    // A key that is not known was meant to say it, and is a mistake by itself.
    if (table.keys().some((key) => !keysOf("on hand").includes(key))) return { yarn };
    report(reading, cursor, {
      code: "missing-key",
      message: "nothing is said to be on hand",
      expected: `an amount of ${SUPPLIES.join(", ")}: ${example}`,
      found: "",
      ...(cursor.keyPlace && { place: cursor.keyPlace }),
    });
    return { yarn };
  }
  const taken = written.flatMap((of) => supplyAt(reading, table.at(of)!, of, around) ?? []);
  const supplies = taken.map(({ supply }) => supply);
  return {
    ...(supplies.length > 0 && { onHand: { supplies, leastWaste: prefer !== undefined } }),
    yarn: Object.assign({}, yarn, ...taken.map(({ labelled }) => labelled)),
  };
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
): { readonly supply: Supply; readonly labelled: Yarns } | undefined {
  const what = `the ${of} on hand`;
  if (of === "cord") {
    const mm = lengthAt(reading, cursor, what, limits.onHandMm);
    if (mm === undefined) return undefined;
    return { supply: { path: cursor.path, of, amount: mm / 1000, unit: "m" }, labelled: {} };
  }
  const taken = takenStockAt(reading, cursor, what);
  if (!taken) return undefined;
  const { label, ...told } = taken;
  const labelled = label ? labelledYarns(reading, label, of, around.yarn) : {};
  const yarn = { ...around.yarn, ...labelled };
  if (!canBeReckoned(reading, cursor, of, told, { ...around, yarn })) return undefined;
  return { supply: { path: cursor.path, of, ...told }, labelled };
}

/** Balls of one yarn differ by a few percent; a tex that is half as much again as the label's is a slip in one of them. */
const sameTex = 0.05;
const farFromLabel = 1.5;

/** The yarns that come in these balls. A tex that the file states goes before the label's, and that they differ is said. */
function labelledYarns(reading: Reading, label: Label, of: SupplyOf, yarn: Yarns): Yarns {
  const which = of === "ground yarn" ? "ground" : of === "cord yarn" ? "cord" : undefined;
  const yarns: readonly (keyof Yarns)[] = which ? [which] : ["ground", "cord"];
  return Object.fromEntries(
    yarns.map((one) => {
      const stated = yarn[one]?.tex;
      if (stated !== undefined) compareTex(reading, label, one, stated);
      return [one, { ...yarn[one], tex: stated ?? label.tex }];
    }),
  );
}

function compareTex(
  reading: Reading,
  { cursor, grams, metres, tex }: Label,
  which: keyof Yarns,
  stated: number,
): void {
  const apart = Math.max(stated / tex, tex / stated);
  if (apart <= 1 + sameTex) return;
  report(reading, cursor, {
    ...(apart <= farFromLabel && { severity: "warning" }),
    code: "conflicting-keys",
    message: `by this label the ${which} yarn has ${Math.round(tex)} tex, and the file states ${stated}`,
    expected: `tex: ${Math.round(tex)} for the ${which} yarn, or no tex there`,
    found: `${Number(grams.toFixed(3))} g = ${Number(metres.toFixed(3))} m`,
  });
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
