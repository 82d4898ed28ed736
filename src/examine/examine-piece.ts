import { bedSides } from "../cloth/bed.ts";
import { type CountedPiece, countPiece, rowOf } from "../cloth/counted-piece.ts";
import { groundStitch, type Stitch } from "../cloth/gauge.ts";
import type { Diagnostic } from "../diagnostics/diagnostic.ts";
import type { Path } from "../diagnostics/path.ts";
import type { Garment, Piece } from "../garment/garment.ts";
import { counted } from "../report/words.ts";

export function examinePiece(garment: Garment, piece: Piece): readonly Diagnostic[] {
  const stitch = groundStitch(garment.gauge);
  if (rowOf(piece.outline.at(-1)!.heightMm, stitch) < 1)
    return [
      {
        severity: "error",
        code: "too-short",
        message: `${piece.name} is shorter than one row`,
        expected: `a height of at least ${stitch.heightMm.toFixed(1)} mm`,
        path: outlinePath(piece, piece.outline.length - 1),
      },
    ];
  const whole = countPiece(piece, stitch);
  return [
    ...tooWide(garment, piece, whole, stitch),
    ...tooNarrow(piece, whole),
    ...neckTooWide(piece, whole),
  ];
}

/** Where the outline is said, or one height of it where it is written height by height. */
const outlinePath = ({ path, outlinePath: from }: Piece, ...index: readonly number[]): Path =>
  from ?? [...path, "outline", ...index];

function tooWide(garment: Garment, piece: Piece, whole: CountedPiece, stitch: Stitch): readonly Diagnostic[] {
  const bed = bedSides(garment.bed.needles);
  const index = piece.outline.findIndex((station) => {
    const row = Math.min(rowOf(station.heightMm, stitch), whole.rows);
    return (
      stationBeyond(station, bed, stitch) || whole.left[row]! > bed.left || whole.right[row]! > bed.right
    );
  });
  if (index < 0) return [];
  const needles = Math.max(...whole.left) + Math.max(...whole.right);
  return [
    {
      severity: "error",
      code: "wider-than-bed",
      message: `${piece.name} is wider here than the bed: it needs ${counted(needles, "needle")}, and the bed has ${garment.bed.needles}`,
      expected: `at most ${Math.floor((garment.bed.needles * stitch.widthMm) / 10)} cm at this gauge, half of it at each side of the centre`,
      path: outlinePath(piece, index),
    },
  ];
}

function stationBeyond(
  station: Piece["outline"][number],
  bed: { left: number; right: number },
  stitch: Stitch,
): boolean {
  const [leftMm, rightMm] =
    "widthMm" in station ? [station.widthMm / 2, station.widthMm / 2] : [station.leftMm, station.rightMm];
  return leftMm / stitch.widthMm > bed.left + 0.5 || rightMm / stitch.widthMm > bed.right + 0.5;
}

function tooNarrow(piece: Piece, whole: CountedPiece): readonly Diagnostic[] {
  const row = whole.left.findIndex((left, at) => left + whole.right[at]! < 1);
  if (row < 0) return [];
  return [
    {
      severity: "error",
      code: "too-narrow",
      message: `${piece.name} has no needle left at row ${row}: its outline is narrower there than one stitch`,
      expected: "an outline at least two stitches wide everywhere",
      path: outlinePath(piece),
    },
  ];
}

function neckTooWide(piece: Piece, { neck, left, right, rows, name }: CountedPiece): readonly Diagnostic[] {
  if (!neck) return [];
  for (let row = neck.row; row <= rows; row++) {
    const index = row - neck.row;
    if (left[row]! - neck.left[index]! < 1 || right[row]! - neck.right[index]! < 1)
      return [
        {
          severity: "error",
          code: "neck-too-wide",
          message: `the neck of ${name} leaves no needle beside it at row ${row}`,
          expected: "a neck narrower than the piece at every height",
          path: piece.outlinePath ?? [...piece.path, "neck"],
        },
      ];
  }
  return [];
}
