import { beforeAll, describe, expect, test } from "vitest";
import { cordsOf } from "../../../../src/cord/cord.ts";
import { WorkEnded, within } from "../../../../src/fit/allowance.ts";
import type { Candidate, Room } from "../../../../src/fit/candidates.ts";
import {
  createCandidatesByCord,
  growingCandidates,
  unsurpassedCandidates,
} from "../../../../src/fit/growth/growing-candidates.ts";
import type { Track } from "../../../../src/fit/growth/tracks.ts";
import type { Look } from "../../../../src/fit/looks.ts";
import { anyFrom } from "../../../../src/garment/allowed.ts";
import { roomIn, type Wedge, wedge } from "../../../support/growing-wedge.ts";
import { withClock } from "../../../support/own-clock.ts";

/** One way to fill a room, worked out by trying everything. */
interface Way {
  readonly repeats: number;
  readonly bottom: number;
  readonly path: readonly number[];
  /** Means over the repeats. */
  readonly ease: number;
  readonly away: number;
  readonly cost: number;
  readonly cord: number;
}

/** What the neck leaves: the lowest row above which nothing may cross the centre; none where it is infinite. */
const neckRow = ({ pieces }: Room): number => pieces[0]!.piece.neck?.row ?? Number.POSITIVE_INFINITY;

/** Whether a motif that reaches so far to both sides has room on all of some rows. */
function hasRoom(room: Room, side: number, reach: number, first: number, last: number): boolean {
  return room.pieces.every(({ piece, fromRow }) => {
    for (let row = fromRow + first; row <= fromRow + last; row++)
      if (piece.left[row]! - reach < side || piece.right[row]! - reach < side || row > neckRow(room))
        return false;
    return true;
  });
}

/**
 * Every way to lay the plait: rows of the lead-in are the interval, of a repeat twice that, both spreads of a step need
 * room, one may be a needle from the other; costs as in the default weights.
 *
 * @param side needles to be left at either side
 */
function everyWay(room: Room, track: Track, side: number): readonly Way[] {
  const interval = track.footing.leadRows;
  const spreads = track.looks.map(({ values }) => values.get("spread")!);
  const ways: Way[] = [];
  for (let repeats = 1; interval + 2 * interval * repeats <= room.rows; repeats++) {
    const spare = room.rows - interval - 2 * interval * repeats;
    for (let bottom = 0; bottom <= 6 && bottom <= spare; bottom++) {
      if (spare - bottom > 6) continue;
      let paths: readonly (readonly number[])[] = [[]];
      for (let repeat = 0; repeat < repeats; repeat++) {
        const first = bottom + (repeat === 0 ? 0 : interval * (2 * repeat + 1));
        const last = bottom + interval * (2 * repeat + 3);
        paths = paths.flatMap((path) =>
          spreads.flatMap((spread, to) => {
            const before = spreads[path.at(-1) ?? to]!;
            const reach = Math.max(spread, before);
            return Math.abs(spread - before) <= 1 && hasRoom(room, side, reach, first, last)
              ? [[...path, to]]
              : [];
          }),
        );
      }
      for (const path of paths) {
        const steps = path.map((to, repeat) => {
          const [look, before] = [track.looks[to]!, track.looks[path[repeat - 1] ?? to]!];
          return { look, ...track.stepTo(look, before)! };
        });
        const mean = (of: (step: (typeof steps)[number]) => number): number =>
          steps.reduce((sum, step) => sum + of(step), 0) / repeats;
        const [ease, away] = [mean(({ easeAway }) => easeAway), mean((step) => step.away)];
        const [cord] = cordsOf(steps.map(({ look, joins }) => ({ look, repeats: 1, joins })));
        const cost = 0.5 * Math.abs(2 * bottom - spare) + ease + 1.2 * away;
        ways.push({ repeats, bottom, path, ease, away, cost, cord: cord!.used });
      }
    }
  }
  return ways;
}

const rounded = (value: number): number => Number(value.toFixed(9));

const rising = (values: readonly number[]): readonly number[] => values.map(rounded).sort((a, b) => a - b);

/** The looks of a candidate by their index in the track, repeat by repeat. */
const pathOf = ({ growth }: Candidate, { looks }: Track): readonly number[] =>
  growth!.sections.flatMap(({ look, repeats }) =>
    Array.from({ length: repeats }, () => looks.indexOf(look as Look)),
  );

const amountOf = ({ growth }: Candidate, term: string): number =>
  growth!.terms.find((one) => one.term === term)?.amount ?? 0;

const easeAndAway = (candidate: Candidate): string =>
  [amountOf(candidate, "ease"), amountOf(candidate, "spread")].map(rounded).join();

const repeatsOf = (ways: readonly { readonly repeats: number }[]): readonly number[] =>
  [...new Set(ways.map(({ repeats }) => repeats))].sort((a, b) => a - b);

/** Each candidate is one of the ways that trying everything finds, and says of it what is so. */
function expectAmong(candidates: readonly Candidate[], ways: readonly Way[], room: Room, track: Track): void {
  for (const candidate of candidates) {
    const path = pathOf(candidate, track);
    const way = ways.find(
      ({ repeats, bottom, path: own }) =>
        repeats === candidate.repeats && bottom === candidate.bottom && own.join() === path.join(),
    );
    expect(way, `${candidate.bottom}: ${path.join()}`).toBeDefined();
    expect(candidate.cost).toBeCloseTo(way!.cost, 9);
    expect(easeAndAway(candidate)).toBe([way!.ease, way!.away].map(rounded).join());
    const interval = track.footing.leadRows;
    expect(candidate).toMatchObject({
      top: room.rows - interval * (1 + 2 * way!.repeats) - way!.bottom,
      shift: 0,
      change: room.change,
      columns: 1,
      gap: 0,
      place: { repeats: way!.repeats, footing: track.footing },
    });
  }
}

let usual: Wedge;
let track: Track;
let room: Room;
let ways: readonly Way[];
beforeAll(() => {
  usual = wedge();
  track = usual.tracks[0]!;
  room = roomIn(usual, track);
  ways = everyWay(room, track, 4);
});

/** The same room with a row at which the motif has to stand as another does, so that each way it can stand is wanted. */
const matched = (): Room => ({ ...room, field: { ...room.field, matchedRows: [room.field.fromRow + 9] } });

describe("a motif that grows on a wedge", () => {
  test("has several numbers of repeats, margins and ways to choose from", () => {
    expect(repeatsOf(ways)).toEqual([2, 3]);
    expect(new Set(ways.map(({ bottom }) => bottom)).size).toBeGreaterThan(2);
    expect(ways.length).toBeGreaterThan(20);
    expect(new Set(ways.map(({ path }) => path.join())).size).toBeGreaterThan(10);
  });

  test.each([1, 3, 6])("is laid in the %d cheapest ways for each number of repeats", (keep) => {
    const found = growingCandidates(room, track, keep);
    expectAmong(found, ways, room, track);
    for (const repeats of [2, 3]) {
      const costs = (all: readonly { readonly repeats: number; readonly cost: number }[]) =>
        rising(all.filter((one) => one.repeats === repeats).map(({ cost }) => cost)).slice(0, keep);
      expect(costs(found)).toEqual(costs(ways));
    }
  });

  test("comes in rising order of cost for one number of repeats", () => {
    for (const repeats of [2, 3]) {
      const costs = growingCandidates(room, track, 4)
        .filter((one) => one.repeats === repeats)
        .map(({ cost }) => cost);
      expect(costs).toEqual([...costs].sort((a, b) => a - b));
    }
  });

  test("is not laid where its margins alone cost more than as many ways as are wanted", () => {
    for (const keep of [1, 2, 6]) {
      const found = growingCandidates(room, track, keep).filter(({ repeats }) => repeats === 2);
      const dearest = found[keep - 1]!.cost;
      for (const { bottom, top } of found) expect(0.5 * Math.abs(bottom - top)).toBeLessThanOrEqual(dearest);
    }
    // At 5 a row of balance two rows more on one side cost 10, and more than any way gives up.
    const balanced = { ...room, weights: { balance: 5 } };
    for (const keep of [1, 2, 6]) {
      const found = growingCandidates(balanced, track, keep).filter(({ repeats }) => repeats === 2);
      expect(found.map(({ bottom, top }) => bottom - top)).toEqual(Array.from({ length: keep }, () => 0));
    }
  });

  test("is laid at every margin where it has to stand as another motif does", () => {
    const found = growingCandidates({ ...matched(), weights: { balance: 5 } }, track, 1);
    const standing = (all: readonly { readonly repeats: number; readonly bottom: number }[]) =>
      [...new Set(all.map(({ repeats, bottom }) => `${repeats} ${bottom}`))].sort();
    expect(standing(found)).toEqual(standing(ways));
    for (const { phases } of found) expect(phases).toHaveLength(1);
  });

  test("has repeats alike in one section, joined to the one below", () => {
    const found = growingCandidates(room, track, 6);
    expect(found.some(({ growth }) => growth!.sections.some(({ repeats }) => repeats > 1))).toBe(true);
    expect(found.some(({ growth }) => growth!.sections.length > 1)).toBe(true);
    for (const { growth } of found)
      growth!.sections.forEach(({ look, joins }, index, sections) => {
        const below = sections[index - 1]?.look ?? look;
        expect(below === look).toBe(index === 0);
        expect(joins).toEqual(track.stepTo(look as Look, below as Look)!.joins);
      });
  });

  test("tells what it gives up under its own names", () => {
    for (const { growth } of growingCandidates(room, track, 6))
      for (const { term, unit, motif, amount } of growth!.terms) {
        expect([term, unit, motif]).toEqual(
          term === "ease" ? ["ease", "percentage points", "plait"] : ["spread", "needles", "plait"],
        );
        expect(amount).toBeGreaterThan(0);
      }
  });

  test("needs room on the widest and on the narrowest of the pieces that it may stand on", () => {
    const narrow = roomIn(
      wedge({ outline: "[{ height: 0 cm, width: 8 cm }, { height: 12 cm, width: 9 cm }]" }),
      track,
    );
    const both = { ...room, pieces: [...room.pieces, ...narrow.pieces] };
    const fewer = everyWay(both, track, 4);
    expect(fewer.length).toBeGreaterThan(0);
    expect(fewer.length).toBeLessThan(ways.length);
    const found = growingCandidates(both, track, 1000);
    expectAmong(found, fewer, both, track);
    expect(found).toHaveLength(fewer.length);
  });

  test("clears the neck", () => {
    const { piece, fromRow } = room.pieces[0]!;
    const halves = Array.from({ length: 31 }, () => 1);
    const necked = {
      ...room,
      pieces: [{ piece: { ...piece, neck: { row: 27, left: halves, right: halves } }, fromRow }],
    };
    const lower = everyWay(necked, track, 4);
    expect(lower.length).toBeGreaterThan(0);
    expect(lower.length).toBeLessThan(ways.length);
    expect(growingCandidates(necked, track, 1000)).toHaveLength(lower.length);
  });

  test.each([
    ["left", 12],
    ["right", 13],
  ] as const)("needs room at the %s by itself", (side, needles) => {
    const { piece, fromRow } = room.pieces[0]!;
    const least = piece[side].map((own) => Math.min(own, needles - 4));
    const slanted = { ...room, pieces: [{ piece: { ...piece, [side]: least }, fromRow }] };
    const fewer = everyWay(slanted, track, 4);
    expect(fewer.length).toBeGreaterThan(0);
    expect(growingCandidates(slanted, track, 1000)).toHaveLength(fewer.length);
  });

  test("needs no more than its own width where the sides are free", () => {
    const { placement } = room.field;
    const sides = { kind: "free", left: anyFrom(9), right: anyFrom(9) } as const;
    const free = {
      ...room,
      field: { ...room.field, placement: { ...placement, margins: { ...placement.margins, sides } } },
    };
    expect(growingCandidates(free, track, 10_000)).toHaveLength(everyWay(room, track, 0).length);
  });

  test("stands where fields below have moved its piece's rows", () => {
    const { piece, fromRow } = room.pieces[0]!;
    const longer = (side: readonly number[]) => [0, 0, 0, ...side];
    const moved = {
      ...room,
      pieces: [
        { piece: { ...piece, left: longer(piece.left), right: longer(piece.right) }, fromRow: fromRow + 3 },
      ],
    };
    expect(growingCandidates(moved, track, 1000)).toHaveLength(ways.length);
  });

  test("asks at every step whether there is time to go on", () => {
    // A clock that moves by a millisecond whenever it is looked at: seven margins, but hundreds of steps.
    withClock(1, () => {
      expect(() => within(100, () => growingCandidates(matched(), track, 1))).toThrow(WorkEnded);
      expect(() => within(100_000, () => growingCandidates(matched(), track, 1))).not.toThrow();
    });
  });
});

/** Those that no other is at least as good as in both, and better in one. */
function unsurpassed(all: readonly Way[]): readonly string[] {
  const better = (one: number, other: number): boolean => one < other - 1e-9;
  const kept = all.filter(
    ({ ease, away }) =>
      !all.some(
        (one) =>
          !better(ease, one.ease) &&
          !better(away, one.away) &&
          (better(one.ease, ease) || better(one.away, away)),
      ),
  );
  return [...new Set(kept.map(({ ease, away }) => [ease, away].map(rounded).join()))].sort();
}

describe("where ease and spread may be weighed in any manner", () => {
  test("at each margin just those ways are made that none surpasses", () => {
    const found = unsurpassedCandidates(room, track);
    expectAmong(found, ways, room, track);
    for (const repeats of [2, 3])
      for (let bottom = 0; bottom <= 6; bottom++) {
        const here = <One extends { readonly repeats: number; readonly bottom: number }>(
          all: readonly One[],
        ) => all.filter((one) => one.repeats === repeats && one.bottom === bottom);
        expect([...new Set(here(found).map(easeAndAway))].sort()).toEqual(unsurpassed(here(ways)));
      }
  });

  test("the ways are worked out once for all margins that leave the same looks room", () => {
    const straight = wedge({ outline: "[{ height: 0 cm, width: 14 cm }, { height: 12 cm, width: 14 cm }]" });
    const found = unsurpassedCandidates(roomIn(straight, straight.tracks[0]!), straight.tracks[0]!).filter(
      ({ repeats }) => repeats === 3,
    );
    expect(new Set(found.map(({ bottom }) => bottom)).size).toBe(3);
    expect(new Set(found.map(({ growth }) => growth)).size).toBe(found.length / 3);
  });
});

describe("where the cord is read", () => {
  const usual = { lessIsBetter: true, everyTerm: false, anyCost: false };

  const byCord = (keep: number, reading = usual, where: Room = room): readonly Candidate[] =>
    createCandidatesByCord(track, keep, reading)(where);

  const cordOf = ({ growth }: Candidate): number => cordsOf(growth!.sections)[0]!.used;

  interface Told {
    readonly path: readonly number[];
    readonly cost: number;
    readonly cord: number;
  }

  /** The cheapest few costs of the ways that take so much cord, each where its margins are most balanced. */
  const cheapest = (
    all: readonly Told[],
    takes: (cord: number) => boolean,
    keep: number,
  ): readonly number[] => {
    const byPath = new Map<string, number>();
    for (const { path, cost, cord } of all)
      if (takes(cord)) byPath.set(path.join(), Math.min(cost, byPath.get(path.join()) ?? cost));
    return rising([...byPath.values()]).slice(0, keep);
  };

  const withCord = (all: readonly Candidate[]) =>
    all.map((one) => ({ ...one, path: pathOf(one, track), cord: cordOf(one) }));

  const of = <One extends { readonly repeats: number }>(all: readonly One[], repeats: number) =>
    all.filter((one) => one.repeats === repeats);

  test.each([1, 2])("the %d cheapest within any amount of it are made", (keep) => {
    const found = withCord(byCord(keep));
    expectAmong(found, ways, room, track);
    for (const repeats of [2, 3])
      for (const { cord } of of(ways, repeats)) {
        const within = (one: number): boolean => one <= cord;
        expect(cheapest(of(found, repeats), within, keep)).toEqual(cheapest(of(ways, repeats), within, keep));
      }
  });

  test.each([1, 2])("the %d cheapest with any amount of it are made where less is not better", (keep) => {
    const found = withCord(byCord(keep, { ...usual, lessIsBetter: false }));
    expectAmong(found, ways, room, track);
    for (const repeats of [2, 3])
      for (const { cord } of of(ways, repeats)) {
        const alike = (one: number): boolean => one === cord;
        expect(cheapest(of(found, repeats), alike, keep)).toEqual(cheapest(of(ways, repeats), alike, keep));
      }
  });

  test.each([true, false])("each tells what its cord takes, less of it better: %s", (lessIsBetter) => {
    for (const everyTerm of [true, false])
      for (const one of byCord(2, { lessIsBetter, everyTerm, anyCost: false }))
        expect(one.growth!.used).toEqual([cordOf(one)]);
  });

  test("what is nearest in any manner to weigh ease and spread is made for any amount and at every margin", () => {
    const found = withCord(byCord(1, { ...usual, everyTerm: true }));
    expectAmong(found, ways, room, track);
    const least = (
      all: readonly { readonly cord: number; readonly ease: number; readonly away: number }[],
      most: number,
      weight: number,
    ): number =>
      Math.min(...all.filter(({ cord }) => cord <= most).map(({ ease, away }) => ease + weight * away));
    const told = found.map((one) => ({
      ...one,
      ease: amountOf(one, "ease"),
      away: amountOf(one, "spread"),
    }));
    for (const repeats of [2, 3])
      for (let bottom = 0; bottom <= 6; bottom++) {
        const own = of(ways, repeats).filter((one) => one.bottom === bottom);
        const made = of(told, repeats).filter((one) => one.bottom === bottom);
        for (const most of new Set(own.map(({ cord }) => cord)))
          for (const weight of [0.01, 0.5, 3, 100])
            expect(least(made, most, weight)).toBeCloseTo(least(own, most, weight), 9);
      }
  });

  test("where any cost will do, what takes least is enough", () => {
    const found = withCord(byCord(1, { ...usual, anyCost: true }));
    for (const repeats of [2, 3]) {
      const least = (all: readonly { readonly cord: number }[]): number =>
        Math.min(...all.map(({ cord }) => cord));
      expect(least(of(found, repeats))).toBe(least(of(ways, repeats)));
    }
    expect(found.length).toBeLessThan(withCord(byCord(1)).length);
  });

  test("a margin that leaves no more room than a more balanced one offers nothing new", () => {
    const straight = wedge({ outline: "[{ height: 0 cm, width: 14 cm }, { height: 12 cm, width: 14 cm }]" });
    const same = roomIn(straight, straight.tracks[0]!);
    const bottoms = (all: readonly Candidate[]) => new Set(of(all, 3).map(({ bottom }) => bottom));
    expect(bottoms(byCord(1, usual, same))).toEqual(new Set([1]));
    expect(bottoms(byCord(1, { ...usual, everyTerm: true }, same))).toEqual(new Set([0, 1, 2]));
    // Where the piece is wider from row 18 on, two repeats from row 6 have more room in the second, rows 18 to 26.
    const { piece, fromRow } = room.pieces[0]!;
    const stepped = piece.left.map((_, row) => (row < 18 ? 9 : 14));
    const wider = { ...room, pieces: [{ piece: { ...piece, left: stepped, right: stepped }, fromRow }] };
    const upward = new Set(of(byCord(1, usual, wider), 2).map(({ bottom }) => bottom));
    expect(upward).toEqual(new Set([5, 6]));
  });

  test("every way to stand at a matched row is made", () => {
    const phases = (all: readonly Candidate[]) => new Set(of(all, 2).map((one) => one.phases.join()));
    const bottoms = new Set(of(ways, 2).map(({ bottom }) => bottom % 8));
    expect(phases(byCord(1, usual, matched())).size).toBe(bottoms.size);
  });

  test("the ways are worked out once for all rooms in which the same looks have room", () => {
    const make = createCandidatesByCord(track, 1, usual);
    const growths = (where: Room) => make(where).map(({ growth }) => growth);
    const again = growths({ ...room, change: 0 });
    expect(again.length).toBeGreaterThan(1);
    growths(room).forEach((growth, index) => {
      expect(growth).toBe(again[index]);
    });
  });
});
