import type { CordEntry, GarmentFile, MotifEntry, OnHandEntry } from "../garment-file.ts";
import { lengthMm } from "./entries.ts";
import { crossedCord, type Look } from "./looks.ts";
import { hungOver, strandsOf } from "./strands.ts";

/** What all that was chosen takes. */
export interface Use {
  readonly groundStitches: number;
  readonly cordStitches: number;
  readonly cords: number;
}

export const nothing: Use = { groundStitches: 0, cordStitches: 0, cords: 0 };

/** Cord stitches to make for one column of a motif, each cord by itself with 15 % more, rounded up; and its cords. */
export function cordOfColumn(entry: MotifEntry, look: Look, repeats: number): CordUse {
  const ofLook = known.get(look) ?? new Map<number, CordUse>();
  known.set(look, ofLook);
  const use = ofLook.get(repeats) ?? countCord(entry, look, repeats);
  ofLook.set(repeats, use);
  return use;
}

type CordUse = Pick<Use, "cordStitches" | "cords">;

const known = new WeakMap<Look, Map<number, CordUse>>();

function countCord(entry: MotifEntry, look: Look, repeats: number): CordUse {
  const motif: CordEntry | undefined =
    "like" in entry && entry.like === "crossed cord"
      ? crossedCord
      : "kind" in entry && entry.kind === "cord"
        ? entry
        : undefined;
  if (!motif) return { cordStitches: 0, cords: 0 };
  const strands = strandsOf(motif, look.quantities);
  const counted = new Map(
    strands.map((strand) => {
      const hung = hungOver(motif, look.quantities, strand, repeats);
      // One cord stitch is hung where the strand starts.
      let stitches = 1;
      for (const [index, to] of hung.slice(1).entries()) {
        const from = hung[index]!;
        const between = Math.abs(to.needle - from.needle) - (to.needle * from.needle < 0 ? 1 : 0);
        const segment = look.segments.find(
          ({ needles, rows, fixed }) =>
            needles === between && rows === to.row - from.row && fixed === to.fixed,
        );
        if (!segment)
          throw new Error(`${between} needles across and ${to.row - from.row} rows up are not counted`);
        stitches += segment.pickup;
      }
      return [strand.name, stitches];
    }),
  );
  const [one, other] = motif.folded ?? [];
  const folded = one === undefined || other === undefined ? [] : [counted.get(one)! + counted.get(other)!];
  const single = [...counted].filter(([name]) => name !== one && name !== other).map(([, count]) => count);
  const cords = [...folded, ...single];
  return {
    cordStitches: cords.reduce((sum, used) => sum + Math.ceil((used * 115) / 100), 0),
    cords: cords.length,
  };
}

export type SupplyName = "cord" | "cord yarn" | "ground yarn" | "yarn";

/** Amounts that are on hand, by name, each in metres or grams. */
export function suppliesOf(entry: OnHandEntry): readonly {
  readonly name: SupplyName;
  readonly amount: number;
  readonly unit: "m" | "g";
}[] {
  return (["cord", "cord yarn", "ground yarn", "yarn"] as const).flatMap((name) => {
    const told = entry[name];
    if (told === undefined) return [];
    const [times, text] = typeof told === "string" ? [1, told] : [told.balls, told.each];
    const [, number, unit] = /^([\d.]+) (m|g)$/.exec(text) ?? [];
    if (!number) throw new Error(`"${text}" is neither metres nor grams`);
    return [{ name, amount: times * Number(number), unit: unit as "m" | "g" }];
  });
}

/**
 * How much of a supply a use comes to, in metres or grams. By hand from published formulas: a loop is sqrt(Ks / S) long,
 * at the most where Ks is 24.1 and a quarter stitch and row fewer were in the swatch; a cord stitch is a loop on each
 * needle, a tenth looser at the most, and a float as wide as all but one of them; tails are 20 cm at either end.
 */
export function amountOf(
  { gauge, yarn }: GarmentFile,
  name: SupplyName,
  unit: "m" | "g",
  { groundStitches, cordStitches, cords }: Use,
): number {
  const { ground, cord } = gauge;
  const overCm = lengthMm(ground.over) / 10;
  if (name === "cord") return (cordStitches * lengthMm(cord!.over)) / cord!.stitches / 1000;
  const loop = (ks: number, off: number): number =>
    Math.sqrt((ks * overCm ** 2) / ((ground.stitches + off) * (ground.rows + off))) / 100;
  const [least, about, most] = [loop(21.6 * 0.97, 0.25), loop(23.1, 0), loop(24.1, -0.25)] as const;
  let amount = 0;
  if (name !== "cord yarn") {
    const { tex, swatch } = yarn?.ground ?? {};
    const byWeight = swatch && swatch.stitches * swatch.rows!;
    const grams = swatch && Number(swatch.weight.replace(" g", ""));
    // Half a gram either way on the scale, against the bounds by the gauge.
    if (byWeight && grams && 1 / grams < (most - least) / about) {
      const each = (grams + 0.5 + 0.1 * grams) / byWeight;
      amount += groundStitches * each * (unit === "g" ? 1 : 1000 / tex!);
    } else amount += groundStitches * (most + 0.1 * about) * (unit === "m" ? 1 : tex! / 1000);
  }
  if (name !== "ground yarn" && cords > 0) {
    const float = ((cord!.needles - 1) * overCm) / ground.stitches / 100;
    const metres = cordStitches * (cord!.needles * most * 1.1 + float) + 0.4 * cords;
    amount += metres * (unit === "m" ? 1 : yarn!.cord!.tex! / 1000);
  }
  return amount;
}
