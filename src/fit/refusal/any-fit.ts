import { best } from "../../../solver/choice.ts";
import type { Engine, EngineOptions } from "../../../solver/program.ts";
import type { Garment, Match } from "../../garment/garment.ts";
import { growingQuantity } from "../../motif/growing-quantity.ts";
import type { Motif } from "../../motif/motif.ts";
import { isForbidden } from "../../safety/cord-rules.ts";
import { within } from "../allowance.ts";
import { enumerate } from "../enumerate.ts";
import { type Field, fieldsOf } from "../field.ts";
import { footingKey, footingOf } from "../footing.ts";
import { type Choices, formulate } from "../formulate.ts";
import { keepsPlainLengths } from "../steady/length.ts";
import { createLasts } from "./lasts.ts";
import { createSomeLook, type SomeLook } from "./possible-looks.ts";
import { createRoom, type Room } from "./room.ts";
import { fitsTied } from "./tied.ts";

/** Whether something fits a garment that differs from a known one in its rules only. */
export type AnyFit = (garment: Garment) => Promise<boolean>;

/** The engine came to no answer: the time was up, or it failed. */
export class Undecided extends Error {
  override readonly name = "Undecided";
}

/**
 * Tells of a garment, and of all that its rules may be turned into, whether anything fits, whatever it costs.
 *
 * Most often no engine is needed: the choices of a motif whose placements are tied to nothing else are a look and,
 * hanging on that look's footing alone, one layout of each placement, so something fits exactly where all of them find
 * room on one footing; and of placements that are tied there are few. What was worked out for a motif or a placement is
 * kept for the next garment in which it is the same.
 *
 * @param limits asked for before each call of the engine
 * @returns a function that throws Undecided where the engine comes to no answer
 */
export function createAnyFit(
  garment: Garment,
  engine: Engine,
  limits: () => EngineOptions = () => ({}),
): AnyFit {
  const someLook = createSomeLook();
  const room = createRoom(garment);
  const lasts = createLasts(room);
  return async (one) => {
    if (one.placements.some((placement) => isForbidden(one, placement)) || !keepsPlainLengths(one))
      return false;
    const doesLast = within(undefined, () => lasts(one));
    if (doesLast !== undefined) return doesLast;
    // What is on hand ties all placements together, and a steady fit asks more than one look or layout can tell.
    if (one.onHand !== undefined || one.steady !== undefined) return fitsByEngine(one, engine, limits());
    const fields = fieldsOf(one);
    for (const group of groupsOf(one)) {
      const isGrowing = group.some((index) => growingQuantity(motifAt(one, index)) !== undefined);
      const fits = isGrowing
        ? await fitsByEngine(only(one, group), engine, limits())
        : hasNoTies(one, group)
          ? within(undefined, () => fitsPlainly(one, group, fields, someLook, room))
          : fitsTied(one, group, fields, someLook, room);
      if (!fits) return false;
    }
    return true;
  };
}

/** Indexes of placements that have to do with one another: by a piece, or by a motif, which those that match share. */
function groupsOf({ placements }: Garment): readonly (readonly number[])[] {
  let groups: (readonly number[])[] = [];
  const tied = (one: number, other: number): boolean =>
    placements[one]!.motif === placements[other]!.motif ||
    placements[one]!.piece === placements[other]!.piece;
  placements.forEach((_, index) => {
    const related = groups.filter((group) => group.some((other) => tied(index, other)));
    groups = [...groups.filter((group) => !related.includes(group)), [...related.flat(), index]];
  });
  return groups;
}

/** Whether the placements of a group have nothing in common but a motif. */
function hasNoTies({ placements, matches }: Garment, group: readonly number[]): boolean {
  const pieces = group.map((index) => placements[index]!.piece);
  return (
    new Set(pieces).size === group.length &&
    !matches.some(({ placements: of }) => of.some((index) => group.includes(index)))
  );
}

/** The motif of a placement, by the placement's index. */
const motifAt = ({ motifs, placements }: Garment, index: number): Motif =>
  motifs.find(({ name }) => name === placements[index]!.motif)!;

function fitsPlainly(
  garment: Garment,
  group: readonly number[],
  fields: readonly Field[],
  someLook: SomeLook,
  room: Room,
): boolean {
  const own = group.map((index) => fields[index]!);
  const motif = motifAt(garment, group[0]!);
  return someLook(
    garment,
    motif,
    (footing) => own.every((field) => room.mayBe(field, footing)),
    (footing) => own.every((field) => room.is(field, footing, garment.bed)),
  );
}

/** The part of a garment that concerns some of its placements. */
function only(garment: Garment, group: readonly number[]): Garment {
  const renumbered = (match: Match): Match => ({
    ...match,
    placements: match.placements.map((index) => group.indexOf(index)),
  });
  return {
    ...garment,
    placements: group.map((index) => garment.placements[index]!),
    matches: garment.matches
      .filter(({ placements }) => placements.some((index) => group.includes(index)))
      .map(renumbered),
  };
}

async function fitsByEngine(garment: Garment, engine: Engine, limits: EngineOptions): Promise<boolean> {
  const choices = enumerate(garment, { fits: 1, anyLayout: true });
  // A motif without a look has no layout either.
  if (choices.layouts.some((layouts) => layouts.length === 0)) return false;
  const everything = garment.placements.map((_, index) => index);
  const isTied = garment.onHand !== undefined || !hasNoTies(garment, everything);
  if (!isTied) return meetsOnFootings(choices);
  const answer = await best(formulate(choices), engine, limits);
  if (answer.status === "picked") return true;
  if (answer.status === "infeasible") return false;
  throw new Undecided(answer.status === "failed" ? answer.reason : "the time allowed was up");
}

/** Whether each motif has a footing on which all of its placements have a layout. */
function meetsOnFootings({ looks, layouts }: Choices): boolean {
  return looks.every((ofMotif) => {
    const { name } = ofMotif[0]!.motif;
    const own = layouts
      .filter(([first]) => first!.field.placement.motif === name)
      .map((ofPlacement) => new Set(ofPlacement.map(({ footing }) => footingKey(footing))));
    return ofMotif.some(({ trace, footing }) => {
      const key = footingKey(footing ?? footingOf(trace));
      return own.every((keys) => keys.has(key));
    });
  });
}
