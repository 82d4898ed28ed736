import type { Garment, Placement } from "../../garment/garment.ts";
import { partOf } from "../../safety/body-part.ts";
import { CORD_LIMITS } from "../../safety/cord-limits.ts";
import type { Fit, FittedPlacement } from "../fit.ts";
import { type Breach, breach } from "./breach.ts";
import { walk } from "./walk.ts";

/** For a child: no cord where none may lie, and no loop between two hangings that is longer round than allowed. */
export function checkWearer(garment: Garment, fit: Fit): readonly Breach[] {
  const age = garment.wearer?.ageYears;
  const tall = garment.wearer?.heightMm;
  const { young, older, loopMm } = CORD_LIMITS;
  if (age !== undefined && age > older.years) return [];
  const isYoung = (age !== undefined && age <= young.years) || (tall !== undefined && tall <= young.heightMm);
  const isChild = age !== undefined || (tall !== undefined && tall <= older.heightMm);
  return fit.placements.flatMap((fitted) => {
    const placement = garment.placements[fitted.index]!;
    const neck = nearNeck(garment, placement);
    const where = `${fitted.motif} on ${fitted.piece}`;
    if (!isCord(fit, fitted)) return [];
    const breaches: Breach[] = [];
    if (isYoung && neck === "never") breaches.push(breach(where, "no cord may lie there for a young child"));
    if (isYoung || (isChild && neck !== "away"))
      for (const [row, round] of loopsOf(garment, fitted))
        if (round > loopMm + tolerance)
          breaches.push(
            breach(where, `the loop up to row ${row} is ${round} mm round, ${loopMm} are allowed`),
          );
    return breaches;
  });
}

/** A thousandth of a millimetre: far below what can be measured, far above what the sums lose. */
const tolerance = 0.001;

const isCord = (fit: Fit, { motif }: FittedPlacement): boolean =>
  fit.looks.some((look) => look.motif.name === motif && look.motif.kind === "cord");

/** "never": no cord at all may lie so for a young child; "near": at the neck, where loops are short. */
function nearNeck(garment: Garment, placement: Placement): "away" | "near" | "never" {
  const piece = garment.pieces.find(({ name }) => name === placement.piece)!;
  const { part } = partOf(piece);
  if (part === "hood" || part === "collar") return "never";
  const opening = piece.neck.length > 0 ? piece.neck[0]!.heightMm : undefined;
  const shoulder = part === "back" || part === "front" ? piece.outline.at(-1)!.heightMm : undefined;
  const neck = opening ?? shoulder;
  const upTo = piece.marks.find(({ name }) => name === placement.to)!.heightMm;
  if (neck === undefined || neck - upTo >= CORD_LIMITS.neckMm) return "away";
  return part === "back" ? "never" : "near";
}

/** Every stretch between two hangings: the row it ends at, and how far it is round cord and cloth, in mm. */
function loopsOf(
  garment: Garment,
  { sections, part }: FittedPlacement,
): readonly (readonly [number, number])[] {
  const { ground, cord } = garment.gauge;
  const [first] = sections;
  if (!first || !cord) return [];
  // What is worked in part is of one repeat more.
  const runs = sections.map(({ look: { values }, repeats }, index) => ({
    values,
    repeats: repeats + (part && index === sections.length - 1 ? 1 : 0),
  }));
  return walk(first.look.motif, runs).strands.flatMap(({ points }) =>
    points.slice(1).map((to, index) => {
      const from = points[index]!;
      const needles = Math.abs(from.from - to.from);
      const rows = to.row - from.row;
      const { look, joins } = sections[to.run]!;
      // A stretch without a count is a breach of the look's own.
      const counted = [...look.segments, ...joins].find(
        ({ fixed, ...segment }) => segment.needles === needles && segment.rows === rows && fixed === to.count,
      );
      const across = (needles * ground.overMm) / ground.stitches;
      const up = (rows * ground.overMm) / ground.rows;
      const round =
        ((counted?.pickup ?? 0) * cord.overMm) / cord.stitches + Math.sqrt(across * across + up * up);
      return [to.row, round] as const;
    }),
  );
}
