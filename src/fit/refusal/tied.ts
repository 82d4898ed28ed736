import { groundStitch } from "../../cloth/gauge.ts";
import type { Garment } from "../../garment/garment.ts";
import type { Motif } from "../../motif/motif.ts";
import { goOn, within } from "../allowance.ts";
import { fixedLoss } from "../enumerate.ts";
import { type Field, neighbours, relation } from "../field.ts";
import { type Footing, footingKey } from "../footing.ts";
import { createLayouts, type Layout } from "../layouts.ts";
import type { SomeLook } from "./possible-looks.ts";
import type { Room } from "./room.ts";

/** All that placements tied to one another ask of a layout; layouts that are alike in it are one option. */
interface Option {
  readonly change: number;
  /** Only where another motif may want the same. */
  readonly spot?: Spot;
  readonly phases: readonly number[];
}

/** The rows and needles that a layout covers, and whether it leaves no margin at its field's ends. */
interface Spot {
  /** Both rows are covered; 0 where no other field shares rows. */
  readonly first: number;
  readonly last: number;
  readonly left: number;
  readonly right: number;
  readonly isAtBottom: boolean;
  readonly isAtTop: boolean;
}

/**
 * Whether placements that share pieces, or have to stand alike at a mark, can all be laid. Footing after footing of
 * their motifs is tried, and on each all ways to choose one option for every placement: small numbers, since footings
 * that offer the same options are tried once.
 *
 * @param group indexes of the placements, with all that they are tied to; none of their motifs grows
 */
export function fitsTied(
  garment: Garment,
  group: readonly number[],
  fields: readonly Field[],
  someLook: SomeLook,
  room: Room,
): boolean {
  const own = group.map((index) => fields[index]!);
  const motifs = garment.motifs.filter(({ name }) => own.some(({ placement }) => placement.motif === name));
  const optionsOf = createOptions(garment, own);
  const chosen = new Map<Field, readonly Option[]>();
  const fitsFrom = (at: number): boolean => {
    const motif = motifs[at];
    if (!motif) return true;
    const ofMotif = own.filter(({ placement }) => placement.motif === motif.name);
    const tried = new Set<string>();
    const fits = someLook(
      garment,
      motif,
      (footing) => ofMotif.every((field) => room.mayBe(field, footing)),
      (footing) => {
        if (!ofMotif.every((field) => optionsOf(field, footing).length > 0)) return false;
        for (const field of ofMotif) chosen.set(field, optionsOf(field, footing));
        const offered = JSON.stringify(ofMotif.map((field) => chosen.get(field)));
        if (tried.has(offered)) return false;
        tried.add(offered);
        return canAllBeLaid(garment, own, chosen) && fitsFrom(at + 1);
      },
    );
    for (const field of ofMotif) chosen.delete(field);
    return fits;
  };
  return fitsFrom(0);
}

function createOptions(
  garment: Garment,
  fields: readonly Field[],
): (field: Field, footing: Footing) => readonly Option[] {
  const motifOf = ({ placement }: Field): Motif =>
    garment.motifs.find(({ name }) => name === placement.motif)!;
  const losses = new Map(fields.map((field) => [field, fixedLoss(field, motifOf(field)) ?? 0]));
  const layoutsOn = createLayouts({
    fields,
    stitch: groundStitch(garment.gauge),
    weights: garment.weights,
    bed: garment.bed,
    measures: [],
    anyLayout: true,
    keep: 1,
    lostPerColumn: (field, footing) => {
      const motif = motifOf(field);
      return motif.kind === "cable" ? motif.drawIn * footing.crossedStitches : 0;
    },
    lostBeside: (field) =>
      neighbours(field, fields).reduce((sum, other) => sum + (losses.get(other) ?? 0), 0),
  });
  const known = new Map<string, readonly Option[]>();
  return (field, footing) => {
    const key = `${field.index} ${footingKey(footing)}`;
    // Of many layouts few are different for what they are asked here, so they are let go one footing after the other.
    const options =
      known.get(key) ??
      within(undefined, () => distinct(layoutsOn(field, footing).map((one) => optionOf(one, fields))));
    known.set(key, options);
    return options;
  };
}

function optionOf(layout: Layout, fields: readonly Field[]): Option {
  const { field, change, bottom, top, firstRow, height, panel, phases } = layout;
  const others = neighbours(field, fields);
  const isSharing = others.some((other) => relation(field, other) !== "apart");
  return {
    // A piece that carries nothing else may change its length as it likes.
    change: others.length > 0 ? change : 0,
    ...((isSharing || field.sharedRows) && {
      spot: {
        first: isSharing ? firstRow : 0,
        last: isSharing ? firstRow + height : 0,
        left: panel.leftEdge,
        right: panel.rightEdge,
        isAtBottom: bottom === 0,
        isAtTop: top === 0,
      },
    }),
    phases,
  };
}

const distinct = (options: readonly Option[]): readonly Option[] => [
  ...new Map(options.map((option) => [JSON.stringify(option), option])).values(),
];

/** Whether one option can be taken for each placement that has any yet, so that they go together. */
function canAllBeLaid(
  garment: Garment,
  fields: readonly Field[],
  offered: ReadonlyMap<Field, readonly Option[]>,
): boolean {
  const decided = fields.filter((field) => offered.has(field));
  const taken = new Map<Field, Option>();
  const layFrom = (at: number): boolean => {
    goOn();
    const field = decided[at];
    if (!field) return true;
    const isLaid = offered.get(field)!.some((option) => {
      goOn();
      taken.delete(field);
      if (![...taken].every(([other, its]) => goTogether(garment, [field, option], [other, its])))
        return false;
      taken.set(field, option);
      return keepsLength(field, fields, taken) && layFrom(at + 1);
    });
    taken.delete(field);
    return isLaid;
  };
  return layFrom(0);
}

type Laid = readonly [field: Field, option: Option];
type Placed = readonly [field: Field, spot: Spot];

function goTogether({ matches }: Garment, [field, option]: Laid, [other, its]: Laid): boolean {
  if (field.piece === other.piece) {
    if (relation(field, other) === "same" && option.change !== its.change) return false;
    if (option.spot && its.spot && meet([field, option.spot], [other, its.spot])) return false;
  }
  return matches.every(
    (match, index) =>
      !match.placements.includes(field.index) ||
      !match.placements.includes(other.index) ||
      option.phases[rankOf(matches, index, field)] === its.phases[rankOf(matches, index, other)],
  );
}

/** The phases of a placement stand in the order of the matches that name it. */
const rankOf = (matches: Garment["matches"], match: number, { index }: Field): number =>
  matches.slice(0, match).filter(({ placements }) => placements.includes(index)).length;

/** Whether two lie on the same needles and rows. Those of fields apart do where both stand on the row between them. */
function meet([field, spot]: Placed, [other, its]: Placed): boolean {
  const isAcross = spot.left < its.right && its.left < spot.right;
  if (relation(field, other) !== "apart") return isAcross && spot.first <= its.last && its.first <= spot.last;
  return (
    isAcross &&
    ((field.toRow === other.fromRow && spot.isAtTop && its.isAtBottom) ||
      (other.toRow === field.fromRow && its.isAtTop && spot.isAtBottom))
  );
}

/** The changes of all fields of a piece together keep its limits, once all of them are known. */
function keepsLength({ piece }: Field, fields: readonly Field[], taken: ReadonlyMap<Field, Option>): boolean {
  const onPiece = fields.filter((field) => field.piece === piece);
  if (!onPiece.every((field) => taken.has(field))) return true;
  const apart = onPiece.filter(
    (field, at) => !onPiece.slice(0, at).some((earlier) => relation(field, earlier) === "same"),
  );
  const sum = apart.reduce((total, field) => total + taken.get(field)!.change, 0);
  return (
    sum <= Math.max(...apart.map(({ mostChange }) => mostChange)) &&
    sum >= Math.min(...apart.map(({ leastChange }) => leastChange))
  );
}
