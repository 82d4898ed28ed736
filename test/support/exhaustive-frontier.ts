import type { GarmentFile, MatchEntry, MotifEntry, PlacementEntry } from "./garment-file.ts";
import { type Cloth, clothOf, markRow, type Stretch, stretchedRow } from "./referee/cloth.ts";
import { type Edges, fieldOf, layoutsOf, lengthChanges, rowsInto } from "./referee/layouts.ts";
import { type Look, looksOf } from "./referee/looks.ts";
import { weightOf } from "./referee/weights.ts";

/** Amounts in thousandths, by term, and the least that a fit with these amounts costs. */
export interface ExhaustivePoint {
  readonly amounts: readonly number[];
  readonly cost: number;
}

/** All terms that are not named, as weighed. */
const everythingElse = "rest";

/**
 * The amounts that no other fit's amounts surpass, by trying every look of every motif and, under it, every layout of
 * every placement. Amounts are those of looks and layouts rounded to thousandths, and added up.
 *
 * How much of a term a look gives up is read off the referee's own costs: what it costs when that term weighs 1 and all
 * others nothing; and likewise for a layout, of all terms at once.
 *
 * Throws where the garment is not one it can judge: two placements on one piece, or two matches of one motif.
 */
export function exhaustiveFrontier(
  garment: GarmentFile,
  terms: readonly string[],
  edges: Edges,
): readonly ExhaustivePoint[] {
  const on = garment.place.map((placement) => placement.on);
  if (new Set(on).size < on.length) throw new Error("two placements on one piece");
  const cloth = clothOf(garment);
  const weighed = [...terms.map((term) => weighing(garment, term, terms)), garment];
  const motifs = Object.keys(garment.motifs).filter((name) =>
    garment.place.some(({ motif }) => motif === name),
  );
  let all: readonly ExhaustivePoint[] = [{ amounts: terms.map(() => 0), cost: 0 }];
  for (const name of motifs) all = addedUp(all, ofMotif(weighed, cloth, name, edges));
  return all;
}

/** The garment with every other weight at nothing; of the rest, with the terms that are named at nothing. */
function weighing(garment: GarmentFile, term: string, named: readonly string[]): GarmentFile {
  const all = [...everyTerm, ...Object.values(garment.motifs).flatMap(quantitiesOf)];
  const weights = all.map((name): [string, number] => {
    const counts = term === everythingElse ? !named.includes(name) : name === term;
    return [name, counts ? (term === everythingElse ? weightOf(garment.weights ?? {}, name) : 1) : 0];
  });
  return { ...garment, weights: Object.fromEntries(weights) };
}

const everyTerm = ["length", "balance", "ease", "repeats", "columns", "gap"];

const quantitiesOf = (motif: MotifEntry): readonly string[] =>
  "kind" in motif ? Object.keys(motif.quantities ?? {}) : ["interval", "spread"];

function ofMotif(
  weighed: readonly GarmentFile[],
  cloth: Cloth,
  name: string,
  edges: Edges,
): readonly ExhaustivePoint[] {
  const garment = weighed.at(-1)!;
  const placements = garment.place.filter(({ motif }) => motif === name);
  const match = garment.match?.find(({ motif }) => motif === name);
  const looks = alike(weighed.map((one) => looksOf(one.motifs[name]!, cloth, one.weights ?? {})));
  // Looks that differ only in how the cord is counted lie in the same ways.
  const known = new Map<string, readonly ExhaustivePoint[]>();
  return unsurpassed(
    looks.flatMap(([look, point]) => {
      const key = JSON.stringify(look.quantities);
      const laid = known.get(key) ?? ofPlacements(weighed, cloth, placements, match, look, edges);
      known.set(key, laid);
      return addedUp([point], laid);
    }),
  );
}

/** All placements of a motif under one look; those that are matched are equally far in their repeat. */
function ofPlacements(
  weighed: readonly GarmentFile[],
  cloth: Cloth,
  placements: readonly PlacementEntry[],
  match: MatchEntry | undefined,
  look: Look,
  edges: Edges,
): readonly ExhaustivePoint[] {
  const byPhase = placements.map((placement) => {
    const mark = match?.on.includes(placement.on) ? match.mark : undefined;
    return ofPlacement(weighed, cloth, placement, look, edges, mark);
  });
  const phases = match ? Array.from({ length: look.repeatRows }, (_, rows) => rows) : [anyPhase];
  return unsurpassed(
    phases.flatMap((phase) =>
      byPhase.map((ofPhase) => ofPhase.get(anyPhase) ?? ofPhase.get(phase) ?? []).reduce(addedUp),
    ),
  );
}

/** Of a placement that is not matched with another. */
const anyPhase = -1;

/** By phase, or for any, where a placement need not be in one. */
function ofPlacement(
  weighed: readonly GarmentFile[],
  cloth: Cloth,
  placement: PlacementEntry,
  look: Look,
  edges: Edges,
  mark: string | undefined,
): ReadonlyMap<number, readonly ExhaustivePoint[]> {
  const garment = weighed.at(-1)!;
  const field = fieldOf(garment, cloth, placement);
  const byPhase = new Map<number, ExhaustivePoint[]>();
  if (mark === undefined) byPhase.set(anyPhase, []);
  for (const change of lengthChanges(garment, cloth, placement.on)) {
    const stretch: Stretch = { ...field, change };
    for (const { firstRow, cost } of layoutsOf(
      placesOfDigits(garment),
      cloth,
      placement,
      look,
      edges,
      stretch,
    )) {
      const point = laidPoint(weighed, cost);
      const phase =
        mark === undefined
          ? anyPhase
          : rowsInto(
              look,
              firstRow,
              stretchedRow(markRow(garment.pieces[placement.on]!, mark, cloth), [stretch]),
            );
      const known = byPhase.get(phase);
      if (known) known.push(point);
      else byPhase.set(phase, [point]);
    }
  }
  return new Map([...byPhase].map(([phase, points]) => [phase, unsurpassed(points)]));
}

/** What a layout may give up; all of it is counted in whole numbers. */
const layoutTerms = ["length", "balance", "repeats", "columns", "gap"];
const mostOfEach = 1000;

/** The garment with weights by which what a layout costs holds how much of each term it gives up, as groups of digits. */
const placesOfDigits = (garment: GarmentFile): GarmentFile => ({
  ...garment,
  weights: Object.fromEntries(layoutTerms.map((term, index) => [term, mostOfEach ** index])),
});

function laidPoint(weighed: readonly GarmentFile[], digits: number): ExhaustivePoint {
  const amounts = layoutTerms.map((_, index) => Math.floor(digits / mostOfEach ** index) % mostOfEach);
  const costs = weighed.map(({ weights = {} }) =>
    layoutTerms.reduce((sum, term, index) => sum + weightOf(weights, term) * amounts[index]!, 0),
  );
  return { amounts: costs.slice(0, -1).map((cost) => Math.round(1000 * cost)), cost: costs.at(-1)! };
}

/** The same looks under different weights, in the same order: what each gives up of every term. */
function alike(byTerm: readonly (readonly Look[])[]): readonly (readonly [Look, ExhaustivePoint])[] {
  const last = byTerm.at(-1)!;
  return last.map((one, index) => {
    const amounts = byTerm.slice(0, -1).map((ones) => Math.round(1000 * ones[index]!.cost));
    return [one, { amounts, cost: one.cost }];
  });
}

const addedUp = (
  these: readonly ExhaustivePoint[],
  those: readonly ExhaustivePoint[],
): readonly ExhaustivePoint[] =>
  unsurpassed(
    these.flatMap((one) =>
      those.map((other) => ({
        amounts: one.amounts.map((amount, index) => amount + other.amounts[index]!),
        cost: one.cost + other.cost,
      })),
    ),
  );

/** What is surpassed in a part is surpassed in the whole, because amounts and costs add up. */
function unsurpassed(points: readonly ExhaustivePoint[]): readonly ExhaustivePoint[] {
  const cheapest = new Map<string, ExhaustivePoint>();
  for (const point of points) {
    const known = cheapest.get(point.amounts.join());
    if (!known || point.cost < known.cost) cheapest.set(point.amounts.join(), point);
  }
  const distinct = [...cheapest.values()];
  return distinct.filter(
    ({ amounts }) =>
      !distinct.some(
        ({ amounts: other }) =>
          other.every((amount, index) => amount <= amounts[index]!) &&
          other.some((amount, index) => amount < amounts[index]!),
      ),
  );
}
