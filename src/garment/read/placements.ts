import { anyFrom, only, type Preference } from "../allowed.ts";
import type { Margins, Placement, SideMargins } from "../garment.ts";
import { keysOf } from "../keys.ts";
import { leastAt, marginAt, preferenceAt } from "./allowed.ts";
import {
  type Cursor,
  flagAt,
  knownNameAt,
  type Reading,
  report,
  type Table,
  tableAt,
  wordAt,
} from "./cursor.ts";
import * as limits from "./limits.ts";
import { meetingsAt } from "./meetings.ts";
import { inCm, wholeAt } from "./numbers.ts";
import type { ReadPiece } from "./pieces.ts";

const example = "{ motif: plait, on: sleeve, from: rib top, to: underarm }";

/** What a placement may refer to. */
export interface Known {
  readonly motifs: readonly string[];
  /** Pieces as far as they could be read. */
  readonly pieces: ReadonlyMap<string, ReadPiece>;
}

export function placementAt(reading: Reading, cursor: Cursor, known: Known): Placement | undefined {
  const table = tableAt(reading, cursor, "a placement", keysOf("placement"), example);
  if (!table) return undefined;
  const motifCursor = table.need("motif", `the name of a motif: ${example}`);
  const onCursor = table.need("on", `the name of a piece: ${example}`);
  const motif = motifCursor && knownNameAt(reading, motifCursor, "motif", "unknown-motif", known.motifs);
  const pieceName =
    onCursor && knownNameAt(reading, onCursor, "piece", "unknown-piece", [...known.pieces.keys()]);
  const piece = pieceName === undefined ? undefined : known.pieces.get(pieceName);
  const field = fieldAt(reading, table, piece);
  const quantity = (key: string, what: string, otherwise: Preference, least = limits.fromOne): Preference => {
    const inner = table.at(key);
    if (!inner) return otherwise;
    return preferenceAt(reading, inner, what, least, otherwise.allowed) ?? otherwise;
  };
  const unfinished = table.at("unfinished");
  const placement = {
    path: cursor.path,
    repeats: quantity("repeats", "the number of repeats", { allowed: anyFrom(1) }),
    columns: quantity("columns", "the number of columns", { allowed: only(1) }),
    gap: quantity("gap", "the gap between columns", { allowed: only(0) }, limits.countOf),
    margins: marginsAt(reading, table.at("margins")),
    mirror: flagAt(reading, table.at("mirror"), "whether columns are mirrored") ?? false,
    unfinished:
      (unfinished &&
        wordAt(reading, unfinished, "what is done with an unfinished repeat", ["plain", "part"] as const)) ??
      "plain",
  };
  const meet = field && meetingsAt(reading, table.at("meet"), piece!, field);
  if (motif === undefined || pieceName === undefined || !field || !meet) return undefined;
  return { ...placement, motif, piece: pieceName, ...field, meet };
}

function fieldAt(
  reading: Reading,
  table: Table,
  piece: ReadPiece | undefined,
): { readonly from: string; readonly to: string } | undefined {
  if (!piece?.marks) return undefined;
  const { name: pieceName, marks: heights } = piece;
  const marks = [...heights.keys()];
  const markAt = (key: string, otherwise: string): string | undefined => {
    const inner = table.at(key);
    return inner ? knownNameAt(reading, inner, "mark", "unknown-mark", marks, ` on ${pieceName}`) : otherwise;
  };
  const from = markAt("from", "cast-on");
  const to = markAt("to", heights.has("neck") ? "neck" : "bind-off");
  if (from === undefined || to === undefined) return undefined;
  const [fromMm, toMm] = [heights.get(from), heights.get(to)];
  if (fromMm !== undefined && toMm !== undefined && fromMm >= toMm)
    return report(reading, table.at("to") ?? table.at("from") ?? table.cursor, {
      code: "marks-not-rising",
      message: `a motif goes upward, and ${to} does not lie above ${from}`,
      found: `from ${from} (${inCm(fromMm)}) to ${to} (${inCm(toMm)})`,
      expected: "a mark to end at that is higher than the one to start from",
    });
  return { from, to };
}

function marginsAt(reading: Reading, cursor: Cursor | undefined): Margins {
  const table =
    cursor &&
    tableAt(
      reading,
      cursor,
      "the margins",
      keysOf("margins"),
      "{ bottom: 2..20, top: 0..12, side: { least: 5 } }",
    );
  const margin = (key: string): Margins["bottom"] => {
    const inner = table?.at(key);
    return (inner && marginAt(reading, inner, `the ${key} margin`, limits.countOf)) ?? anyFrom(0);
  };
  return { bottom: margin("bottom"), top: margin("top"), sides: sidesAt(reading, table) };
}

function sidesAt(reading: Reading, table: Table | undefined): SideMargins {
  const side = table?.at("side");
  const [left, right] = [table?.at("left"), table?.at("right")];
  const free = left ?? right;
  if (side && free)
    report(reading, free, {
      code: "conflicting-keys",
      message: "margins have either side (the panel is centred) or left and right (it may stand off centre)",
      expected: "side alone, or left and right",
      ...(free.keyPlace && { place: free.keyPlace }),
    });
  if (!side && free)
    return {
      kind: "free",
      left: (left && marginAt(reading, left, "the left margin", limits.countOf)) ?? anyFrom(0),
      right: (right && marginAt(reading, right, "the right margin", limits.countOf)) ?? anyFrom(0),
    };
  const least =
    side &&
    (side.written.kind === "number"
      ? wholeAt(reading, side, "the side margin", limits.countOf)
      : leastAt(reading, side, "the side margin", limits.countOf));
  return { kind: "centred", least: least ?? 0 };
}
