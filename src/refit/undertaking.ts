import { extraNeedlesForDrawIn } from "../cloth/draw-in.ts";
import { groundStitch } from "../cloth/gauge.ts";
import { type Field, fieldsOf, stretchesOf } from "../fit/field.ts";
import { type Fit, type FittedLook, type FittedPlacement, lookOf, pieceOf } from "../fit/fit.ts";
import { footingOf } from "../fit/layouts.ts";
import type { Garment, GroundGauge } from "../garment/garment.ts";
import { mostLoopMm } from "../safety/cord-rules.ts";
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
}

/** @param gauge of the ground, as measured on the piece */
export function undertake(fit: Fit, pieceName: string, row: number, gauge: GroundGauge): Undertaking {
  const placed = fit.placements.filter(({ piece }) => piece === pieceName);
  const planned = narrowed(fit.garment, pieceName, placed);
  const garment: Garment = { ...planned, gauge: { ...planned.gauge, ground: gauge } };
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
      mostLoopMm: mostLoopMm(garment, motif),
    }),
  };
}

/** The garment with only the placements of one piece; what ties it to other pieces is left out. */
const narrowed = (garment: Garment, pieceName: string, placed: readonly FittedPlacement[]): Garment => ({
  ...garment,
  pieces: garment.pieces.filter(({ name }) => name === pieceName),
  placements: placed.map(({ index }) => garment.placements[index]!),
  matches: [],
});

/** Stitches' width that a placement's crossings draw in. */
export const lossOf = ({ motif, trace }: FittedLook, columns: number): number =>
  motif.kind === "cable" ? columns * footingOf(trace).crossedStitches * motif.drawIn : 0;
