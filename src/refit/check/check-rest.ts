import { type Breach, breach } from "../../fit/check/breach.ts";
import { checkLook, checkStretches, checkValues } from "../../fit/check/check-look.ts";
import { walk } from "../../fit/check/walk.ts";
import type { Fit, FittedLook, FittedPlacement, FittedSection } from "../../fit/fit.ts";

/**
 * What is new of a placement: repeats that add up, a look that is the motif's and allowed, taken up where the strands
 * stand, and every new stretch counted with its ease in limits at the gauge as measured.
 */
export function checkRest(before: Fit, now: Fit, placed: FittedPlacement, row: number): readonly Breach[] {
  const { garment } = now;
  const where = `${placed.motif} on ${placed.piece}`;
  const breaches: Breach[] = [];
  const inAll = placed.sections.reduce((sum, { repeats }) => sum + repeats, 0);
  if (inAll !== placed.repeats)
    breaches.push(breach(where, `${placed.repeats} repeats are told, its sections have ${inAll}`));
  const told = now.looks.find(({ motif }) => motif.name === placed.motif);
  if (!told) return [...breaches, breach(where, "its look is missing")];
  const was = before.placements.find(({ index }) => index === placed.index)!;
  if (was.firstRow > row) {
    if (placed.sections.length !== 1 || placed.sections[0]!.look !== told)
      breaches.push(breach(where, "is not worked in the look that is told"));
    if (placed.firstRow <= row)
      breaches.push(breach(where, `begins at row ${placed.firstRow}, which is knitted`));
    const leadIn = walk(told.motif, [{ values: told.values, repeats: 0 }]).rows;
    return [
      ...breaches,
      ...checkLook(garment, told),
      ...checkMeetings(now, placed, placed.firstRow + leadIn, where),
    ];
  }
  const fresh = freshFrom(was, placed.sections);
  if (was.lastRow <= row && fresh < placed.sections.length)
    breaches.push(breach(where, "goes on although its cords are fastened"));
  const endOfBegun = placed.firstRow + rowsOf(placed.sections.slice(0, fresh));
  if (endOfBegun < Math.min(row, was.lastRow))
    breaches.push(breach(where, `changes at row ${endOfBegun}, which is knitted`));
  placed.sections.slice(fresh).forEach(({ look, repeats }, index) => {
    if (look !== told || look.motif !== told.motif)
      breaches.push(breach(where, "goes on in another look than is told"));
    if (repeats < 1) breaches.push(breach(where, "has a section of no repeat"));
    breaches.push(...checkValues(look));
    const below = placed.sections[fresh + index - 1];
    if (!below) breaches.push(breach(where, "does not begin as it was begun"));
    else if (standing(below.look) !== standing(look))
      breaches.push(breach(where, "its strands stand elsewhere than the new look takes them up"));
  });
  if (was.lastRow > row) breaches.push(...checkMeetings(now, placed, endOfBegun, where));
  if (told.motif.kind === "cord")
    breaches.push(...checkStretches(garment, told.motif, placed.sections, (to) => to.run >= fresh));
  return breaches;
}

/** Marks above what was begun are met at the phase that is asked for, counted from the last hanging of a repeat. */
function checkMeetings(
  { garment, pieces }: Fit,
  placed: FittedPlacement,
  endOfBegun: number,
  where: string,
): readonly Breach[] {
  const { motif, values } = placed.sections.at(-1)!.look;
  const repeat = walk(motif, [{ values, repeats: 1 }]).rows - walk(motif, [{ values, repeats: 0 }]).rows;
  return garment.placements[placed.index]!.meet.flatMap(({ mark, at }) => {
    const height = pieces[0]!.marks.get(mark)!;
    if (height < endOfBegun) return [];
    const into = (((height - placed.lastRow) % repeat) + repeat) % repeat;
    const asked = at === "whole" ? 0 : at === "half" ? repeat / 2 : at.rows % repeat;
    return into === asked ? [] : [breach(where, `is ${into} rows into a repeat of ${repeat} at ${mark}`)];
  });
}

/** Index of the first section that was not begun: those before it have the values and counts they were begun with. */
export function freshFrom(was: FittedPlacement, sections: readonly FittedSection[]): number {
  const kept = sections.findIndex(({ look, repeats }, index) => {
    const begun = was.sections[index];
    return !begun || begun.look !== look || begun.repeats < repeats;
  });
  return kept < 0 ? sections.length : kept;
}

const rowsOf = (sections: readonly FittedSection[]): number => {
  const [first] = sections;
  if (!first) return 0;
  const runs = sections.map(({ look: { values }, repeats }) => ({ values, repeats }));
  return walk(first.look.motif, runs).rows;
};

/** Needles on which the strands of a look stand, or cables are crossed, once its lead-in is worked. */
const standing = ({ motif, values }: FittedLook): string =>
  walk(motif, [{ values, repeats: 0 }])
    .strands.map(({ points }) => `${points.at(-1)!.from}..${points.at(-1)!.to}`)
    .sort()
    .join();
