import fc from "fast-check";
import type { GarmentFile, MotifEntry, PieceEntry } from "./garment-file.ts";
import { garmentArbitrary } from "./random-garment.ts";
import { lengthMm } from "./referee/entries.ts";

/** A garment file with sizes: the first is the garment as it stands, each other has pieces of its own. */
export interface RangeFile extends GarmentFile {
  /** A size that says nothing of its own is the garment as it stands. */
  readonly sizes: Readonly<Record<string, SizeEntry | null>>;
  readonly share: readonly string[];
}

interface SizeEntry {
  readonly pieces?: Readonly<Record<string, Pick<PieceEntry, "outline" | "marks" | "neck">>>;
  readonly wearer?: GarmentFile["wearer"];
}

/** What sizes have in common: the whole look, some of its quantities, or counts and not all that they depend on. */
export type Sharing = "all" | "quantities" | "counts";

const names = ["one", "two", "three", "four"];

/** The same ranges of two to four sizes for the same seed. */
export function sampleRanges(count: number, seed: number, sharing: Sharing): RangeFile[] {
  const factor = (from: number, to: number) =>
    fc.integer({ min: from, max: to }).map((percent) => percent / 100);
  const size = fc.record({
    // The first size is the widest, so that every other has room on its bed.
    width: factor(84, 100),
    height: factor(90, 112),
    child: fc.integer({ min: 0, max: 9 }).map((lot) => lot === 0),
  });
  return fc.sample(
    fc
      .record({
        garment: garmentArbitrary({
          placements: [1, 3],
          motifs: 2,
          sharedPieces: false,
          ...(sharing === "counts" && { kinds: ["crossed cord"] }),
        }),
        sizes: fc.array(size, { minLength: 1, maxLength: 3 }),
        some: fc.nat(),
      })
      .map(({ garment, sizes, some }): RangeFile => {
        const others = sizes.map(
          ({ width, height, child }): SizeEntry => ({
            pieces: Object.fromEntries(
              Object.entries(garment.pieces).map(([name, piece]) => [name, scaled(piece, width, height)]),
            ),
            ...(child && { wearer: { age: 6 } }),
          }),
        );
        return {
          ...garment,
          sizes: Object.fromEntries([{}, ...others].map((entry, index) => [names[index]!, entry])),
          share: shareOf(garment, sharing, some),
        };
      }),
    { numRuns: count, seed },
  );
}

/** A size of a range as a garment file of its own, laid over what is said for all as the format has it. */
export function sizeOf({ sizes, share: _, ...garment }: RangeFile, name: string): GarmentFile {
  const { pieces = {}, wearer } = sizes[name] ?? {};
  return {
    ...garment,
    ...(wearer && { wearer }),
    pieces: Object.fromEntries(
      Object.entries(garment.pieces).map(([piece, entry]) => [
        piece,
        {
          ...entry,
          ...pieces[piece],
          ...((entry.marks || pieces[piece]?.marks) && {
            marks: { ...entry.marks, ...pieces[piece]?.marks },
          }),
        },
      ]),
    ),
  };
}

function scaled({ outline, marks, neck }: PieceEntry, width: number, height: number): PieceEntry {
  const across = (length: string): string => times(length, width);
  const up = (length: string): string => times(length, height);
  return {
    outline: outline.map((station) =>
      "width" in station
        ? { height: up(station.height), width: across(station.width) }
        : { height: up(station.height), left: across(station.left), right: across(station.right) },
    ),
    ...(marks && {
      marks: Object.fromEntries(Object.entries(marks).map(([name, mark]) => [name, up(mark)])),
    }),
    ...(neck && { neck: neck.map((one) => ({ height: up(one.height), width: across(one.width) })) }),
  };
}

/** To a tenth of a millimetre whatever the unit, so that equal lengths stay equal. */
const times = (length: string, factor: number): string =>
  `${Number((lengthMm(length) * factor).toFixed(1))} mm`;

function shareOf(garment: GarmentFile, sharing: Sharing, some: number): string[] {
  const motifs = Object.values(garment.motifs);
  const quantities = [...new Set(motifs.flatMap(quantitiesOf))];
  const counted = motifs.some(isCord) ? ["pickup"] : [];
  if (sharing === "all") return [...quantities, ...counted];
  const chosen = quantities.filter((_, index) => (some >> index) % 2 === 0);
  if (sharing === "counts") return [...chosen.slice(0, 1), ...counted];
  return chosen.length > 0 ? chosen : quantities.slice(0, 1);
}

const isCord = (motif: MotifEntry): boolean =>
  "kind" in motif ? motif.kind === "cord" : motif.like === "crossed cord";

const quantitiesOf = (motif: MotifEntry): readonly string[] => {
  if ("kind" in motif) return Object.keys(motif.quantities ?? {});
  return motif.like === "crossed cord" ? ["interval", "spread"] : ["interval"];
};
