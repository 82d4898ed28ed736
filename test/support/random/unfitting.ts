import fc from "fast-check";
import type {
  GarmentFile,
  LikeCableEntry,
  LikeCordEntry,
  MarginsEntry,
  PlacementEntry,
} from "../garment-file.ts";
import { type Cloth, clothOf } from "../referee/cloth.ts";
import { type Dice, thrown } from "./dice.ts";
import { heightOf, widthOf } from "./measure.ts";

/**
 * Very small garments with narrow limits, most of which nothing fits: because of margins, ease, lengths, repeats, the
 * bed, a neck, comparisons, meetings or a match. Small enough that everything can be tried by an exhaustive search.
 */
export const unfittingGarments = (count: number, seed: number): GarmentFile[] =>
  fc.sample(thrown(small), { numRuns: count, seed });

interface Panel {
  readonly name: string;
  readonly rows: number;
  readonly half: number;
  readonly hasNeck: boolean;
}

function small(dice: Dice): GarmentFile {
  const gauge = {
    ground: { stitches: dice.whole(18, 28), rows: dice.whole(24, 38), over: "10 cm" },
    cord: { needles: 3, stitches: dice.whole(15, 28), over: "10 cm" },
  };
  const cloth = clothOf({ gauge } as GarmentFile);
  const isCable = dice.chance(25);
  const motif = isCable ? cable(dice) : cord(dice);
  const names = dice.chance(30) ? ["front", "back"] : ["cuff"];
  const panels = names.map(
    (name): Panel => ({
      name,
      rows: dice.whole(9, 24),
      half: dice.whole(4, 9),
      hasNeck: dice.chance(12),
    }),
  );
  const place = panels.map((panel) => placed(dice, panel));
  const isMatched = place.length === 2 && dice.chance(60) && place.every(({ to }) => to === "top");
  const widest = Math.max(...panels.map(({ half }) => half));
  return {
    format: "evenrow/1",
    bed: { needles: isCable && dice.chance(50) ? 2 * widest : 100 },
    gauge,
    pieces: Object.fromEntries(panels.map((panel) => [panel.name, pieceOf(dice, cloth, panel)])),
    motifs: { plait: motif },
    place,
    ...(isMatched && { match: [{ motif: "plait", on: names, mark: "top" }] }),
    ...(dice.chance(40) && {
      weights: { length: dice.whole(1, 6), balance: dice.whole(1, 4) / 2, spread: dice.whole(1, 5) },
    }),
  };
}

function pieceOf(dice: Dice, cloth: Cloth, { rows, half, hasNeck }: Panel): GarmentFile["pieces"][string] {
  const above = hasNeck ? rows + dice.whole(6, 9) : rows;
  const outline = [
    { height: "0 mm", width: widthOf(half, cloth, dice) },
    { height: heightOf(above, cloth, dice), width: widthOf(half, cloth, dice) },
  ];
  const change = (): string => `${dice.whole(0, 3) * 3} mm`;
  return {
    outline,
    marks: { top: heightOf(rows, cloth, dice) },
    ...(hasNeck && {
      neck: [
        { height: heightOf(rows - dice.whole(0, 4), cloth, dice), width: widthOf(2, cloth, dice) },
        { height: heightOf(above, cloth, dice), width: widthOf(2, cloth, dice) },
      ],
    }),
    ...(dice.chance(60) && { grow: change() }),
    ...(dice.chance(60) && { shrink: change() }),
  };
}

const one = (dice: Dice, least: number, most: number): number | number[] => {
  const values = [dice.whole(least, most), dice.whole(least, most)].sort((a, b) => a - b);
  return dice.chance(55) ? values[0]! : [...new Set(values)];
};

const range = (dice: Dice, least: number, most: number, wide: number): string => {
  const from = dice.whole(least, most);
  return `${from}..${from + dice.whole(0, wide)}`;
};

function cord(dice: Dice): LikeCordEntry {
  const from = dice.whole(-8, 6);
  const comparisons = [
    `spread <= interval${dice.pick(["", " + 1", " - 1"])}`,
    `2 * spread >= interval + ${dice.whole(0, 4)}`,
    `spread * interval <= ${dice.whole(6, 20)}`,
    "mod(interval, 2) == 0",
  ];
  return {
    like: "crossed cord",
    interval: dice.chance(80) ? { allow: one(dice, 2, 5) } : { allow: range(dice, 2, 4, 2), prefer: 3 },
    spread: dice.chance(60) ? { allow: one(dice, 2, 5) } : { allow: range(dice, 2, 4, 3), prefer: 3 },
    ease: {
      from: `${from} %`,
      to: `${from + dice.whole(3, 25)} %`,
      prefer: `${from + 1} %`,
    },
    ...(dice.chance(45) && {
      rules: dice.chance(30)
        ? [dice.pick(comparisons.slice(0, 2)), dice.pick(comparisons.slice(2))]
        : [dice.pick(comparisons)],
    }),
  };
}

function cable(dice: Dice): LikeCableEntry {
  return {
    like: "transferred cable",
    interval: { allow: one(dice, 4, 9) },
    cross: [dice.whole(2, 4), dice.whole(2, 4)],
    ...(dice.chance(60) && { "draw-in": dice.pick(["11 %", "23 %", "31 %"]) }),
    ...(dice.chance(25) && { rules: [`interval >= ${dice.whole(5, 12)}`] }),
  };
}

function placed(dice: Dice, { name, rows, hasNeck }: Panel): PlacementEntry {
  const margins: MarginsEntry = {
    ...(dice.chance(70) && { bottom: range(dice, 0, 4, 2) }),
    ...(dice.chance(70) && { top: range(dice, 0, 4, 2) }),
    ...(dice.chance(80)
      ? { side: { least: dice.whole(0, 4) } }
      : { left: range(dice, 0, 3, 3), right: range(dice, 0, 3, 3) }),
  };
  const repeats = Math.max(1, Math.floor(rows / 8));
  return {
    motif: "plait",
    on: name,
    from: "cast-on",
    to: hasNeck && dice.chance(40) ? "bind-off" : "top",
    ...(dice.chance(55) && { repeats: one(dice, Math.max(1, repeats - 1), repeats + 2) }),
    ...(dice.chance(20) && { columns: dice.whole(1, 3), gap: dice.whole(0, 3) }),
    margins,
    ...(dice.chance(30) && {
      meet: {
        mark: dice.pick(["cast-on", "top"]),
        at: dice.pick(["whole", "half", dice.whole(0, 6)] as const),
      },
    }),
  };
}
