import { growingQuantity } from "../../motif/growing-quantity.ts";
import type { Motif } from "../../motif/motif.ts";
import type { Share } from "../garment.ts";
import { type Cursor, knownNameAt, listAt, type Reading, report } from "./cursor.ts";

const example = "[interval, spread, pickup]";

/** Stands for the counts of the cord among the quantities that sizes share. */
const PICKUP = "pickup";

/** What is alike in every size: quantities of the motifs that are placed, and the counts of their cords. */
export function shareAt(
  reading: Reading,
  cursor: Cursor | undefined,
  motifs: readonly Motif[],
  hasSizes: boolean,
): Share | undefined {
  if (!cursor) return undefined;
  if (!hasSizes) {
    report(reading, cursor, {
      code: "missing-key",
      message: "there are no sizes that could share anything",
      expected: "sizes: { S: { size: woman S }, M: { size: woman M } }",
      found: "",
      ...(cursor.keyPlace && { place: cursor.keyPlace }),
    });
    return undefined;
  }
  const names = [
    ...new Set(motifs.flatMap(({ quantities }) => quantities.map(({ name }) => name))),
    ...(motifs.some(({ kind }) => kind === "cord") ? [PICKUP] : []),
  ];
  const items = listAt(reading, cursor, "what the sizes share", example) ?? [];
  const shared = items.map((item) => ({
    item,
    name: knownNameAt(reading, item, "quantity", "unknown-quantity", names),
  }));
  const growing = motifs.find((motif) => growingQuantity(motif) && sharesAny(motif, shared));
  if (growing)
    report(reading, cursor, {
      code: "cannot-share",
      message: `${growing.name} changes its ${growingQuantity(growing)!.name} from repeat to repeat, and each size has room for changes of its own`,
      expected: "sizes without share, or a motif that stays as it is",
      found: "",
    });
  const known = shared.flatMap(({ name }) => name ?? []);
  if (known.length === 0) return undefined;
  return {
    path: cursor.path,
    quantities: [...new Set(known.filter((name) => name !== PICKUP))],
    pickup: known.includes(PICKUP),
  };
}

const sharesAny = (
  { kind, quantities }: Motif,
  shared: readonly { readonly name: string | undefined }[],
): boolean =>
  shared.some(
    ({ name }) =>
      quantities.some((quantity) => quantity.name === name) || (name === PICKUP && kind === "cord"),
  );
