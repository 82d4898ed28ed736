import type { Diagnostic } from "../diagnostics/diagnostic.ts";
import type { Garment } from "../garment/garment.ts";
import { examineMotif } from "./examine-motif.ts";
import { examinePiece } from "./examine-piece.ts";
import { examinePlacements } from "./examine-placements.ts";

/**
 * What can only be seen once a garment that reads well is counted in needles and rows: a piece wider than the bed,
 * a neck wider than the piece, anchors of a motif that fall between needles, a field without rows.
 *
 * @returns errors and warnings with the path of what each is about; places are the caller's to fill in
 */
export const examine = (garment: Garment): readonly Diagnostic[] => [
  ...garment.pieces.flatMap((piece) => examinePiece(garment, piece)),
  ...garment.motifs.flatMap(examineMotif),
  ...examinePlacements(garment),
];
