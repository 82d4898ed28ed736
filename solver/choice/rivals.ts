import type { Engine, EngineOptions } from "../program.ts";
import type { ChoiceProgram, NoPicks, Picks, Rivals } from "./choice-program.ts";
import { type IndexedChoice, indexChoice, undominated } from "./indexed-choice.ts";
import { solveRestricted } from "./solve-restricted.ts";

/**
 * Rivals are put in order by their cost rounded to this, and by their picks where that is the same: engines work to
 * about 1e-7, so a finer difference says nothing about which of two is cheaper.
 */
const COST_GRAIN = 1e-6;

/**
 * A set of picks and its cheapest member. The set: in the groups before `branch` the member's faces, in `branch` a
 * face that is not in `forbidden`, in the later groups anything.
 */
interface Subproblem {
  readonly branch: number;
  readonly forbidden: ReadonlySet<number>;
  readonly picks: Picks;
}

export interface RivalOptions extends Pick<EngineOptions, "timeLimitMs" | "signal"> {
  /** Told at the start and after each rival how many are found. */
  readonly onFound?: (found: number) => void;
}

/**
 * The `count` next best picks after `first`, in rising cost, no two of which (nor any of them and `first`) show the
 * same face in every group.
 *
 * Exact by a partition (E. L. Lawler 1972, after K. G. Murty 1968), applied to faces. What differs from given
 * picks in some face falls into disjoint sets, one for each group i: the picks that show the same faces in the
 * groups before i and another face in group i. Each set's cheapest member is found by the engine. The cheapest of
 * these members is the next rival: every way to pick that shows no vector of faces used so far is in one of the
 * sets, and none of its set is cheaper. The rival's own set, without its vector of faces, is partitioned in the same
 * manner, and so on. A vector of faces lies wholly in one set, so it first turns up with its cheapest picks.
 *
 * A set is described by leaving options out of the groups, never by another row, so a tree of choices stays one and
 * its relaxation whole; and options that the restriction frees from domination are considered again.
 *
 * @throws RangeError where a term names a row that is not there or a number is not finite
 */
export async function rivals(
  choice: ChoiceProgram,
  first: Picks,
  count: number,
  engine: Engine,
  options: RivalOptions = {},
): Promise<Rivals> {
  const indexed = indexChoice(choice);
  const keepers = indexed.groups.map(keeperOf);
  const deadline = options.timeLimitMs === undefined ? undefined : Date.now() + options.timeLimitMs;

  const open: Subproblem[] = [];
  const list: Picks[] = [];
  let nodes = 0;
  let note: string | undefined;
  // Below this no rival is certain to be the next, because a subproblem that was given up may hide a cheaper one.
  let certainBelow = Number.POSITIVE_INFINITY;

  const partition = async ({ branch, forbidden, picks: parent }: Subproblem): Promise<void> => {
    const faces = parent.picks.map((option, group) => indexed.groups[group]!.faces[option]!);
    const children = indexed.groups.slice(branch).map((_, offset) => {
      const at = branch + offset;
      return { branch: at, forbidden: new Set([...(offset === 0 ? forbidden : []), faces[at]!]) };
    });
    const timeLimitMs = deadline === undefined ? undefined : deadline - Date.now();
    const solved = await Promise.all(
      children.map(async (child): Promise<Picks | NoPicks> => {
        if (timeLimitMs !== undefined && timeLimitMs <= 0)
          return { status: "stopped", nodes: 0, engine: parent.engine };
        const kept = keepers.map((keeper, group) =>
          group < child.branch
            ? keeper.showing(faces[group]!)
            : group === child.branch
              ? keeper.notShowing(child.forbidden)
              : keeper.any,
        );
        return solveRestricted(indexed, kept, engine, {
          ...(timeLimitMs !== undefined && { timeLimitMs }),
          ...(options.signal !== undefined && { signal: options.signal }),
        });
      }),
    );
    solved.forEach((answer, index) => {
      nodes += "nodes" in answer ? answer.nodes : 0;
      note ??= answer.status === "failed" ? answer.reason : answer.note;
      if (answer.status === "picked") open.push({ ...children[index]!, picks: answer });
      if (answer.status === "infeasible" || (answer.status === "picked" && answer.proven)) return;
      // What is known of a set that was given up: nothing of it is cheaper than the set it was cut from.
      const known = answer.status === "picked" ? answer.bound : Number.NEGATIVE_INFINITY;
      certainBelow = Math.min(certainBelow, Math.max(known, parent.bound));
    });
    open.sort(byCostThenPicks);
  };

  options.onFound?.(0);
  if (count > 0) await partition({ branch: 0, forbidden: new Set(), picks: first });
  while (list.length < count) {
    const next = open.shift();
    if (next === undefined) break;
    const { cost, bound } = next.picks;
    const proven = next.picks.proven && cost <= certainBelow;
    list.push({ ...next.picks, proven, bound: Math.min(bound, certainBelow) });
    options.onFound?.(list.length);
    if (list.length < count) await partition(next);
  }
  const proven = list.every((rival) => rival.proven) && (list.length === count || certainBelow === Infinity);
  return { list, proven, nodes, ...(note === undefined ? {} : { note }) };
}

const grain = (cost: number): number => Math.round(cost / COST_GRAIN);

function byCostThenPicks({ picks: a }: Subproblem, { picks: b }: Subproblem): number {
  const byCost = grain(a.cost) - grain(b.cost);
  if (byCost !== 0) return byCost;
  const at = a.picks.findIndex((option, group) => option !== b.picks[group]);
  return at < 0 ? 0 : a.picks[at]! - b.picks[at]!;
}

/** The undominated options of a group under each kind of restriction; what comes back again is kept. */
function keeperOf(group: IndexedChoice["groups"][number]) {
  const byFace = new Map<number, readonly number[]>();
  return {
    any: undominated(group, () => true),
    showing(face: number): readonly number[] {
      const known = byFace.get(face) ?? undominated(group, (option) => group.faces[option] === face);
      byFace.set(face, known);
      return known;
    },
    notShowing: (faces: ReadonlySet<number>): readonly number[] =>
      undominated(group, (option) => !faces.has(group.faces[option]!)),
  };
}
