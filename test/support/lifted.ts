import type { AllowEntry, ChoiceEntry, GarmentFile, MarginsEntry, PlacementEntry } from "./garment-file.ts";
import { clothOf } from "./referee/cloth.ts";
import { allowedBetween, choice, highestOf } from "./referee/entries.ts";

/**
 * A garment file with some of its rules lifted as far as the program says it lifts them: lengths by 24 rows, quantities
 * by 12 (one or two of them in a motif) to either side, gaps by 10, columns by 4 or to one, ease from -50 % to 200 %, all
 * else altogether. Only for crossed cords and transferred cables.
 *
 * @param rules by their paths joined by dots
 */
export function lifted(plain: GarmentFile, rules: readonly string[]): GarmentFile {
  const garment = structuredClone(plain) as Changeable<GarmentFile>;
  // What stands later in a list goes first, so that the places of the others stay what they are.
  for (const rule of [...rules].sort().reverse()) lift(garment, rule.split("."));
  return garment;
}

type Changeable<Value> = Value extends object
  ? { -readonly [Key in keyof Value]: Changeable<Value[Key]> }
  : Value;

function lift(garment: Changeable<GarmentFile>, [section, name, ...keys]: readonly string[]): void {
  switch (section) {
    case "bed":
      garment.bed.needles = 10_000;
      return;
    case "pieces": {
      const { rowMm } = clothOf(garment as GarmentFile);
      garment.pieces[name!]![keys[0] as "grow" | "shrink"] = `${24 * rowMm + 1e-6} mm`;
      return;
    }
    case "match":
      garment.match!.splice(Number(name), 1);
      return;
    case "place":
      liftPlaced(garment.place[Number(name)]!, keys);
      return;
    case "motifs":
      liftMotif(garment.motifs[name!]!, keys);
      return;
    default:
      throw new Error(`no rule "${section}" is known`);
  }
}

const near = (allow: AllowEntry, distance: number, least: number): number[] => {
  const values = allowedBetween(allow, 0, highestOf(allow));
  const all = values.flatMap((value) =>
    Array.from({ length: 2 * distance + 1 }, (_, index) => value - distance + index),
  );
  return [...new Set(all)].filter((value) => value >= least).sort((a, b) => a - b);
};

function liftPlaced(placement: Changeable<PlacementEntry>, [key, side]: readonly string[]): void {
  const margins = (placement.margins ?? {}) as Changeable<MarginsEntry>;
  const isCentred = margins.left === undefined && margins.right === undefined;
  const allowed = (of: "columns" | "gap", otherwise: number): AllowEntry =>
    choice(placement[of] as ChoiceEntry | undefined).allow ?? otherwise;
  switch (key) {
    case "margins":
      if (side === "left" || side === "right") margins[side] = "0..999";
      else delete margins[side as "bottom" | "top" | "side"];
      return;
    case "columns":
      placement.columns = isCentred
        ? [1, ...allowedBetween(allowed("columns", 1), 2, 20)]
        : near(allowed("columns", 1), 4, 1);
      return;
    case "gap":
      placement.gap = isCentred
        ? [...new Set([0, ...allowedBetween(allowed("gap", 0), 0, 60)])]
        : near(allowed("gap", 0), 10, 0);
      return;
    default:
      delete placement[key as "repeats" | "meet"];
  }
}

const usual: Readonly<Record<string, readonly [from: number, to: number, least: number]>> = {
  interval: [4, 12, 1],
  spread: [2, 20, 1],
  offset: [0, 0, 0],
};

function liftMotif(motif: Changeable<GarmentFile["motifs"][string]>, [key, at]: readonly string[]): void {
  if (!("like" in motif)) throw new Error("only motifs like a built-in one are lifted");
  if (key === "rules") {
    (motif.rules as string[]).splice(Number(at), 1);
    return;
  }
  if (key === "ease" && motif.like === "crossed cord") {
    motif.ease = { from: "-50 %", to: "200 %" };
    return;
  }
  const quantities = motif as Record<string, ChoiceEntry | AllowEntry>;
  const [from, to, least] = usual[key!]!;
  quantities[key!] = { allow: near(choice(quantities[key!]).allow ?? { from, to }, 12, least) };
}
