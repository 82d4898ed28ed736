import type { NeedleRange } from "../cloth/bed.ts";
import { carriageAt } from "../cloth/carriage.ts";
import { groundStitch, type Stitch } from "../cloth/gauge.ts";
import { type Fit, pieceOf } from "../fit/fit.ts";
import type { Gauge, Side } from "../garment/garment.ts";
import { buildSheet } from "../sheet/build-sheet.ts";
import { type ShapingPassage, shapingPassages } from "../sheet/shaping/shaping-passages.ts";
import { type BandRepeat, bandRepeatsOf } from "./scene/bands.ts";
import { type CableCrossing, cableCrossingsOf } from "./scene/cables.ts";
import { cellsOf, outlineOf, type Span } from "./scene/cloth.ts";
import { fieldsOn, type SceneField, type Strip, unreachableOn } from "./scene/fields.ts";
import { type Ladder, laddersOf } from "./scene/ladders.ts";
import { type ClothPoint, createPlacer } from "./scene/place.ts";
import { type ShapingEvent, shapingOf } from "./scene/shaping.ts";
import { type SceneStrand, type StrandCrossing, strandCrossings, strandsOf } from "./scene/strands.ts";
import { type WornSide, wornSideOf } from "./scene/worn-side.ts";

/**
 * What there is to draw of one piece, in true proportion. Lengths are in mm from the middle of the cast-on edge, x to
 * the right as the knitter sees the bed, y upward. A *boundary* is a place between two needles, counted in needles
 * from the centre (0 = between L1 and R1). A row number counts the rows knitted, so it stands for the line above
 * that row: what is done "at row 18" lies at the height of 18 rows.
 */
export interface Scene {
  readonly title: string;
  readonly piece: string;
  readonly gauge: Gauge;
  readonly stitch: Stitch;
  readonly rows: number;
  readonly needlesAtStart: NeedleRange;
  /** Leftmost and rightmost boundary at any row. */
  readonly widest: Span;
  /** Every knitted row from the bottom up (index 0 is row 1): one span of needles, or two beside a neck. */
  readonly cells: readonly (readonly Span[])[];
  /** The edge of all cells, around the neck opening too; the last point is joined to the first. */
  readonly outline: readonly ClothPoint[];
  readonly neck?: SceneNeck;
  /** From the bottom up. */
  readonly marks: readonly SceneMark[];
  readonly fields: readonly SceneField[];
  /** Where no motif may lie although it is cloth: the least side margins within the rows of a field. */
  readonly unreachable: readonly Strip[];
  /** Strands of cord, in order of work. */
  readonly strands: readonly SceneStrand[];
  readonly crossings: readonly StrandCrossing[];
  readonly cables: readonly CableCrossing[];
  /** Needles out of work. */
  readonly ladders: readonly Ladder[];
  /** Repeats of banded patterns, from the bottom up. */
  readonly bands: readonly BandRepeat[];
  readonly shaping: readonly ShapingEvent[];
  /** The same in words, the cast-on and the bind-offs of whole blocks left out. */
  readonly shapingPassages: readonly ShapingPassage[];
  /** Rows at which something is done, from the bottom up. */
  readonly workedRows: readonly number[];
  /** Where the carriage rests at each row; index = rows knitted. */
  readonly carriage: readonly Side[];
  readonly worn: WornSide;
}

interface SceneMark {
  readonly name: string;
  readonly row: number;
  readonly yMm: number;
}

interface SceneNeck {
  readonly row: number;
  /** The half that is knitted first; the other waits on hold. */
  readonly firstHalf: Side;
}

/**
 * The drawing of one piece of a fit, as data.
 *
 * @throws where the fit has no piece of that name
 */
export function sceneOf(fit: Fit, pieceName: string): Scene {
  const piece = pieceOf(fit, pieceName);
  const sheet = buildSheet(fit).pieces.find((one) => one.piece === pieceName);
  if (!piece || !sheet) throw new Error(`the fit has no piece called ${pieceName}`);
  const stitch = groundStitch(fit.garment.gauge);
  const place = createPlacer(stitch);
  const cells = cellsOf(piece);
  const strands = strandsOf(sheet, fit, place);
  const carriage = Array.from({ length: piece.rows + 1 }, (_, row) => carriageAt(piece.carriage, row));
  return {
    title: fit.garment.title,
    piece: pieceName,
    gauge: fit.garment.gauge,
    stitch,
    rows: piece.rows,
    needlesAtStart: sheet.needlesAtStart,
    widest: { from: -Math.max(...piece.left), to: Math.max(...piece.right) },
    cells,
    outline: outlineOf(piece, place),
    ...(piece.neck &&
      piece.neck.row < piece.rows && {
        neck: { row: piece.neck.row, firstHalf: carriage[piece.neck.row]! },
      }),
    marks: [...piece.marks]
      .map(([name, row]): SceneMark => ({ name, row, yMm: row * stitch.heightMm }))
      .sort((one, other) => one.row - other.row),
    fields: fieldsOn(fit, piece),
    unreachable: unreachableOn(fit, piece, cells),
    strands,
    crossings: strandCrossings(strands),
    cables: cableCrossingsOf(sheet, piece.rows, place),
    ladders: laddersOf(sheet),
    bands: bandRepeatsOf(sheet),
    shaping: shapingOf(sheet, piece),
    shapingPassages: shapingPassages(sheet),
    workedRows: [...new Set(sheet.rows.map(({ row }) => row))].sort((one, other) => one - other),
    carriage,
    worn: wornSideOf(fit, pieceName),
  };
}
