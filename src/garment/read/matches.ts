import type { Match, Placement } from "../garment.ts";
import { keysOf } from "../keys.ts";
import { type Cursor, knownNameAt, listAt, type Reading, report, tableAt } from "./cursor.ts";
import type { ReadPiece } from "./pieces.ts";
import type { Known } from "./placements.ts";

const example = "- { motif: plait, on: [front, back], mark: underarm }";

/** The matches of a garment; each placement they name has its mark within its field. */
export function matchesAt(
  reading: Reading,
  cursor: Cursor | undefined,
  known: Known,
  placements: readonly Placement[],
): readonly Match[] {
  if (!cursor) return [];
  return (listAt(reading, cursor, "match", example) ?? [])
    .map((item) => matchAt(reading, item, known, placements))
    .filter((match) => match !== undefined);
}

function matchAt(
  reading: Reading,
  cursor: Cursor,
  known: Known,
  placements: readonly Placement[],
): Match | undefined {
  const table = tableAt(reading, cursor, "a match", keysOf("match"), example);
  const motifCursor = table?.need("motif", `the name of a motif: ${example}`);
  const motif = motifCursor && knownNameAt(reading, motifCursor, "motif", "unknown-motif", known.motifs);
  const markCursor = table?.need("mark", `the name of a mark: ${example}`);
  const onCursor = table?.need("on", `two or more pieces: ${example}`);
  const items = onCursor && listAt(reading, onCursor, "the pieces of a match", "[front, back]");
  if (!onCursor || !items || !markCursor || motif === undefined) return undefined;
  const names = items.map((item) =>
    knownNameAt(reading, item, "piece", "unknown-piece", [...known.pieces.keys()]),
  );
  if (names.some((name) => name === undefined)) return undefined;
  if (new Set(names).size < 2 || new Set(names).size < names.length)
    return report(reading, onCursor, {
      code: "too-few-pieces",
      message: "a match is between two or more different pieces",
      expected: "[front, back]",
    });
  const found = names.map((name, index) => {
    const piece = known.pieces.get(name!)!;
    const mark = piece.marks && markOn(reading, markCursor, piece);
    if (mark === undefined) return undefined;
    const at = placements.findIndex(
      (placement) => placement.piece === name && placement.motif === motif && holds(placement, piece, mark),
    );
    return at >= 0
      ? { mark, at }
      : report(reading, items[index]!, {
          code: "no-such-placement",
          message: `${motif} is not laid on ${name} over the mark ${mark}`,
          expected: `a piece whose ${motif} has ${mark} between its own two marks`,
        });
  });
  if (!found.every((one) => one !== undefined)) return undefined;
  return { path: cursor.path, mark: found[0]!.mark, placements: found.map(({ at }) => at) };
}

const markOn = (reading: Reading, cursor: Cursor, piece: ReadPiece): string | undefined =>
  knownNameAt(reading, cursor, "mark", "unknown-mark", [...piece.marks!.keys()], ` on ${piece.name}`);

function holds({ from, to }: Placement, { marks }: ReadPiece, mark: string): boolean {
  const [height, fromMm, toMm] = [marks!.get(mark), marks!.get(from), marks!.get(to)];
  return (
    height !== undefined && fromMm !== undefined && toMm !== undefined && height >= fromMm && height <= toMm
  );
}
