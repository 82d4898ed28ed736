import { groundStitch } from "../../cloth/gauge.ts";
import { least } from "../../garment/allowed.ts";
import type { Bed, Garment, Piece, Placement } from "../../garment/garment.ts";
import { createPieceCounter, type Field } from "../field.ts";
import { type Footing, footingKey } from "../footing.ts";
import { createLayouts } from "../layouts.ts";

export interface Room {
  /** Whether a placement may find room on a footing, as far as that is seen at a glance. */
  readonly mayBe: (field: Field, footing: Footing) => boolean;
  /** Whether a placement that is tied to no other finds room on a footing. */
  readonly is: (field: Field, footing: Footing, bed: Bed) => boolean;
}

/** Answers each question once, whichever of a garment's rules have changed meanwhile. */
export function createRoom({ gauge, weights, motifs }: Garment): Room {
  const stitch = groundStitch(gauge);
  const drawIn = new Map(motifs.map((motif) => [motif.name, motif.kind === "cable" ? motif.drawIn : 0]));
  const drawnIn = ({ placement }: Field): number => drawIn.get(placement.motif)!;
  const layoutsOnBed = new Map<number, ReturnType<typeof createLayouts>>();
  const layoutsOn = (bed: Bed): ReturnType<typeof createLayouts> => {
    const known =
      layoutsOnBed.get(bed.needles) ??
      createLayouts({
        fields: [],
        stitch,
        weights,
        bed,
        lostPerColumn: (field, footing) => drawnIn(field) * footing.crossedStitches,
        lostBeside: () => 0,
        measures: [],
        anyLayout: true,
        keep: 1,
      });
    layoutsOnBed.set(bed.needles, known);
    return known;
  };
  const count = createPieceCounter(stitch);
  const widest = (piece: Piece): number => {
    const { left, right } = count(piece, [], 0);
    return Math.max(...left) + Math.max(...right);
  };
  const mayBe: Room["mayBe"] = (field, { leadRows, repeatRows, reach }) => {
    const { repeats, margins } = field.placement;
    const rows = leadRows + least(repeats.allowed) * repeatRows + least(margins.bottom) + least(margins.top);
    if (rows > field.toRow - field.fromRow + field.mostChange) return false;
    return drawnIn(field) > 0 || reach.left + reach.right <= widest(field.piece);
  };
  const answers = new WeakMap<Placement, WeakMap<Piece, Map<string, boolean>>>();
  const is: Room["is"] = (field, footing, bed) => {
    const ofPlacement = answers.get(field.placement) ?? new WeakMap<Piece, Map<string, boolean>>();
    answers.set(field.placement, ofPlacement);
    const known = ofPlacement.get(field.piece) ?? new Map<string, boolean>();
    ofPlacement.set(field.piece, known);
    const key = `${bed.needles} ${footingKey(footing)}`;
    const answer = known.get(key) ?? layoutsOn(bed)(field, footing).length > 0;
    known.set(key, answer);
    return answer;
  };
  return { mayBe, is };
}
