import type { Diagnostic } from "../diagnostics/diagnostic.ts";
import { fixedLoss } from "../fit/enumerate.ts";
import { type Field, fieldsOf, neighbours, relation } from "../fit/field.ts";
import type { Garment } from "../garment/garment.ts";

export function examinePlacements(garment: Garment): readonly Diagnostic[] {
  const fields = fieldsOf(garment);
  return fields.flatMap((field) => [
    ...emptyField(field),
    ...looseDrawIn(garment, field, fields),
    ...stiffField(field, fields),
    ...besideOnly(field, fields),
  ]);
}

function emptyField({ placement, fromRow, toRow }: Field): readonly Diagnostic[] {
  if (toRow > fromRow) return [];
  return [
    {
      severity: "error",
      code: "empty-field",
      message: `no row lies between ${placement.from} (row ${fromRow}) and ${placement.to} (row ${toRow}) of ${placement.piece}`,
      expected: "a mark to end at that is higher than the one to start from",
      path: [...placement.path, "to"],
    },
  ];
}

/** How many needles a piece needs must not hang on how two of its motifs are chosen against each other. */
function looseDrawIn(garment: Garment, field: Field, fields: readonly Field[]): readonly Diagnostic[] {
  const motif = garment.motifs.find(({ name }) => name === field.placement.motif)!;
  if (neighbours(field, fields).length === 0 || fixedLoss(field, motif) !== undefined) return [];
  return [
    {
      severity: "error",
      code: "loose-draw-in",
      message: `${motif.name} draws ${field.placement.piece} in, and how far is left open while another motif lies on the same piece`,
      expected: "one number of columns and of crossed stitches",
      path: field.placement.path,
    },
  ];
}

function stiffField(field: Field, fields: readonly Field[]): readonly Diagnostic[] {
  const { piece, placement } = field;
  const overlaps = neighbours(field, fields).some((other) => relation(field, other) === "overlapping");
  if (!overlaps || (piece.growMm === 0 && piece.shrinkMm === 0)) return [];
  return [
    {
      severity: "warning",
      code: "stiff-field",
      message: `${placement.motif} shares only some of its rows with another motif on ${piece.name}, so the length between their marks is kept as it is`,
      expected: "the same two marks for both, where the piece may grow or shrink",
      path: placement.path,
    },
  ];
}

/** Said once for each pair, at the later placement. */
function besideOnly(field: Field, fields: readonly Field[]): readonly Diagnostic[] {
  const earlier = neighbours(field, fields).filter(
    (other) => other.index < field.index && relation(field, other) !== "apart",
  );
  return earlier.map((other) => ({
    severity: "warning",
    code: "beside-only",
    message: `${field.placement.motif} and ${other.placement.motif} share rows of ${field.piece.name}, so they are laid side by side only`,
    expected:
      "left and right margins for both, or marks that give each rows of its own to lie one above the other",
    path: field.placement.path,
  }));
}
