import type { FittedLook } from "../fit/fit.ts";
import type { FittedSegment } from "../fit/looks.ts";
import type { Share } from "../garment/garment.ts";
import type { Motif, Quantity } from "../motif/motif.ts";

/** What of a motif's look is alike in every size. */
export interface SharedLook {
  readonly motif: Motif;
  /** Quantities that are shared, or can have one value only; in the motif's order. */
  readonly values: ReadonlyMap<string, number>;
  /** Stretches of cord with their counts, where those are shared. */
  readonly segments?: readonly FittedSegment[];
  /** Whether nothing of the look is left to each size. */
  readonly whole: boolean;
}

type AnyLook = Pick<FittedLook, "motif" | "values" | "segments">;

/** What of a look the sizes share; undefined where that is nothing. */
export function sharedLook(
  share: Share | undefined,
  { motif, values, segments }: AnyLook,
): SharedLook | undefined {
  const counts = share?.pickup === true && motif.kind === "cord";
  if (!counts && !motif.quantities.some(({ name }) => share?.quantities.includes(name))) return undefined;
  return {
    motif,
    values: new Map(motif.quantities.filter(isAlike(share)).map(({ name }) => [name, values.get(name)!])),
    ...(counts && { segments }),
    whole: sharesAll(share, motif),
  };
}

/** Whether a quantity is the same in every size: it is shared, or can have one value only. */
const isAlike =
  (share: Share | undefined) =>
  ({ name, allowed }: Quantity): boolean =>
    share?.quantities.includes(name) === true || (allowed.kind === "list" && allowed.values.length === 1);

/** Whether sizes with such a share have the whole look of a motif in common. */
export const sharesAll = (share: Share | undefined, motif: Motif): boolean =>
  share !== undefined && motif.quantities.every(isAlike(share)) && (motif.kind !== "cord" || share.pickup);

/** Tells looks apart in what the sizes share, and in nothing else; counts go by the names of their stretches. */
export function sharedKey(share: Share | undefined, look: AnyLook): string | undefined {
  const shared = sharedLook(share, look);
  if (!shared) return undefined;
  const { values, segments } = shared;
  const quantities = [...values].map(([name, value]) => `${name} ${value}`);
  const counts = segments?.map(({ name, pickup }) => `${name} count ${pickup}`) ?? [];
  return [...quantities, ...counts].join(", ");
}
