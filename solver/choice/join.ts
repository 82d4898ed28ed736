import type { ChoiceProgram, ChoiceRow, Group, Option } from "./choice-program.ts";

/** A choice program that is solved together with others. */
export interface Member {
  /** Told apart by it in the names of groups and rows. */
  readonly name: string;
  readonly choice: ChoiceProgram;
  /**
   * Its groups that are shared, by their name, which is the same in every member: a key for each option, in the order
   * of the group's list. All members take an option with the same key.
   */
  readonly shared: ReadonlyMap<string, readonly string[]>;
}

export interface Joined {
  readonly choice: ChoiceProgram;
  /** The options that picks of the joined program take in one of the members, by its index. */
  readonly picksOf: (member: number, picks: readonly number[]) => readonly number[];
}

/**
 * Several choice programs as one, whose cost is the sum of theirs.
 *
 * Where the keys of a shared group tell all its options apart in every member, it becomes one group: an option for
 * each key that every member has, with the costs and the terms of all of them. Where they do not, each member keeps a
 * group of its own, and each is tied to the next one's value by value: as many options with a key here as there.
 *
 * A joined program is whole by itself where its members are, as trees of groups that are tied value by value: either
 * way one tree is hung upon the next, by the group they share or by one edge between two groups, and a tree of trees
 * is a tree. (Of such a tree any point of the relaxation is a mean of whole ones: take an option of the first group
 * with its share as the chance of it, then in each neighbour one of those with the same value, by their shares within
 * that value. What comes out keeps every row, and each option comes out as often as its share says.)
 *
 * What is noticed of a choice is what is shared: faces are the keys of shared groups, and blank everywhere else.
 */
export function join(members: readonly Member[]): Joined {
  const rows: ChoiceRow[] = [];
  const offsets = members.map(({ name, choice }) => {
    const offset = rows.length;
    rows.push(...choice.rows.map((row) => ({ ...row, name: `${name}: ${row.name}` })));
    return offset;
  });
  const parts = members.flatMap(({ choice }, member) =>
    choice.groups.map((group, at): Part => ({ member, at, group, offset: offsets[member]! })),
  );
  const groups: Group[] = [];
  const places = members.map((): Place[] => []);
  const put = (
    group: Group,
    whose: readonly { readonly part: Part; readonly options?: readonly number[] }[],
  ) => {
    for (const { part, options } of whose)
      places[part.member]![part.at] = { group: groups.length, ...(options && { options }) };
    groups.push(group);
  };

  const keysOf = ({ member, group }: Part): readonly string[] | undefined =>
    members[member]!.shared.get(group.name);
  const shared = new Map<string, KeyedPart[]>();
  for (const part of parts) {
    const keys = keysOf(part);
    if (keys) shared.set(part.group.name, [...(shared.get(part.group.name) ?? []), { ...part, keys }]);
  }
  for (const [name, alike] of shared) {
    if (alike.every(({ keys }) => new Set(keys).size === keys.length)) {
      const { group, options } = mergedGroup(name, alike);
      put(
        group,
        alike.map((part, index) => ({ part, options: options[index]! })),
      );
    } else for (const { part, group } of chained(members, alike, rows)) put(group, [{ part }]);
  }
  for (const part of parts) {
    if (keysOf(part)) continue;
    const { name, options } = part.group;
    put(
      {
        name: `${members[part.member]!.name}: ${name}`,
        options: options.map((option) => ({ ...moved(option, part.offset), face: "" })),
      },
      [{ part }],
    );
  }
  return {
    choice: { groups, rows },
    picksOf: (member, picks) =>
      places[member]!.map(({ group, options }) => (options ? options[picks[group]!]! : picks[group]!)),
  };
}

/** A group of a member; `offset` is where the member's rows begin among all. */
interface Part {
  readonly member: number;
  readonly at: number;
  readonly group: Group;
  readonly offset: number;
}

interface KeyedPart extends Part {
  readonly keys: readonly string[];
}

/** Where a group of a member is found, and what its options are there, where they have become those of several. */
interface Place {
  readonly group: number;
  readonly options?: readonly number[];
}

const moved = (option: Option, offset: number): Option => ({
  ...option,
  terms: option.terms.map(([row, coefficient]) => [row + offset, coefficient] as const),
});

/** One group of several, and for each of them which of its options each option of the one stands for. */
function mergedGroup(
  name: string,
  parts: readonly KeyedPart[],
): { readonly group: Group; readonly options: readonly (readonly number[])[] } {
  const places = parts.map(({ keys }) => new Map(keys.map((key, option) => [key, option])));
  const common = parts[0]!.keys.filter((key) => places.every((place) => place.has(key)));
  const options = places.map((place) => common.map((key) => place.get(key)!));
  return {
    options,
    group: {
      name,
      options: common.map((key, at): Option => {
        const each = parts.map(({ group, offset }, part) =>
          moved(group.options[options[part]![at]!]!, offset),
        );
        return {
          name: each[0]!.name,
          cost: each.reduce((sum, { cost }) => sum + cost, 0),
          terms: each.flatMap(({ terms }) => terms),
          face: key,
        };
      }),
    },
  };
}

/** Groups that keep apart, each tied to the next by a row for each key. Only the first shows a face: the others follow. */
function chained(
  members: readonly Member[],
  parts: readonly KeyedPart[],
  rows: ChoiceRow[],
): readonly { readonly part: Part; readonly group: Group }[] {
  const ties = parts.slice(1).map(({ member, group, keys }, index) => {
    const before = parts[index]!;
    const between = `${group.name} in ${members[before.member]!.name} and in ${members[member]!.name}`;
    const rowOf = new Map<string, number>();
    for (const key of new Set([...before.keys, ...keys]))
      rowOf.set(key, rows.push({ name: `${between}: ${key}`, relation: "=", bound: 0 }) - 1);
    return rowOf;
  });
  return parts.map((part, index) => ({
    part,
    group: {
      name: `${members[part.member]!.name}: ${part.group.name}`,
      options: part.group.options.map((option, at): Option => {
        const key = part.keys[at]!;
        const tied = [
          [ties[index - 1]?.get(key), -1],
          [ties[index]?.get(key), 1],
        ] as const;
        const own = moved(option, part.offset);
        return {
          ...own,
          terms: [
            ...own.terms,
            ...tied.flatMap(([row, sign]) => (row === undefined ? [] : [[row, sign] as const])),
          ],
          face: index === 0 ? key : "",
        };
      }),
    },
  }));
}
