import type { Engine } from "../../solver/program.ts";
import { nearest, wholeWithin } from "../cloth/gauge.ts";
import type { Fit } from "../fit/fit.ts";
import { rulesOf } from "../fit/refusal/rules-of.ts";
import { conflictAmong, type NamedRule } from "../fit/refusal.ts";
import type { Garment } from "../garment/garment.ts";
import type { Progress } from "./progress.ts";
import { solveUndertaking } from "./solve-rest.ts";
import { leeways, undertake } from "./undertaking.ts";

/** Why nothing fits the rest of a piece, and what would help. */
export interface Obstacles {
  /** Rules that cannot hold together; empty where no rule of the file is to blame. */
  readonly conflict: readonly NamedRule[];
  /** Whether the piece has reached the height of its outline, so that nothing is left to knit. */
  readonly isLongEnough: boolean;
  /** Fewest rows by which the piece would have to become longer, or shorter, than it may; absent where none help. */
  readonly rowsMore?: number;
  readonly rowsFewer?: number;
}

/** How far a change of length is followed: no usual repeat is longer. */
const farRows = 40;

/**
 * What stands in the way of fitting the rest of a piece, found by lifting the rules that concern it.
 *
 * @param fit the fit that cannot be gone on with
 * @param progress what was measured, where
 */
export async function obstaclesTo(
  fit: Fit,
  { piece: pieceName, row, gauge }: Progress,
  engine: Engine,
): Promise<Obstacles> {
  const { garment } = fit;
  const stand = { piece: pieceName, row, gauge };
  const fits = async (one: Garment): Promise<boolean> => {
    const undertaking = undertake({ ...stand, fit: { ...fit, garment: one } }, leeways.at(-1)!);
    return (await solveUndertaking(undertaking, engine, {})).status === "solved";
  };
  const piece = garment.pieces.find(({ name }) => name === pieceName)!;
  const rowMm = gauge.overMm / gauge.rows;
  if (nearest(piece.outline.at(-1)!.heightMm / rowMm) <= row) return { conflict: [], isLongEnough: true };
  const { rules } = await conflictAmong(rulesFor(garment, pieceName), garment, fits);
  const byMore = (key: "growMm" | "shrinkMm") => (rows: number) =>
    fits({
      ...garment,
      pieces: garment.pieces.map((one) =>
        one === piece ? { ...one, [key]: (wholeWithin(one[key] / rowMm) + rows) * rowMm } : one,
      ),
    });
  const rowsMore = await fewest(byMore("growMm"));
  const rowsFewer = await fewest(byMore("shrinkMm"));
  return {
    conflict: rules,
    isLongEnough: false,
    ...(rowsMore !== undefined && { rowsMore }),
    ...(rowsFewer !== undefined && { rowsFewer }),
  };
}

/** Only the rules of the piece itself, of the motifs on it and of the bed; others cannot stand in the way. */
function rulesFor(garment: Garment, piece: string): readonly NamedRule[] {
  const placements = garment.placements.filter((placement) => placement.piece === piece);
  const motifs = garment.motifs.filter(({ name }) => placements.some(({ motif }) => motif === name));
  const owners = [
    ["bed"],
    ...placements.map(({ path }) => path),
    ...motifs.map(({ path }) => path),
    ...garment.pieces.filter(({ name }) => name === piece).map(({ path }) => path),
  ];
  return rulesOf(garment).filter(({ path }) =>
    owners.some((owner) => owner.every((key, at) => path[at] === key)),
  );
}

/** The least whole number that will do, where one up to the limit does: what does with some does with more. */
async function fewest(does: (rows: number) => Promise<boolean>): Promise<number | undefined> {
  if (!(await does(farRows))) return undefined;
  let [tooFew, enough] = [0, farRows];
  while (enough - tooFew > 1) {
    const middle = Math.floor((tooFew + enough) / 2);
    if (await does(middle)) enough = middle;
    else tooFew = middle;
  }
  return enough;
}
