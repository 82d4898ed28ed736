import type { GarmentFile, PieceEntry, PlacementEntry } from "../garment-file.ts";
import type { Cloth } from "./cloth.ts";
import { lengthMm } from "./entries.ts";
import type { Look } from "./looks.ts";

/**
 * What a wearer asks of cords, worked out from the file alone. Up to 7 years or 134 cm: none on hood, collar or at the
 * back of the neck, and no loop of cord and cloth over 75 mm round; up to 14 years or 182 cm: the loop at the neck.
 */
export interface WearerRules {
  readonly forbids: (placement: PlacementEntry) => boolean;
  readonly limitsLoops: (placement: PlacementEntry) => boolean;
}

export function wearerRules(garment: GarmentFile): WearerRules {
  const age = yearsOf(garment.wearer?.age);
  const tall = garment.wearer?.height === undefined ? undefined : lengthMm(garment.wearer.height) / 10;
  const child = age === undefined ? tall !== undefined && tall <= 182 : age <= 14;
  const young = child && ((age !== undefined && age <= 7) || (tall !== undefined && tall <= 134));
  const placeOf = (placement: PlacementEntry): "neck" | "back neck" | undefined =>
    placeAtNeck(placement.on, garment.pieces[placement.on]!, placement.to);
  const isCord = ({ motif }: PlacementEntry): boolean => {
    const entry = garment.motifs[motif]!;
    return "kind" in entry || entry.like === "crossed cord";
  };
  return {
    forbids: (placement) => young && isCord(placement) && placeOf(placement) === "back neck",
    limitsLoops: (placement) => isCord(placement) && (young || (child && placeOf(placement) !== undefined)),
  };
}

/** Whether every loop of a look keeps within 75 mm: the cord between two hangings and the cloth behind it. */
export const keepsLoops = ({ segments }: Look, cloth: Cloth): boolean =>
  segments.every(({ needles, rows, pickup }) =>
    [cloth, ...(cloth.corners ?? [])].every(({ stitchMm, rowMm, cordStitchMm }) => {
      const behind = Math.sqrt((needles * stitchMm) ** 2 + (rows * rowMm) ** 2);
      return pickup * cordStitchMm! + behind < 75 + 1e-6;
    }),
  );

function yearsOf(age: number | string | undefined): number | undefined {
  if (age === undefined || typeof age === "number") return age;
  const match = /^(\d+) (years|months)$/.exec(age);
  if (!match) throw new Error(`"${age}" is not an age`);
  return Number(match[1]) / (match[2] === "months" ? 12 : 1);
}

function placeAtNeck(name: string, piece: PieceEntry, to: string): "neck" | "back neck" | undefined {
  const part = piece.part ?? /hood|collar|front|back|sleeve/.exec(name)?.[0];
  if (part === "hood" || part === "collar") return "back neck";
  const top = piece.outline.at(-1)!.height;
  const neck = piece.neck?.[0]?.height ?? (part === "front" || part === "back" ? top : undefined);
  if (neck === undefined) return undefined;
  const marks: Readonly<Record<string, string>> = {
    ...piece.marks,
    "cast-on": "0 mm",
    "bind-off": top,
    neck,
  };
  if (lengthMm(neck) - lengthMm(marks[to]!) >= 50) return undefined;
  return part === "back" ? "back neck" : "neck";
}
