import type { Diagnostic } from "../diagnostics/diagnostic.ts";
import { fixedLoss } from "../fit/enumerate.ts";
import { type Field, fieldsOf, neighbours, relation } from "../fit/field.ts";
import { isOnly } from "../garment/allowed.ts";
import type { Garment } from "../garment/garment.ts";
import { growingQuantity } from "../motif/growing-quantity.ts";

export function examinePlacements(garment: Garment): readonly Diagnostic[] {
  const fields = fieldsOf(garment);
  return fields.flatMap((field) => [
    ...emptyField(field),
    ...gapInBand(garment, field),
    ...uselessMirror(garment, field),
    ...looseDrawIn(garment, field, fields),
    ...stiffField(field, fields),
    ...besideOnly(field, fields),
    ...stiffGrowth(garment, field),
  ]);
}

/** A motif that changes from repeat to repeat goes its own way: one column of it about the middle of one piece. */
function stiffGrowth(garment: Garment, { placement }: Field): readonly Diagnostic[] {
  const motif = garment.motifs.find(({ name }) => name === placement.motif)!;
  const changing = growingQuantity(motif);
  if (!changing) return [];
  const twice = garment.placements.filter(({ motif: other }) => other === motif.name).length > 1;
  const { columns, margins } = placement;
  const [key, expected] = twice
    ? ["motif", `a motif of its own for each piece, such as one that is like ${motif.like ?? motif.name}`]
    : columns.allowed.kind !== "list" || columns.allowed.values.join() !== "1"
      ? ["columns", "columns: 1"]
      : ["margins", "side: { least: 5 } in place of left and right"];
  if (!twice && key === "margins" && margins.sides.kind === "centred") return [];
  return [
    {
      severity: "error",
      code: "stiff-growth",
      message: `the ${changing.name} of ${motif.name} changes from repeat to repeat, so it lies in one column about the middle of one piece`,
      expected: expected!,
      path: [...placement.path, key!],
    },
  ];
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

/** A pattern's repeats run on from one to the next. */
function gapInBand(garment: Garment, { placement }: Field): readonly Diagnostic[] {
  const motif = garment.motifs.find(({ name }) => name === placement.motif)!;
  if (motif.kind !== "band" || isOnly(placement.gap.allowed, 0)) return [];
  return [
    {
      severity: "error",
      code: "gap-in-band",
      message: `the repeats of ${motif.name} stand side by side without a gap`,
      expected: "gap: 0, or none; edge stitches go into the motif's edge",
      path: [...placement.path, "gap"],
    },
  ];
}

/** A mirror needs a column right of the middle, and a motif that is laid column by column. */
function uselessMirror(garment: Garment, { placement }: Field): readonly Diagnostic[] {
  if (!placement.mirror) return [];
  const motif = garment.motifs.find(({ name }) => name === placement.motif)!;
  const path = [...placement.path, "mirror"];
  if (motif.kind === "band")
    return [
      {
        severity: "error",
        code: "mirrored-band",
        message: `${motif.name} is one pattern all the way across, and a pattern cannot be turned round in the middle of a row`,
        expected: "mirror: false, or the mirror image drawn into the pattern itself",
        path,
      },
    ];
  if (!isOnly(placement.columns.allowed, 1)) return [];
  return [
    {
      severity: "warning",
      code: "mirror-of-one",
      message: `${motif.name} lies in one column, and no other can be its mirror image`,
      expected: "columns: 2 or more, or no mirror",
      path,
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
