import { extraNeedlesForDrawIn } from "../cloth/draw-in.ts";
import { groundStitch } from "../cloth/gauge.ts";
import { type Field, fieldsOf, stretchesOf } from "../fit/field.ts";
import { type Fit, type FittedLook, type FittedPlacement, lookOf, pieceOf } from "../fit/fit.ts";
import { footingOf } from "../fit/footing.ts";
import { rowsIntoRepeat } from "../fit/phase.ts";
import { countLimits } from "../fit/steady/counts.ts";
import type { Garment, GroundGauge, Placement } from "../garment/garment.ts";
import type { Circumstances } from "./going-on.ts";
import type { BegunPiece } from "./recount.ts";
import { type Standing, standingOf } from "./standing.ts";

/**
 * A piece to be fitted anew from a row on. Its garment is the whole one narrowed to this piece, with the gauge as
 * measured; `placed`, `fields` and `standing` are by index of its placements.
 */
export interface Undertaking {
  readonly garment: Garment;
  readonly begun: BegunPiece;
  readonly placed: readonly FittedPlacement[];
  readonly fields: readonly Field[];
  /** What is begun of each placement; undefined where it is still to begin. */
  readonly standing: readonly (Standing | undefined)[];
  /** The looks so far of the motifs on the piece, in the order of the file. */
  readonly looks: readonly FittedLook[];
  readonly circumstances: (motif: string) => Circumstances;
  /** Whether a motif keeps the values it has so far: some of it is worked already, here or on other pieces. */
  readonly keepsValues: (motif: string) => boolean;
  /** Whether margins above motifs that are done have to keep their limits. */
  readonly keepsMargins: boolean;
}

/** Where on which piece of a fit a knitter stands. */
export interface Stand {
  readonly fit: Fit;
  readonly piece: string;
  /** Rows knitted. */
  readonly row: number;
  /** Of the ground, as measured on the piece. */
  readonly gauge: GroundGauge;
}

/** What the rest of a piece may give up, beyond what the garment's rules say. */
export interface Leeway {
  /** Motifs may be gone on with in another look than they are begun with, or have on other pieces. */
  readonly otherLooks: boolean;
  /** The margin above a motif that is done may come out beyond its limits: there is nothing to be done about it. */
  readonly lostMargins: boolean;
  /** Ease and length need to keep their limits at the gauge as measured only, where the garment asks for more. */
  readonly unsteady: boolean;
}

/** From what a knitter would not notice to what cannot be helped: each is tried where nothing fits with the one before. */
export const leeways: readonly Leeway[] = [
  { otherLooks: false, lostMargins: false, unsteady: false },
  { otherLooks: false, lostMargins: true, unsteady: false },
  { otherLooks: false, lostMargins: false, unsteady: true },
  { otherLooks: false, lostMargins: true, unsteady: true },
  { otherLooks: true, lostMargins: true, unsteady: true },
];

/** The leeways that make a difference to a garment. */
export const leewaysFor = ({ steady }: Garment): readonly Leeway[] =>
  steady === undefined ? leeways.filter(({ unsteady }) => unsteady) : leeways;

export function undertake({ fit, piece: pieceName, row, gauge }: Stand, leeway: Leeway): Undertaking {
  const placed = fit.placements.filter(({ piece }) => piece === pieceName);
  const planned = narrowed(fit, pieceName, placed, !leeway.otherLooks);
  const { steady, ...unsteady } = planned;
  const garment: Garment = {
    ...unsteady,
    gauge: { ...planned.gauge, ground: gauge },
    ...(steady !== undefined && !leeway.unsteady && { steady }),
  };
  const counted = pieceOf(fit, pieceName);
  const plannedFields = fieldsOf(planned);
  return {
    garment,
    placed,
    begun: {
      piece: garment.pieces[0]!,
      counted,
      row,
      counting: {
        stitch: groundStitch(planned.gauge),
        stretches: stretchesOf(plannedFields, ({ index }) => placed[index]!.change),
        extraNeedles: extraNeedlesForDrawIn(
          placed.reduce((sum, one) => sum + lossOf(lookOf(fit, one.motif), one.columns), 0),
        ),
      },
    },
    fields: fieldsOf(garment).map((field): Field => {
      // A field that is knitted to its end has the length it has.
      const isKnitted = counted.marks.get(field.placement.to)! <= row;
      const { change } = placed[field.index]!;
      return isKnitted ? { ...field, leastChange: change, mostChange: change } : field;
    }),
    standing: placed.map((one) => standingOf(one, row)),
    looks: fit.looks.filter(({ motif }) => placed.some((one) => one.motif === motif.name)),
    circumstances: (motif) => ({
      gauge: garment.gauge,
      weights: garment.weights,
      limits: countLimits(garment, motif),
    }),
    keepsValues: (motif) =>
      !leeway.otherLooks &&
      (isElsewhere(fit.garment, motif, pieceName) ||
        placed.some((one) => one.motif === motif && one.firstRow <= row)),
    keepsMargins: !leeway.lostMargins,
  };
}

/** Whether a motif is laid on another piece too. */
export const isElsewhere = (garment: Garment, motif: string, piece: string): boolean =>
  garment.placements.some((placement) => placement.motif === motif && placement.piece !== piece);

/**
 * The garment with only the placements of one piece. A motif that runs on over a seam keeps the phase it has at the
 * matched mark, as the other piece has it, if it is to match.
 */
function narrowed(
  { garment, pieces }: Fit,
  pieceName: string,
  placed: readonly FittedPlacement[],
  matching: boolean,
): Garment {
  const counted = pieces.find(({ name }) => name === pieceName)!;
  return {
    ...garment,
    pieces: garment.pieces.filter(({ name }) => name === pieceName),
    placements: placed.map((one): Placement => {
      const placement = garment.placements[one.index]!;
      const matched = garment.matches
        .filter(({ placements }) => matching && placements.includes(one.index))
        .map(({ mark }) => ({ mark, at: { rows: rowsInto(one, counted.marks.get(mark)!) } }));
      return { ...placement, meet: [...placement.meet, ...matched] };
    }),
    matches: [],
  };
}

/** Rows from the beginning of a repeat to a row, the motif thought on beyond its end. */
function rowsInto({ sections, lastRow }: FittedPlacement, row: number): number {
  const { repeatRows } = sections.at(-1)!.look.trace;
  return rowsIntoRepeat(row - lastRow, repeatRows);
}

/** Stitches' width that a placement's crossings draw in. */
export const lossOf = ({ motif, trace }: FittedLook, columns: number): number =>
  motif.kind === "cable" ? columns * footingOf(trace).crossedStitches * motif.drawIn : 0;
