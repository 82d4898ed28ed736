import { readFileSync } from "node:fs";
import { parse } from "yaml";
import type {
  BandEntry,
  CableEntry,
  ChoiceEntry,
  CordEntry,
  GarmentFile,
  QuantityEntry,
} from "../garment-file.ts";
import { choiceOf, someOf } from "./choices.ts";
import type { Dice } from "./dice.ts";

interface Room {
  readonly repeatRows: number;
  readonly reach: number;
}

interface Recipe extends Room {
  /** Other values for quantities of the sample; those that are not named stay as they are. */
  readonly quantities: (dice: Dice) => Readonly<Record<string, ChoiceEntry>>;
}

/** Samples of the new cords and cables, and from where to where their quantities are drawn. */
const recipes: Readonly<Record<string, Recipe>> = {
  "single-cord": { repeatRows: 9, reach: 5, quantities: drawn({ interval: [2, 8], spread: [2, 7] }) },
  lozenge: { repeatRows: 9, reach: 5, quantities: drawn({ interval: [2, 8], spread: [2, 7] }) },
  "crossed-lozenge": { repeatRows: 9, reach: 5, quantities: drawn({ interval: [2, 8], spread: [2, 7] }) },
  braid: { repeatRows: 9, reach: 4, quantities: drawn({ interval: [2, 7], spread: [2, 6] }) },
  "standing-loops": { repeatRows: 12, reach: 2, quantities: drawn({ interval: [4, 9], loop: [4, 12] }) },
  lattice: {
    repeatRows: 10,
    reach: 7,
    quantities: (dice) => ({
      cords: { allow: dice.chance(70) ? dice.whole(2, 5) : someOf(dice, 2, 5) },
      interval: choiceOf(dice, 2, 8),
      apart: choiceOf(dice, 2, 4),
    }),
  },
  "mirrored-cables": {
    repeatRows: 7,
    reach: 8,
    quantities: drawn({ width: [1, 3], interval: [2, 9], inside: [1, 4] }),
  },
  "plaited-cable": {
    repeatRows: 12,
    reach: 4,
    quantities: (dice) => ({
      width: { allow: dice.pick([[2], [2, 4], [4]]) },
      interval: choiceOf(dice, 2, 9),
    }),
  },
  cables: { repeatRows: 24, reach: 15, quantities: () => ({}) },
};

function drawn(ranges: Readonly<Record<string, readonly [number, number]>>): Recipe["quantities"] {
  return (dice) =>
    Object.fromEntries(
      Object.entries(ranges).map(([name, [least, most]]) => [name, choiceOf(dice, least, most)]),
    );
}

const samples = new Map(
  Object.keys(recipes).map((name) => [
    name,
    Object.values((parse(readFileSync(`samples/motifs/${name}.yaml`, "utf8")) as GarmentFile).motifs)[0] as
      | CordEntry
      | CableEntry,
  ]),
);

/** A motif of the samples with quantities of its own. */
export function sampleMotif(dice: Dice): Room & { entry: CordEntry | CableEntry } {
  const name = dice.pick(Object.keys(recipes));
  const { repeatRows, reach, quantities } = recipes[name]!;
  const sample = samples.get(name)!;
  const own: Record<string, QuantityEntry> = {};
  const changed = quantities(dice);
  for (const [quantity, { unit }] of Object.entries(sample.quantities ?? {}))
    own[quantity] = { ...(unit && { unit }), ...changed[quantity] };
  const entry = { ...sample, ...(Object.keys(own).length > 0 && { quantities: own }) };
  return { entry, repeatRows, reach };
}

/** A banded repeat, with or without a card, edge stitches and colours. */
export function bandMotif(dice: Dice): Room & { entry: BandEntry } {
  const card = dice.chance(60) ? dice.pick([12, 24]) : undefined;
  const widths = [2, 3, 4, 6, 12];
  const colours = dice.chance(40) ? 2 : 1;
  const stitches = dice.chance(60)
    ? { stitches: card ? dice.pick(widths) : dice.whole(2, 11) }
    : { stitches: "wide", quantities: { wide: wideOf(dice, widths) } };
  const entry: BandEntry = {
    kind: "band",
    ...stitches,
    repeat: colours > 1 ? 2 * dice.whole(2, 6) : dice.whole(3, 12),
    ...(dice.chance(60) && { edge: [dice.whole(0, 3), dice.whole(0, 3)] as const }),
    ...(card !== undefined && { card }),
    ...(dice.chance(50) && { colours }),
    ...(colours > 1 && { colours }),
  };
  return { entry, repeatRows: 8, reach: 5 };
}

const wideOf = (dice: Dice, widths: readonly number[]): QuantityEntry => ({
  unit: "stitches",
  allow: widths
    .filter(() => dice.chance(60))
    .concat(6)
    .sort((one, other) => one - other),
  ...(dice.chance(60) && { prefer: dice.pick(widths) }),
});
