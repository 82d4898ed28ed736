import { goOn } from "../allowance.ts";
import { type Candidate, type Place, type Room, repeatsIn, standingsIn, termsOf } from "../candidates.ts";
import type { FittedSection } from "../fit.ts";
import type { Look } from "../looks.ts";
import type { Rated } from "../on-hand/cheapest-of-each.ts";
import { clearsNeck, narrowest, oneColumn, panelOf } from "../panel.ts";
import { costOf, makeTerm, type Term } from "../terms.ts";
import { type CordOfStep, cordOfSteps } from "./cord-of-steps.ts";
import type { Growth } from "./growth.ts";
import { cheapestPaths } from "./paths.ts";
import { ratedPaths } from "./rated-paths.ts";
import type { Step, Track } from "./tracks.ts";
import { type Amounts, unsurpassedPaths } from "./unsurpassed-paths.ts";

/**
 * Every way to fill a field with a track of a growing motif: for each number of repeats and each bottom margin the
 * cheapest ways through its looks that keep the side margins at every repeat. A motif that grows stands about the
 * middle of its piece in one column.
 */
export function growingCandidates(room: Room, track: Track, keep: number): readonly Candidate[] {
  return repeatsIn(room).flatMap((repeats) => {
    const place = { ...room, repeats };
    const found: Candidate[] = [];
    for (const { bottom, top, phases } of standingsIn(place)) {
      const plain = termsOf(place, bottom, top);
      const dearest = found.length < keep ? Number.POSITIVE_INFINITY : found[keep - 1]!.cost;
      // Later ways to part the spare rows are less balanced still.
      if (costOf(plain) > dearest && phases.length === 0) break;
      for (const growth of growthsAt(room, track, repeats, bottom, keep)) {
        const cost = costOf([...plain, ...growth.terms]);
        found.push({ place, bottom, top, phases, shift: 0, growth, cost, ...sameOf(place) });
      }
      found.sort((a, b) => a.cost - b.cost);
    }
    return found;
  });
}

const sameOf = ({
  change,
  repeats,
  columns,
  gap,
}: Place): Pick<Place, "change" | "repeats" | "columns" | "gap"> => ({
  change,
  repeats,
  columns,
  gap,
});

/**
 * Every way to fill a field with a track of which anything may be the best that weighs its terms in any manner: for
 * each number of repeats and each bottom margin the ways through its looks that no other surpasses in what they give up.
 */
export function unsurpassedCandidates(room: Room, track: Track): readonly Candidate[] {
  return repeatsIn(room).flatMap((repeats) => {
    const place = { ...room, repeats };
    // Most bottom margins leave the same looks room at every repeat.
    const known = new Map<string, readonly Growth[]>();
    return [...standingsIn(place)].flatMap(({ bottom, top, phases }) => {
      const free = freeOver(room, track, bottom, repeats);
      const growths = known.get(free.join()) ?? unsurpassedGrowths(room, track, free);
      known.set(free.join(), growths);
      const plain = termsOf(place, bottom, top);
      return growths.map((growth): Candidate => {
        const cost = costOf([...plain, ...growth.terms]);
        return { place, bottom, top, phases, shift: 0, growth, cost, ...sameOf(place) };
      });
    });
  });
}

/** What is read of the ways through a track, beside what they cost. */
export interface Reading {
  /** Whether less cord is never worse. */
  readonly lessIsBetter: boolean;
  /** Whether ease and the growing quantity may be weighed in any manner, too. */
  readonly everyTerm: boolean;
  /** Whether it makes no difference what they cost. */
  readonly anyCost: boolean;
}

/**
 * Makes every way to fill a field with a track of which anything may be the best, however much cord it may take: for
 * each number of repeats and each bottom margin as many of the cheapest ways through its looks as are wanted, told apart
 * by the cord that they take.
 */
export function createCandidatesByCord(
  track: Track,
  keep: number,
  reading: Reading,
): (room: Room) => readonly Candidate[] {
  const cordOf = cordOfSteps(track);
  // The same looks have room on pieces of many lengths.
  const known = new Map<string, readonly Growth[]>();
  const growthsIn = (room: Room, free: Free): readonly Growth[] => {
    const key = free.join();
    const growths = known.get(key) ?? growthsByCord(room, track, free, keep, reading, cordOf);
    known.set(key, growths);
    return growths;
  };
  return (room) =>
    repeatsIn(room).flatMap((repeats) => {
      const place = { ...room, repeats };
      const tried: { readonly phases: string; readonly free: Free }[] = [];
      return [...standingsIn(place)].flatMap(({ bottom, top, phases }) => {
        const free = freeOver(room, track, bottom, repeats);
        const isTried = tried.some((one) => one.phases === phases.join() && isWithin(free, one.free));
        // Later ways to part the spare rows are less balanced, so what has no more room there offers nothing new.
        if (isTried && !reading.everyTerm) return [];
        tried.push({ phases: phases.join(), free });
        const plain = termsOf(place, bottom, top);
        return growthsIn(room, free).map((growth): Candidate => {
          const cost = costOf([...plain, ...growth.terms]);
          return { place, bottom, top, phases, shift: 0, growth, cost, ...sameOf(place) };
        });
      });
    });
}

const isWithin = (free: Free, other: Free): boolean =>
  free.every((looks, repeat) => looks.every((isFree, look) => !isFree || other[repeat]![look]!));

function growthsByCord(
  room: Room,
  track: Track,
  free: Free,
  keep: number,
  { lessIsBetter, everyTerm, anyCost }: Reading,
  cordOf: CordOfStep,
): readonly Growth[] {
  const repeats = free.length;
  const rate = (repeat: number, to: number, from = to): Rated | undefined => {
    const step = stepAt(track, free, repeat, to, from);
    if (!step) return undefined;
    const cord = cordOf(repeat, to, from);
    return {
      cost: anyCost ? 0 : everyTerm ? step.easeAway : costOf(amountsOf([step], repeats, room, track)),
      least: [...(everyTerm ? [step.away] : []), ...(lessIsBetter ? cord : [])],
      exact: lessIsBetter ? [] : cord,
    };
  };
  return ratedPaths({ repeats, width: track.looks.length, rate }, keep).map(({ steps, least, exact }) => ({
    ...growthOf(steps, room, track),
    used: lessIsBetter ? least.slice(everyTerm ? 1 : 0) : exact,
  }));
}

/** For each repeat which looks have room there. */
type Free = readonly (readonly boolean[])[];

const freeOver = (room: Room, track: Track, bottom: number, repeats: number): Free =>
  Array.from({ length: repeats }, (_, repeat) => freeAt(room, track, bottom, repeat));

function growthsAt(
  room: Room,
  track: Track,
  repeats: number,
  bottom: number,
  keep: number,
): readonly Growth[] {
  const free = freeOver(room, track, bottom, repeats);
  const cost = (repeat: number, to: number, from = to): number => {
    const step = stepAt(track, free, repeat, to, from);
    return step ? costOf(amountsOf([step], repeats, room, track)) : Number.POSITIVE_INFINITY;
  };
  return cheapestPaths({ repeats, width: track.looks.length, cost }, keep).map(({ steps }) =>
    growthOf(steps, room, track),
  );
}

function unsurpassedGrowths(room: Room, track: Track, free: Free): readonly Growth[] {
  const amounts = (repeat: number, to: number, from = to): Amounts | undefined => {
    const step = stepAt(track, free, repeat, to, from);
    return step && [step.easeAway, step.away];
  };
  return unsurpassedPaths({ repeats: free.length, width: track.looks.length, amounts }).map(({ steps }) =>
    growthOf(steps, room, track),
  );
}

/** What it takes to go on at a repeat with one look after another; undefined where there is no room or no way to. */
function stepAt(
  { looks, stepTo }: Track,
  free: Free,
  repeat: number,
  to: number,
  from: number,
): Step | undefined {
  if (!free[repeat]![to] || !free[repeat]![from]) return undefined;
  goOn();
  return stepTo(looks[to]!, looks[from]!);
}

function growthOf(steps: readonly number[], room: Room, track: Track): Growth {
  const path = steps.map((index) => track.looks[index]!);
  const taken = path.map((look, index) => track.stepTo(look, path[index - 1] ?? look)!);
  return { sections: sectionsOf(path, taken), terms: amountsOf(taken, steps.length, room, track) };
}

/** What some steps of so many give up, as parts of the mean over all of them. */
function amountsOf(
  steps: readonly Step[],
  repeats: number,
  { weights }: Room,
  { motif, quantity }: Track,
): readonly Term[] {
  const mean = (of: (step: Step) => number): number =>
    steps.reduce((sum, step) => sum + of(step), 0) / repeats;
  const owner = { motif: motif.name };
  return [
    makeTerm(
      "ease",
      mean(({ easeAway }) => easeAway),
      "percentage points",
      weights,
      owner,
    ),
    makeTerm(
      quantity.name,
      mean(({ away }) => away),
      quantity.unit,
      weights,
      owner,
    ),
  ].filter(({ amount }) => amount > 0);
}

/**
 * Which looks keep the side margins and clear the neck over the rows of a repeat, wherever fields below move it. A repeat
 * that comes from another look reaches as far as both, so both have to.
 */
function freeAt(
  { pieces, field }: Room,
  { looks, footing: { leadRows, repeatRows } }: Track,
  bottom: number,
  repeat: number,
): readonly boolean[] {
  const { sides } = field.placement.margins;
  const least = sides.kind === "centred" ? sides.least : 0;
  const from = repeat === 0 ? 0 : leadRows + repeat * repeatRows;
  const to = leadRows + (repeat + 1) * repeatRows;
  return looks.map(({ trace: { reach } }) =>
    pieces.every(({ piece, fromRow }) => {
      const [first, last] = [fromRow + bottom + from, fromRow + bottom + to];
      const edge = narrowest(piece, first, last);
      return (
        edge.left - reach.left >= least &&
        edge.right - reach.right >= least &&
        clearsNeck(piece, panelOf(oneColumn, reach), first, last)
      );
    }),
  );
}

/** Repeats alike and next to each other are one section. */
function sectionsOf(path: readonly Look[], steps: readonly Step[]): readonly FittedSection[] {
  const sections: FittedSection[] = [];
  path.forEach((look, index) => {
    const last = sections.at(-1);
    if (last?.look === look) sections[sections.length - 1] = { ...last, repeats: last.repeats + 1 };
    else sections.push({ look, repeats: 1, joins: steps[index]!.joins });
  });
  return sections;
}
