import type { CountedPiece } from "../cloth/counted-piece.ts";
import { groundStitch, type Stitch } from "../cloth/gauge.ts";
import { gaugeUncertainty } from "../cloth/gauge-uncertainty.ts";
import { type Fit, pieceOf } from "../fit/fit.ts";
import type { GroundGauge, Piece } from "../garment/garment.ts";

/** What a knitter measured of a piece that is in work; at least one of the two. */
export interface Measured {
  /** From the cast-on edge to the needles. */
  readonly lengthMm?: number;
  /** Over all the needles in work. */
  readonly widthMm?: number;
}

/** How a piece comes out so far, and how it will end at that rate if it is knitted on as it stands. */
export interface Progress {
  readonly status: "measured";
  readonly piece: string;
  /** Rows knitted. */
  readonly row: number;
  readonly measured: Measured;
  /** The gauge so far; what was not measured is as it was planned. */
  readonly gauge: GroundGauge;
  readonly rowHeight: Reading;
  readonly stitchWidth: Reading;
  readonly length: Reading;
  /** Marks still to come, from the bottom up. */
  readonly marks: readonly (Reading & { readonly name: string; readonly row: number })[];
}

/** A length in mm as it comes out, how far off that may be, and what was planned. */
export interface Reading {
  readonly mm: number;
  readonly withinMm: number;
  readonly plannedMm: number;
}

/** A measurement that nothing can be made of, and why. */
export interface Unusable {
  readonly status: "unusable";
  readonly problem: string;
}

/** How far a tape on cloth that hangs from the bed is off: judgement, no published source. */
const tapeMm = 3;

/** Half a row or half a stitch lies between what is measured to and what is counted to. */
const edgeOf = (stitchMm: number): number => stitchMm / 2;

/**
 * Beyond this share of what was planned a measurement is more likely a slip of the tape or of the row counter than
 * the cloth: judgement, no published source.
 */
const believable = { from: 0.7, to: 1.4 };

/**
 * The gauge of what is knitted and where the piece will end at that rate.
 *
 * @param row rows knitted, as the row counter says
 */
export function measureProgress(
  fit: Fit,
  pieceName: string,
  row: number,
  measured: Measured,
): Progress | Unusable {
  const counted = pieceOf(fit, pieceName);
  const piece = fit.garment.pieces.find(({ name }) => name === pieceName);
  if (!counted || !piece) return unusable(`there is no piece called ${pieceName}`);
  if (!Number.isInteger(row) || row < 1 || row >= counted.rows)
    return unusable(
      `row ${row} is not one at which ${pieceName} can be measured: it has rows 1 to ${counted.rows - 1} and is bound off after that`,
    );
  if (measured.lengthMm === undefined && measured.widthMm === undefined)
    return unusable("neither a length nor a width is given");
  if (measured.widthMm !== undefined && counted.neck && row > counted.neck.row)
    return unusable("above the neck the halves are apart: give the length alone");
  const planned = groundStitch(fit.garment.gauge);
  const needles = counted.left[row]! + counted.right[row]!;
  const real: Stitch = {
    widthMm: measured.widthMm === undefined ? planned.widthMm : measured.widthMm / needles,
    heightMm: measured.lengthMm === undefined ? planned.heightMm : measured.lengthMm / row,
  };
  return (
    doubtful("length", measured.lengthMm, row * planned.heightMm) ??
    doubtful("width", measured.widthMm, needles * planned.widthMm) ??
    progressAt(fit, piece, counted, { row, measured, real, planned })
  );
}

const unusable = (problem: string): Unusable => ({ status: "unusable", problem });

function doubtful(what: string, mm: number | undefined, plannedMm: number): Unusable | undefined {
  if (mm === undefined) return undefined;
  const share = mm / plannedMm;
  if (share >= believable.from && share <= believable.to) return undefined;
  return unusable(
    `a ${what} of ${centimetres(mm)} where ${centimetres(plannedMm)} were planned cannot be the cloth alone: check the row and measure again`,
  );
}

const centimetres = (mm: number): string => `${(mm / 10).toFixed(1)} cm`;

interface Taken {
  readonly row: number;
  readonly measured: Measured;
  readonly real: Stitch;
  readonly planned: Stitch;
}

function progressAt(fit: Fit, piece: Piece, counted: CountedPiece, taken: Taken): Progress {
  const { row, measured, real, planned } = taken;
  const { ground } = fit.garment.gauge;
  const told = gaugeUncertainty(ground);
  const share = {
    rows: measured.lengthMm === undefined ? told.rows : offBy(real.heightMm, measured.lengthMm),
    stitches: measured.widthMm === undefined ? told.stitches : offBy(real.widthMm, measured.widthMm),
  };
  const heightAt = (rows: number, plannedMm: number): Reading => ({
    mm: rows * real.heightMm,
    withinMm: rows * real.heightMm * share.rows,
    plannedMm,
  });
  return {
    status: "measured",
    piece: counted.name,
    row,
    measured,
    gauge: {
      stitches: ground.overMm / real.widthMm,
      rows: ground.overMm / real.heightMm,
      overMm: ground.overMm,
      within: share,
    },
    rowHeight: { mm: real.heightMm, withinMm: real.heightMm * share.rows, plannedMm: planned.heightMm },
    stitchWidth: { mm: real.widthMm, withinMm: real.widthMm * share.stitches, plannedMm: planned.widthMm },
    length: heightAt(counted.rows, piece.outline.at(-1)!.heightMm),
    marks: piece.marks
      .map(({ name, heightMm }) => ({ name, row: counted.marks.get(name)!, heightMm }))
      .filter((mark) => mark.row > row)
      .sort((one, other) => one.row - other.row)
      .map((mark) => ({ name: mark.name, row: mark.row, ...heightAt(mark.row, mark.heightMm) })),
  };
}

/** The share by which a measure over many rows or stitches may be off. */
const offBy = (stitchMm: number, measuredMm: number): number => (tapeMm + edgeOf(stitchMm)) / measuredMm;
