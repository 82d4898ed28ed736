import type { BodyPart, Garment, Piece, Placement } from "../garment/garment.ts";
import { partOf } from "./body-part.ts";
import { CORD_LIMITS } from "./cord-limits.ts";
import { wearerGroup } from "./wearer-group.ts";

/**
 * Whether a placement lies at the neck: on a hood or a collar wherever it is, on another piece where its upper mark
 * stands less than 5 cm below the neck opening. A front or a back without an opening has its neck at the bind-off.
 */
function liesAtNeck(piece: Piece, placement: Pick<Placement, "to">): boolean {
  const { part } = partOf(piece);
  if (part === "hood" || part === "collar") return true;
  const neckMm = piece.neck[0]?.heightMm ?? (part === "front" || part === "back" ? topOf(piece) : undefined);
  if (neckMm === undefined) return false;
  const toMm = piece.marks.find(({ name }) => name === placement.to)!.heightMm;
  return toMm > neckMm - CORD_LIMITS.neckMm;
}

const topOf = (piece: Piece): number => piece.outline.at(-1)!.heightMm;

/** Whether a child is too young for any cord where a placement lies: a hood, a collar, the back of the neck. */
export function isForbidden(garment: Garment, placement: Placement): boolean {
  if (wearerGroup(garment.wearer) !== "young" || !isCord(garment, placement.motif)) return false;
  const piece = pieceNamed(garment, placement.piece);
  return noCordNearNeck.includes(partOf(piece).part) && liesAtNeck(piece, placement);
}

/** At the front a decorative cord is allowed with restrictions, a sleeve does not reach the neck. */
const noCordNearNeck: readonly BodyPart[] = ["hood", "collar", "back"];

/** Most that a loop of a motif's cord and the cloth behind it may be round, in mm; undefined where nothing limits it. */
export function mostLoopMm(garment: Garment, motif: string): number | undefined {
  const group = wearerGroup(garment.wearer);
  const limited =
    group === "young" ||
    (group === "older" &&
      garment.placements.some(
        (placement) =>
          placement.motif === motif && liesAtNeck(pieceNamed(garment, placement.piece), placement),
      ));
  return limited ? CORD_LIMITS.loopMm : undefined;
}

const pieceNamed = (garment: Garment, name: string): Piece =>
  garment.pieces.find((piece) => piece.name === name)!;

const isCord = (garment: Garment, name: string): boolean =>
  garment.motifs.find((motif) => motif.name === name)?.kind === "cord";
