import { type CountedPiece, fitsBed } from "../cloth/counted-piece.ts";
import { termsOf } from "../fit/candidates.ts";
import type { Field } from "../fit/field.ts";
import type { Footing } from "../fit/footing.ts";
import type { Layout } from "../fit/layouts.ts";
import { clearsNeck, narrowest, type Panel } from "../fit/panel.ts";
import { isAtPhase } from "../fit/phase.ts";
import { costOf } from "../fit/terms.ts";
import { allows } from "../garment/allowed.ts";
import type { Placement } from "../garment/garment.ts";
import type { Standing } from "./standing.ts";
import type { Undertaking } from "./undertaking.ts";

/** Whether a standing motif may be left with the repeat in hand, and whether repeats may be added to it. */
export interface GoneOn {
  readonly none: boolean;
  readonly some: boolean;
}

/** A change of length that is settled. */
export interface Settled {
  readonly change: number;
  readonly variant?: string;
}

/** Every way to go on with a motif that is begun, where it stands, on a piece that is counted anew. */
export function standingLayouts(
  { garment, keepsMargins }: Undertaking,
  field: Field,
  standing: Standing,
  footing: Footing,
  goneOn: GoneOn,
  piece: CountedPiece,
  settled: Settled,
): readonly Layout[] {
  const { placement } = field;
  const { placed, endRow } = standing;
  const toRow = piece.marks.get(placement.to)!;
  const most = goneOn.some ? Math.max(0, Math.floor((toRow - endRow) / footing.repeatRows)) : 0;
  const layouts: Layout[] = [];
  for (let added = goneOn.none ? 0 : 1; added <= most; added++) {
    const repeats = standing.repeats + added;
    const lastRow = endRow + added * footing.repeatRows;
    const top = toRow - lastRow;
    const panel = added === 0 ? placed.panel : widened(standing, footing);
    const { columns, gap, firstRow, margins } = placed;
    if (!panel) continue;
    const keepsTop = top >= 0 && allows(placement.margins.top, top);
    const keepsMarks = keepsTop && meetsMarks(placement, piece, endRow, footing);
    const keepsLimits = standing.done
      ? keepsMarks || !keepsMargins
      : keepsMarks &&
        allows(placement.repeats.allowed, repeats) &&
        keepsSides(placement, piece, panel, firstRow, lastRow);
    if (!keepsLimits || !fitsBed(piece, garment.bed)) continue;
    const terms = termsOf(
      { field, columns, gap, repeats, weights: garment.weights, ...settled },
      margins.bottom,
      top,
    );
    layouts.push({
      field,
      footing,
      repeats,
      ...settled,
      bottom: margins.bottom,
      top,
      firstRow,
      height: lastRow - firstRow,
      columns,
      gap,
      phases: [],
      shift: 0,
      panel,
      terms,
      cost: costOf(terms),
      amounts: [],
    });
  }
  return layouts;
}

/**
 * The panel over all that is worked: as wide as the widest look. Undefined where several columns would come to lie
 * nearer together or further apart than the gap.
 */
function widened({ placed, sections, repeats }: Standing, { reach }: Footing): Panel | undefined {
  const { panel } = placed;
  const begun = {
    left: Math.max(...sections.map(({ look }) => look.trace.reach.left)),
    right: Math.max(...sections.map(({ look }) => look.trace.reach.right)),
  };
  const more = { left: Math.max(0, reach.left - begun.left), right: Math.max(0, reach.right - begun.right) };
  // The lead-in alone reaches less far than its repeats would, so they have to reach as far as was planned.
  const less = repeats === 0 ? begun.left - reach.left + begun.right - reach.right : 0;
  if (placed.columns > 1 && (more.left + more.right > 0 || less > 0)) return undefined;
  return { ...panel, leftEdge: panel.leftEdge - more.left, rightEdge: panel.rightEdge + more.right };
}

/** Marks above the repeat in hand; those below it are met or missed already. */
const meetsMarks = (
  { meet }: Placement,
  { marks }: CountedPiece,
  endRow: number,
  { repeatRows }: Footing,
): boolean =>
  meet.every(
    ({ mark, at }) => marks.get(mark)! < endRow || isAtPhase(marks.get(mark)! - endRow, at, repeatRows),
  );

function keepsSides(
  { margins: { sides } }: Placement,
  piece: CountedPiece,
  panel: Panel,
  firstRow: number,
  lastRow: number,
): boolean {
  const edge = narrowest(piece, firstRow, lastRow);
  const left = edge.left + panel.leftEdge;
  const right = edge.right - panel.rightEdge;
  const keeps =
    sides.kind === "centred"
      ? left >= sides.least && right >= sides.least
      : left >= 0 && right >= 0 && allows(sides.left, left) && allows(sides.right, right);
  return keeps && clearsNeck(piece, panel, firstRow, lastRow);
}
