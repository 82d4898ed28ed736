import { applyEdits } from "../explore/apply-edits.ts";
import { type Edit, isRefused } from "../explore/edit.ts";
import { type Beside, readSource } from "../explore/read-source.ts";
import { rulesFor } from "../explore/rules-for.ts";
import type { NamedRule } from "../fit/refusal/rule.ts";
import type { Garment } from "../garment/garment.ts";
import type { Giving, Way } from "./way.ts";
import { waysOf } from "./ways.ts";

/** Edits of a garment file that let it fit; anything less at the same places does not. */
export interface LeastChange {
  readonly edits: readonly Edit[];
  readonly words: string;
  /**
   * How much it disturbs: steps of each rule (rows, needles, percentage points) times the weight of its term, or what a
   * rule counts that is taken out.
   */
  readonly cost: number;
  /** By how many steps each rule gives way. */
  readonly given: readonly { readonly rule: string; readonly steps: number }[];
}

/** A garment file that nothing fits, and how to ask whether something fits. */
export interface Unfitting extends Beside {
  readonly source: string;
  readonly name: string;
  readonly garment: Garment;
  readonly beside?: Beside;
  readonly fits: (garment: Garment) => Promise<boolean>;
}

/**
 * The least change of each rule alone that admits a fit and, where no rule alone does, of each pair. Steps are tried on
 * the garment as it was read; the change that is found is made in the file's own text, read again and asked once more.
 *
 * @param conflict rules that cannot hold together: whatever admits a fit changes one of them
 * @param rules all rules of the garment; the second of a pair may be any
 * @param found told of each change as soon as it is found
 * @returns the changes, the least disturbing first
 */
export async function leastChanges(
  file: Unfitting,
  conflict: readonly NamedRule[],
  rules: readonly NamedRule[],
  found: (change: LeastChange) => void = () => {},
): Promise<readonly LeastChange[]> {
  const changes: LeastChange[] = [];
  const keep = (change: LeastChange | undefined): void => {
    if (!change) return;
    changes.push(change);
    found(change);
  };
  const movable = rulesFor(file.garment);
  const ways = (some: readonly NamedRule[]): readonly Way[] =>
    some.flatMap((rule) => waysOf(file.source, file.garment, rule, movable));
  const blamed = ways(conflict);
  for (const way of blamed) keep(await leastOf(file, way));
  if (changes.length > 0) return byCost(changes);
  const all = ways(rules);
  for (const [one, other] of pairs(blamed, all)) keep(await leastOfTwo(file, one, other));
  return byCost(changes);
}

/** The least disturbing first. */
export const byCost = (changes: readonly LeastChange[]): readonly LeastChange[] =>
  [...changes].sort((a, b) => a.cost - b.cost);

/** Each two ways of different rules once, one of which is to blame. */
const pairs = (blamed: readonly Way[], all: readonly Way[]): readonly (readonly [Way, Way])[] =>
  blamed.flatMap((one) =>
    all
      .filter(({ rule }) => rule !== one.rule)
      .filter(({ rule }) => !blamed.some((earlier) => earlier.rule === rule) || one.rule < rule)
      .map((other) => [one, other] as const),
  );

async function leastOf(file: Unfitting, way: Way): Promise<LeastChange | undefined> {
  const steps = await fewestSteps(way, file.garment, file.fits);
  if (steps !== undefined)
    for (const giving of way.barely(steps)) {
      const change = await admitting(file, [[way, steps, giving]]);
      if (change) return change;
    }
  return way.otherwise && leastOf(file, way.otherwise);
}

/**
 * The fewest steps from a garment after which something fits. Whether any number does is asked first; then by doubling,
 * and halving the stretch in between, since few are likelier than many.
 */
async function fewestSteps(
  { mostSteps, widely }: Way,
  garment: Garment,
  fits: (garment: Garment) => Promise<boolean>,
): Promise<number | undefined> {
  const isEnough = (steps: number): Promise<boolean> => fits(widely(garment, steps));
  if (mostSteps < 1 || !(await isEnough(mostSteps))) return undefined;
  let [below, enough] = [0, 1];
  while (enough < mostSteps && !(await isEnough(enough)))
    [below, enough] = [enough, Math.min(mostSteps, 2 * enough)];
  while (enough - below > 1) {
    const middle = Math.floor((below + enough) / 2);
    if (await isEnough(middle)) enough = middle;
    else below = middle;
  }
  return enough;
}

/**
 * Of all that two rules can give up together the least disturbing. From the second's least, with the first at its
 * furthest, it is followed along the edge between what fits and what does not: a step less of the first asks some more of
 * the second.
 */
async function leastOfTwo(file: Unfitting, one: Way, other: Way): Promise<LeastChange | undefined> {
  const corners = await cornersOf(file, one, other);
  for (const { steps, otherSteps } of corners)
    for (const first of one.barely(steps))
      for (const second of other.barely(otherSteps)) {
        const change = await admitting(file, [
          [one, steps, first],
          [other, otherSteps, second],
        ]);
        if (change) return change;
      }
  for (const left of [
    one.otherwise && ([one.otherwise, other] as const),
    other.otherwise && ([one, other.otherwise] as const),
  ]) {
    const change = left && (await leastOfTwo(file, ...left));
    if (change) return change;
  }
  return undefined;
}

interface Corner {
  readonly steps: number;
  readonly otherSteps: number;
  readonly cost: number;
}

/** More corners than this are not followed: the cheapest is found among these, and each of them is a least change. */
const mostCorners = 12;

/** How far two rules have to give way so that something fits, each by as little as the other allows; the cheapest first. */
async function cornersOf({ garment, fits }: Unfitting, one: Way, other: Way): Promise<readonly Corner[]> {
  const corners: Corner[] = [];
  let most = one.mostSteps;
  while (most >= 1 && corners.length < mostCorners) {
    const otherSteps = await fewestSteps(other, one.widely(garment, most), fits);
    if (otherSteps === undefined) break;
    const steps = await fewestSteps({ ...one, mostSteps: most }, other.widely(garment, otherSteps), fits);
    if (steps === undefined) break;
    const cost = steps * one.costPerStep + otherSteps * other.costPerStep;
    corners.push({ steps, otherSteps, cost });
    most = steps - 1;
  }
  return corners.sort((a, b) => a.cost - b.cost);
}

type Given = readonly [way: Way, steps: number, giving: Giving];

/** A change that has been made in the file's text and lets it fit; undefined where it does not. */
async function admitting(
  { source, name, beside, garment, fits }: Unfitting,
  given: readonly Given[],
): Promise<LeastChange | undefined> {
  if (!(await fits(given.reduce((one, [, , { give }]) => give(one), garment)))) return undefined;
  const made = given.flatMap(([, , { change }]) => (isRefused(change) ? [] : [change]));
  if (made.length < given.length) return undefined;
  const edits = inOrder(made.flatMap((change) => change.edits));
  const edited = applyEdits(source, edits);
  if (!("text" in edited)) return undefined;
  const read = readSource(edited.text, name, beside).garment;
  if (!read || !(await fits(read))) return undefined;
  const cost = given.reduce((sum, [way, steps]) => sum + steps * way.costPerStep, 0);
  return {
    edits,
    words: made.map(({ words }) => words).join("; and "),
    cost: Number(cost.toFixed(6)),
    given: given.map(([{ rule }, steps]) => ({ rule, steps })),
  };
}

/** What is taken out of a list goes last and from its end, so that the places of the others stay what they are. */
const inOrder = (edits: readonly Edit[]): readonly Edit[] => [
  ...edits.filter((edit) => !("remove" in edit)),
  ...edits.filter((edit) => "remove" in edit).sort((a, b) => Number(b.path.at(-1)) - Number(a.path.at(-1))),
];
