import type { Garment, Placement } from "../../garment/garment.ts";
import { partOf } from "../../safety/body-part.ts";
import { CORD_LIMITS } from "../../safety/cord-limits.ts";
import type { Fit, FittedPlacement } from "../fit.ts";
import { type Breach, breach } from "./breach.ts";
import { strandsWorked, stretchesOf } from "./stretch.ts";

/** For a child: no cord where none may lie, and no loop between two hangings that is longer round than allowed. */
export function checkWearer(garment: Garment, fit: Fit): readonly Breach[] {
  // Of what is not said, nothing is above or below a limit.
  const { ageYears: age = Number.NaN, heightMm: tall = Number.NaN } = garment.wearer ?? {};
  const { young, older, loopMm } = CORD_LIMITS;
  if (age > older.years) return [];
  const isYoung = age <= young.years || tall <= young.heightMm;
  const isChild = age <= older.years || tall <= older.heightMm;
  return fit.placements.flatMap((fitted) => {
    const placement = garment.placements[fitted.index]!;
    const neck = nearNeck(garment, placement);
    const where = `${fitted.motif} on ${fitted.piece}`;
    if (fitted.sections[0]?.look.motif.kind !== "cord") return [];
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

/** "never": no cord at all may lie so for a young child; "near": at the neck, where loops are short. */
function nearNeck(garment: Garment, placement: Placement): "away" | "near" | "never" {
  const piece = garment.pieces.find(({ name }) => name === placement.piece)!;
  const { part } = partOf(piece);
  if (part === "hood" || part === "collar") return "never";
  const shoulder = part === "back" || part === "front" ? piece.outline.at(-1)!.heightMm : undefined;
  const neck = piece.neck[0]?.heightMm ?? shoulder ?? Number.POSITIVE_INFINITY;
  const upTo = piece.marks.find(({ name }) => name === placement.to)!.heightMm;
  if (neck - upTo >= CORD_LIMITS.neckMm) return "away";
  return part === "back" ? "never" : "near";
}

/** Every stretch between two hangings: the row it ends at, and how far it is round cord and cloth, in mm. */
function loopsOf(
  { gauge: { ground, cord } }: Garment,
  placed: FittedPlacement,
): readonly (readonly [number, number])[] {
  if (!cord) return [];
  return strandsWorked(placed).flatMap(({ points }) =>
    stretchesOf(placed.sections, points).map(({ to, needles, rows, counted }) => {
      const across = (needles * ground.overMm) / ground.stitches;
      const up = (rows * ground.overMm) / ground.rows;
      const round =
        ((counted?.pickup ?? 0) * cord.overMm) / cord.stitches + Math.sqrt(across * across + up * up);
      return [to.row, round] as const;
    }),
  );
}
