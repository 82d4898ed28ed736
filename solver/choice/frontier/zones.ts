import type { Engine, EngineOptions } from "../../program.ts";
import type { ChoiceProgram, NoPicks, Picks } from "../choice-program.ts";
import { type IndexedChoice, indexChoice, undominated } from "../indexed-choice.ts";
import { solveRestricted } from "../solve-restricted.ts";
import { alike, noMore } from "./front.ts";

/** A way to pick that nothing surpasses. */
interface FoundPoint {
  readonly amounts: readonly number[];
  readonly picks: Picks;
}

export interface Searched {
  readonly points: readonly FoundPoint[];
  /** Whether it is certain that there is no other point. */
  readonly complete: boolean;
  readonly nodes: number;
  readonly note?: string;
}

/**
 * What no other way to pick surpasses, found by an engine. The search keeps *zones*, boxes below an upper corner in
 * which something may still be that no point found so far surpasses (K. Klamroth, R. Lacour, D. Vanderpooten, "On
 * the representation of the search region in multi-objective optimization", EJOR 245, 2015; from memory). In a zone
 * the least sum of all amounts is sought: what has it is surpassed by nothing, since that would lie in the zone as
 * well with a smaller sum. Then the cheapest way to have no more of anything is sought. Every zone that the new point
 * lies in is cut into one zone for each amount, below the point in that amount. The zone with no way to pick is done
 * with. Works for any number of amounts.
 *
 * Each measured row's amounts are whole numbers; half of one keeps what is less apart from what is the same.
 */
export async function searchedByZones(
  choice: ChoiceProgram,
  measured: readonly number[],
  engine: Engine,
  options: EngineOptions & { readonly found?: (points: number) => void } = {},
): Promise<Searched> {
  const { found, ...engineOptions } = options;
  const deadline = options.timeLimitMs === undefined ? undefined : Date.now() + options.timeLimitMs;
  const byCost = indexChoice(choice);
  const most = measured.map((row) => greatestTotal(byCost, row));
  const bySum = indexChoice(summed(choice, measured, most));
  const points: FoundPoint[] = [];
  let zones: (readonly number[])[] = [most.map((amount) => amount + 1)];
  let [nodes, note]: [number, string | undefined] = [0, undefined];

  /** The best picks with no more of anything than so much. */
  const solve = async (indexed: IndexedChoice, limits: readonly number[]): Promise<Picks | NoPicks> => {
    const leftMs = deadline === undefined ? undefined : deadline - Date.now();
    if (leftMs !== undefined && leftMs <= 0) return { status: "stopped", nodes: 0, engine: "none" };
    const within = limited(indexed, measured, limits);
    const kept = within.groups.map((group) => undominated(group, () => true));
    const answer = await solveRestricted(within, kept, engine, {
      ...engineOptions,
      ...(leftMs !== undefined && { timeLimitMs: leftMs }),
    });
    nodes += "nodes" in answer ? answer.nodes : 0;
    note ??= answer.status === "failed" ? answer.reason : answer.note;
    return answer;
  };
  const amountsAt = ({ picks }: Picks): readonly number[] =>
    measured.map((row) =>
      picks.reduce(
        (sum, option, group) =>
          sum + (byCost.groups[group]!.terms[option]!.find(([at]) => at === row)?.[1] ?? 0),
        0,
      ),
    );

  for (let zone = zones[0]; zone !== undefined; zone = zones[0]) {
    const lowest = await solve(
      bySum,
      zone.map((amount) => amount - 0.5),
    );
    if (lowest.status === "infeasible") {
      zones = zones.filter((other) => other !== zone);
      continue;
    }
    if (lowest.status !== "picked" || !lowest.proven) break;
    const point = await cheapest(amountsAt(lowest));
    if (!point) break;
    points.push(point);
    found?.(points.length);
    zones = cut(zones, point.amounts);
  }
  const complete = zones.length === 0;
  return { points, complete, nodes, ...(note !== undefined && { note }) };

  /** The cheapest picks that have no more of anything; undefined where the time is up before they are proven. */
  async function cheapest(amounts: readonly number[]): Promise<FoundPoint | undefined> {
    const picks = await solve(
      byCost,
      amounts.map((amount) => amount + 0.5),
    );
    if (picks.status !== "picked" || !picks.proven) return undefined;
    const own = amountsAt(picks);
    // An engine's tolerance may have let a sum pass for the least that was not quite; what has less is better still.
    return alike(own, amounts) ? { amounts, picks } : cheapest(own);
  }
}

/** Every zone that a point lies in, cut below the point in each amount; without those that lie within another. */
function cut(zones: readonly (readonly number[])[], amounts: readonly number[]): (readonly number[])[] {
  const cuts = zones.flatMap((zone) =>
    amounts.every((amount, index) => amount < zone[index]!)
      ? amounts.map((amount, index) => zone.map((corner, at) => (at === index ? amount : corner)))
      : [zone],
  );
  return cuts.filter(
    (zone, at) =>
      !cuts.some(
        (other, index) => index !== at && noMore(zone, other) && (index < at || !alike(zone, other)),
      ),
  );
}

/** The same choices at the cost of their amounts, each as a share of the most there can be of it. */
const summed = (
  choice: ChoiceProgram,
  measured: readonly number[],
  most: readonly number[],
): ChoiceProgram => ({
  ...choice,
  groups: choice.groups.map((group) => ({
    ...group,
    options: group.options.map((option) => ({
      ...option,
      cost: option.terms.reduce((sum, [row, amount]) => {
        const at = measured.indexOf(row);
        return at < 0 ? sum : sum + amount / Math.max(1, Math.abs(most[at]!));
      }, 0),
    })),
  })),
});

const limited = (
  { choice, groups }: IndexedChoice,
  measured: readonly number[],
  limits: readonly number[],
): IndexedChoice => ({
  groups,
  choice: {
    ...choice,
    rows: choice.rows.map((row, index) => {
      const at = measured.indexOf(index);
      return at < 0 ? row : { ...row, bound: Math.min(row.bound, limits[at]!) };
    }),
  },
});

function greatestTotal({ groups }: IndexedChoice, row: number): number {
  return groups.reduce(
    (sum, { terms }) => sum + Math.max(...terms.map((of) => of.find(([at]) => at === row)?.[1] ?? 0)),
    0,
  );
}
