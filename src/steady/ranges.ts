import type { CountedPiece } from "../cloth/counted-piece.ts";
import type { Bounds, GaugeRange } from "../cloth/gauge-range.ts";
import type { Fit } from "../fit/fit.ts";
import type { FittedSegment } from "../fit/looks.ts";
import { stitchesAcross } from "../fit/stitches-across.ts";
import { workedSegments } from "../fit/worked-segments.ts";
import { easeBounds } from "../motif/ease-range.ts";

/** What a fit comes to over a range of gauges: needles, rows and counts are as they are, and only the cloth differs. */
export interface FitRanges {
  readonly pieces: readonly PieceRange[];
  readonly motifs: readonly MotifRange[];
}

/** Finished measurements in mm. */
export interface PieceRange {
  readonly name: string;
  readonly lengthMm: Bounds;
  readonly castOnMm: Bounds;
  readonly widestMm: Bounds;
}

export interface MotifRange {
  readonly name: string;
  /** Ease of each stretch of cord that is counted by it, as fractions, in the order in which they are told. */
  readonly segments: readonly SegmentRange[];
}

export interface SegmentRange {
  readonly segment: FittedSegment;
  readonly ease: Bounds;
}

export function rangesOf(fit: Fit, range: GaugeRange): FitRanges {
  return {
    pieces: fit.pieces.map((piece) => pieceRange(fit, piece, range)),
    motifs: fit.looks
      .filter(({ motif }) => motif.kind === "cord")
      .map(({ motif }) => ({
        name: motif.name,
        segments: segmentsOf(fit, motif.name).map((segment) => ({
          segment,
          ease: easeBounds(segment, range, fit.garment.gauge.cord?.thicknessMm),
        })),
      })),
  };
}

function pieceRange(fit: Fit, piece: CountedPiece, { stitchWidthMm, rowHeightMm }: GaugeRange): PieceRange {
  const widths = Array.from({ length: piece.rows + 1 }, (_, row) => stitchesAcross(fit, piece, row));
  return {
    name: piece.name,
    lengthMm: times(rowHeightMm, piece.rows),
    castOnMm: times(stitchWidthMm, widths[0]!),
    widestMm: times(stitchWidthMm, Math.max(...widths)),
  };
}

const times = ({ least, most }: Bounds, count: number): Bounds => ({
  least: least * count,
  most: most * count,
});

/** Every stretch of a motif that is worked and counted by its ease, from the bottom up, each size and count once. */
function segmentsOf(fit: Fit, motif: string): readonly FittedSegment[] {
  const found = new Map<string, FittedSegment>();
  for (const segment of workedOf(fit, motif)) {
    const key = `${segment.needles}x${segment.rows} ${segment.pickup}`;
    if (segment.fixed === undefined && !found.has(key)) found.set(key, segment);
  }
  return [...found.values()];
}

/** The stretches that are worked in all placements of a motif, standing loops among them. */
export const workedOf = (fit: Fit, motif: string): readonly FittedSegment[] =>
  fit.placements
    .filter((placement) => placement.motif === motif)
    .flatMap(({ sections }) => workedSegments(sections).flat());
