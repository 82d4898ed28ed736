import type { LoadedDrawing } from "../drawing-file/load-drawings.ts";
import { applyEdits } from "../explore/apply-edits.ts";
import { type Change, type Edit, isRefused } from "../explore/edit.ts";
import type { GarmentRule } from "../explore/garment-rule.ts";
import { readSource } from "../explore/read-source.ts";
import { rulesFor } from "../explore/rules-for.ts";
import type { Garment } from "../garment/garment.ts";
import { type Loosening, loosenings } from "./loosening.ts";

/** Edits of a garment file that let it fit; anything less at the same places does not. */
export interface LeastChange {
  readonly edits: readonly Edit[];
  readonly words: string;
  /** How much it disturbs: steps of each rule (rows, needles, percentage points) times the weight of its term. */
  readonly cost: number;
}

/** A garment file that nothing fits, and how to ask whether something fits. */
export interface Unfitting {
  readonly source: string;
  readonly name: string;
  readonly garment: Garment;
  readonly drawings?: readonly LoadedDrawing[];
  readonly fits: (garment: Garment) => Promise<boolean>;
}

/**
 * The least change of each rule alone that admits a fit and, where no rule alone does, of each pair; the least
 * disturbing first. Every one is tried on the file's own text.
 *
 * @param conflict rules that cannot hold together, as paths joined by dots: whatever admits a fit changes one of them
 */
export async function leastChanges(
  file: Unfitting,
  conflict: readonly string[],
): Promise<readonly LeastChange[]> {
  const rules = rulesFor(file.garment);
  const blamed = rules.filter(({ id }) => conflict.includes(id));
  const singles: LeastChange[] = [];
  for (const one of waysOf(file.source, blamed)) {
    const steps = await fewestSteps(one, (change) => fitsAfter(file, [change]));
    singles.push(...(steps === undefined ? [] : await barest(file, one, steps)));
  }
  const found = singles.length > 0 ? singles : await pairsOf(file, blamed, rules);
  return [...found].sort((a, b) => a.cost - b.cost);
}

const waysOf = (source: string, rules: readonly GarmentRule[]): readonly Loosening[] =>
  rules.flatMap((rule) => loosenings(source, rule));

/** The fewest steps after which something fits, by doubling and then halving the stretch in between. */
async function fewestSteps(
  { mostSteps, widely }: Loosening,
  fits: (change: Change) => Promise<boolean>,
): Promise<number | undefined> {
  if (mostSteps < 1) return undefined;
  let [below, enough] = [0, 1];
  while (!(await fits(widely(enough)))) {
    if (enough >= mostSteps) return undefined;
    [below, enough] = [enough, Math.min(mostSteps, 2 * enough)];
  }
  while (enough - below > 1) {
    const middle = Math.floor((below + enough) / 2);
    if (await fits(widely(middle))) enough = middle;
    else below = middle;
  }
  return enough;
}

async function barest(file: Unfitting, one: Loosening, steps: number): Promise<readonly LeastChange[]> {
  for (const change of one.barely(steps))
    if (await fitsAfter(file, [change])) return [together([change], steps * one.costPerStep)];
  return [];
}

async function pairsOf(
  file: Unfitting,
  blamed: readonly GarmentRule[],
  rules: readonly GarmentRule[],
): Promise<readonly LeastChange[]> {
  const first = waysOf(file.source, blamed);
  const all = waysOf(file.source, rules);
  const pairs: LeastChange[] = [];
  for (const one of first) {
    for (const other of all) {
      if (other.rule.id === one.rule.id) continue;
      const isSecondTime = first.some(({ rule }) => rule.id === other.rule.id) && other.rule.id < one.rule.id;
      if (!isSecondTime) pairs.push(...(await leastPair(file, one, other)));
    }
  }
  return pairs;
}

/** The second as little as the first at its furthest allows, then the first as little as that allows. */
async function leastPair(file: Unfitting, one: Loosening, other: Loosening): Promise<readonly LeastChange[]> {
  if (one.mostSteps < 1) return [];
  const furthest = one.widely(one.mostSteps);
  const otherSteps = await fewestSteps(other, (change) => fitsAfter(file, [furthest, change]));
  if (otherSteps === undefined) return [];
  const wide = other.widely(otherSteps);
  const oneSteps = await fewestSteps(one, (change) => fitsAfter(file, [change, wide]));
  if (oneSteps === undefined) return [];
  const cost = oneSteps * one.costPerStep + otherSteps * other.costPerStep;
  for (const first of one.barely(oneSteps))
    for (const second of other.barely(otherSteps))
      if (await fitsAfter(file, [first, second])) return [together([first, second], cost)];
  return [];
}

async function fitsAfter(
  { source, name, drawings, fits }: Unfitting,
  changes: readonly Change[],
): Promise<boolean> {
  if (changes.some(isRefused)) return false;
  const edited = applyEdits(source, together(changes, 0).edits);
  if (!("text" in edited)) return false;
  const { garment } = readSource(edited.text, name, drawings);
  return garment !== undefined && fits(garment);
}

function together(changes: readonly Change[], cost: number): LeastChange {
  const made = changes.flatMap((change) => (isRefused(change) ? [] : [change]));
  return {
    edits: made.flatMap(({ edits }) => edits),
    words: made.map(({ words }) => words).join("; and "),
    cost: Number(cost.toFixed(6)),
  };
}
