import type { RuleAllows } from "../explore/garment-rule.ts";
import type { Allowed } from "../garment/allowed.ts";
import type { Garment, Margins, Piece, Placement } from "../garment/garment.ts";
import type { Motif } from "../motif/motif.ts";

/** A path of the file as far as the garment that was read from it can be changed there. */
type RulePath = readonly (string | number)[];

/**
 * The garment with a rule that allows something else: what reading the file would give, had it been changed there.
 * It spares reading the file again for each of the many steps that are tried.
 */
export function allowingInstead(garment: Garment, path: RulePath, allows: RuleAllows): Garment {
  if (allows.kind === "most") return { ...garment, bed: { ...garment.bed, needles: allows.value } };
  return {
    ...garment,
    pieces: garment.pieces.map((one) => lengthInstead(one, path, allows)),
    placements: garment.placements.map((one) => laidInstead(one, path, allows)),
    motifs: garment.motifs.map((one) => motifInstead(one, path, allows)),
  };
}

const isBelow = (path: RulePath, owner: RulePath): boolean => owner.every((key, at) => path[at] === key);

function lengthInstead(piece: Piece, path: RulePath, allows: RuleAllows): Piece {
  if (allows.kind !== "length" || !isBelow(path, piece.path)) return piece;
  return { ...piece, [path.at(-1) === "grow" ? "growMm" : "shrinkMm"]: allows.mm };
}

function laidInstead(placement: Placement, path: RulePath, allows: RuleAllows): Placement {
  if (!isBelow(path, placement.path)) return placement;
  const key = path.at(-1);
  if (allows.kind === "least")
    return withMargins(placement, { sides: { kind: "centred", least: allows.value } });
  if (allows.kind !== "values") return placement;
  const { allowed } = allows;
  switch (key) {
    case "repeats":
    case "columns":
    case "gap":
      return { ...placement, [key]: { ...placement[key], allowed } };
    case "bottom":
    case "top":
      return withMargins(placement, { [key]: allowed });
    default:
      return withMargins(placement, besideInstead(placement, key === "left" ? "left" : "right", allowed));
  }
}

const withMargins = (placement: Placement, changed: Partial<Margins>): Placement => ({
  ...placement,
  margins: { ...placement.margins, ...changed },
});

function besideInstead(
  { margins: { sides } }: Placement,
  side: "left" | "right",
  allowed: Allowed,
): Partial<Margins> {
  return sides.kind === "free" ? { sides: { ...sides, [side]: allowed } } : {};
}

function motifInstead(motif: Motif, path: RulePath, allows: RuleAllows): Motif {
  if (!isBelow(path, motif.path)) return motif;
  if (allows.kind === "ease" && motif.kind === "cord")
    return { ...motif, ease: { ...motif.ease, from: allows.from, to: allows.to } };
  if (allows.kind !== "values") return motif;
  return {
    ...motif,
    quantities: motif.quantities.map((one) =>
      one.name === path.at(-1) ? { ...one, allowed: allows.allowed } : one,
    ),
  };
}
