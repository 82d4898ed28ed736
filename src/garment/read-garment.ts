import { basename } from "node:path";
import { groundStitch } from "../cloth/gauge.ts";
import { acrossSizes } from "../diagnostics/across-sizes.ts";
import type { Diagnostic, Place } from "../diagnostics/diagnostic.ts";
import type { Path } from "../diagnostics/path.ts";
import { inOrder } from "../diagnostics/render.ts";
import { BUILT_IN_MOTIFS } from "../motif/builtin/index.ts";
import type { Motif } from "../motif/motif.ts";
import type {
  Bed,
  Garment,
  Gauge,
  OnHand,
  Placement,
  SizedGarment,
  SizeRange,
  Weights,
  Yarns,
} from "./garment.ts";
import { keysOf } from "./keys.ts";
import { bedAt, gaugeAt } from "./read/cloth.ts";
import { type Cursor, listAt, nameAt, type Reading, report, type Table, tableAt } from "./read/cursor.ts";
import { matchesAt } from "./read/matches.ts";
import { builtInMotif, motifAt } from "./read/motifs.ts";
import { onHandAt } from "./read/on-hand.ts";
import { type AroundPiece, pieceAt, type ReadPiece } from "./read/pieces.ts";
import { type Known, placementAt } from "./read/placements.ts";
import { shareAt } from "./read/share.ts";
import { sizesAt } from "./read/sizes.ts";
import { steadyAt } from "./read/steady.ts";
import { wearerAt } from "./read/wearer.ts";
import { weightsAt } from "./read/weights.ts";
import { yarnsAt } from "./read/yarn.ts";
import { parseSource } from "./source/parse-source.ts";
import { isWritten, placeAt, type Written } from "./source/written.ts";

/** The format that this program reads. */
const FORMAT = "evenrow/1";

/** More mistakes than these are not listed: they come from one slip high up, or from a file of another kind. */
const mostMistakes = 100;

export interface ReadResult {
  /** Present only where there is no error; of a file with sizes the garment in the first of them. */
  readonly garment?: Garment;
  /** Every size, where the file gives any. */
  readonly range?: SizeRange;
  readonly diagnostics: readonly Diagnostic[];
  /** Where the value at a path stands, or the nearest thing around it that is written. */
  readonly locate: (path: Path) => Place | undefined;
}

/** What lies outside of the garment file. */
export type ReadOutside = Pick<Reading, "drawing">;

/**
 * Reads a garment file (YAML or JSON, format `evenrow/1`) and says everything that is wrong with it.
 *
 * @param name of the file; its last part is the title of a garment that has none
 * @param outside what the garment takes from other files, read beforehand
 * @returns never throws; every mistake has a line and a column
 */
export function readGarment(input: string | Uint8Array, name: string, outside: ReadOutside = {}): ReadResult {
  const { written, diagnostics } = parseSource(input);
  if (!written) return { diagnostics, locate: () => undefined };
  const reading: Reading = { diagnostics: [...diagnostics], ...outside };
  const { garment, range } = garmentsFrom(reading, written, name);
  const sound = garment && !reading.diagnostics.some(({ severity }) => severity === "error");
  return {
    ...(sound && { garment }),
    ...(sound && range && { range }),
    diagnostics: limited(inOrder(reading.diagnostics)),
    locate: (path) => placeOf(written, path),
  };
}

/** Where a value stands; what a size does not say of a piece itself is said under `pieces`. */
function placeOf(written: Written, path: Path): Place | undefined {
  const isOfSize = path[0] === "sizes" && path[2] === "pieces" && path.length > 4;
  return placeAt(written, isOfSize && !isWritten(written, path) ? path.slice(2) : path);
}

interface Garments {
  readonly garment?: Garment;
  readonly range?: SizeRange;
}

function garmentsFrom(reading: Reading, written: Written, name: string): Garments {
  const cursor: Cursor = { written, path: [] };
  const top = tableAt(
    reading,
    cursor,
    "a garment file",
    keysOf("garment"),
    "format: evenrow/1, then bed, gauge, pieces, place",
  );
  if (!top || written.kind !== "table") return {};
  checkFormat(reading, top);
  const common = commonFrom(reading, top, name);
  const sizesCursor = top.at("sizes");
  const sizes = sizesCursor ? sizesAt(reading, sizesCursor, written) : [];
  const share = shareAt(reading, top.at("share"), common.placed, sizesCursor !== undefined);
  if (!sizesCursor) {
    const garment = garmentFrom(reading, top, common, common.title);
    return garment ? { garment } : {};
  }
  const sized = sizes.map(({ name: size, top: own }) => {
    const one: Reading = { ...reading, diagnostics: [] };
    const table = tableAt(one, own, "a garment file", undefined, "");
    const garment = table && garmentFrom(one, table, common, `${common.title}, size ${size}`);
    return { name: size, garment, diagnostics: one.diagnostics };
  });
  reading.diagnostics.push(...acrossSizes(sized));
  const all = sizes.flatMap(({ name: size, path }, index): SizedGarment[] => {
    const { garment } = sized[index]!;
    return garment ? [{ name: size, path, garment }] : [];
  });
  const [first] = all;
  if (!first || all.length < sizes.length) return {};
  return { garment: first.garment, range: { title: common.title, sizes: all, ...(share && { share }) } };
}

/** What is said once for all sizes. */
interface Common {
  readonly title: string;
  readonly bed: Bed | undefined;
  readonly gauge: Gauge | undefined;
  readonly yarn: Yarns;
  readonly steady: number | undefined;
  readonly own: ReadonlyMap<string, Motif | undefined>;
  /** The motifs that are written, and the built-in ones that are placed as they are. */
  readonly all: readonly Motif[];
  /** Those of them that some placement names. */
  readonly placed: readonly Motif[];
  readonly weights: Weights;
  readonly onHand: OnHand | undefined;
}

function commonFrom(reading: Reading, top: Table, name: string): Common {
  const titleCursor = top.at("title");
  const title =
    (titleCursor && nameAt(reading, titleCursor, "the title")) ?? basename(name).replace(/\.[^.]*$/, "");
  const bedCursor = top.need("bed", "{ needles: 200, pitch: 4.5 mm }");
  const bed = bedCursor && bedAt(reading, bedCursor);
  const gaugeCursor = top.need("gauge", "ground: { stitches: 22, rows: 31, over: 10 cm }");
  const gauge = gaugeCursor && gaugeAt(reading, gaugeCursor);
  const yarnCursor = top.at("yarn");
  const stated = yarnCursor ? yarnsAt(reading, yarnCursor) : {};
  const steady = steadyAt(reading, top.at("steady"));
  const own = motifsAt(reading, top);
  const named = [...new Set(namedMotifs(top))];
  const builtIn = named.filter((motif) => !own.has(motif) && BUILT_IN_MOTIFS.has(motif)).map(builtInMotif);
  const all = [...[...own.values()].filter((motif) => motif !== undefined), ...builtIn];
  needCordGauge(reading, top, own);
  const weights = weightsAt(reading, top, all);
  const placed = all.filter((motif) => named.includes(motif.name));
  const { onHand, yarn } = onHandAt(reading, top.at("on hand"), { gauge, yarn: stated, motifs: placed });
  return { title, bed, gauge, yarn, steady, own, all, placed, weights, onHand };
}

/** The garment of one size, or the only one; `top` is the file as it reads for it. */
function garmentFrom(reading: Reading, top: Table, common: Common, title: string): Garment | undefined {
  const { bed, gauge, yarn, steady, own, all, weights, onHand } = common;
  const wearerCursor = top.at("wearer");
  const wearer = wearerCursor && wearerAt(reading, wearerCursor);
  const pieces = piecesAt(reading, top, {
    carriage: bed?.carriage ?? "right",
    ...(gauge && { stitch: groundStitch(gauge) }),
  });
  const known = { motifs: [...new Set([...own.keys(), ...BUILT_IN_MOTIFS.keys()])], pieces };
  const placements = placementsAt(reading, top, known);
  const matches = matchesAt(reading, top.at("match"), known, placements);
  if (!bed || !gauge) return undefined;
  return {
    title,
    bed,
    gauge,
    yarn,
    ...(steady !== undefined && { steady }),
    ...(onHand && { onHand }),
    ...(wearer && { wearer }),
    pieces: [...pieces.values()].flatMap(({ piece }) => (piece ? [piece] : [])),
    motifs: all,
    placements,
    matches,
    weights,
  };
}

function checkFormat(reading: Reading, top: Table): void {
  const cursor = top.need("format", `format: ${FORMAT}`);
  if (!cursor || (cursor.written.kind === "text" && cursor.written.text === FORMAT)) return;
  report(reading, cursor, {
    code: "unknown-format",
    message: "this program reads garments of one format",
    expected: `format: ${FORMAT}`,
  });
}

function piecesAt(reading: Reading, top: Table, around: AroundPiece): Map<string, ReadPiece> {
  const example = "sleeve: { outline: [...] }";
  const cursor = top.need("pieces", example);
  const table = cursor && tableAt(reading, cursor, "pieces", undefined, example);
  if (table && table.keys().length === 0)
    report(reading, table.cursor, { code: "empty-range", message: "there is no piece", expected: example });
  return new Map(
    (table?.keys() ?? []).map((name) => [name, pieceAt(reading, table!.at(name)!, name, around)]),
  );
}

function motifsAt(reading: Reading, top: Table): Map<string, Motif | undefined> {
  const cursor = top.at("motifs");
  const table = cursor && tableAt(reading, cursor, "motifs", undefined, "plait: { like: crossed cord }");
  return new Map((table?.keys() ?? []).map((name) => [name, motifAt(reading, table!.at(name)!, name)]));
}

function placementsAt(reading: Reading, top: Table, known: Known): readonly Placement[] {
  const example = "- { motif: plait, on: sleeve, from: cast-on, to: bind-off }";
  const cursor = top.need("place", example);
  const items = (cursor && listAt(reading, cursor, "place", example)) ?? [];
  if (cursor?.written.kind === "list" && items.length === 0)
    report(reading, cursor, { code: "empty-range", message: "no motif is placed", expected: example });
  return items
    .map((item) => placementAt(reading, item, known))
    .filter((placement) => placement !== undefined);
}

/** Looks at what is written, not at what was read, so that a mistake in a placement or a motif does not hide this. */
function needCordGauge(reading: Reading, top: Table, own: ReadonlyMap<string, Motif | undefined>): void {
  const gauge = top.at("gauge");
  if (gauge?.written.kind !== "table" || gauge.written.entries.has("cord")) return;
  const laid = namedMotifs(top).find((name) => {
    const motif = own.has(name) || !BUILT_IN_MOTIFS.has(name) ? own.get(name) : builtInMotif(name);
    return motif?.kind === "cord";
  });
  if (laid === undefined) return;
  report(reading, gauge, {
    code: "no-cord-gauge",
    message: `${laid} is a cord, and the gauge does not say how the cord measures`,
    expected: "cord: { needles: 3, stitches: 19, over: 10 cm } under gauge",
    found: "",
    ...(gauge.keyPlace && { place: gauge.keyPlace }),
  });
}

/** The motifs that placements name, right or wrong. */
function namedMotifs(top: Table): readonly string[] {
  const place = top.at("place")?.written;
  return (place?.kind === "list" ? place.items : []).map(motifOf);
}

function motifOf(item: Written): string {
  const name = item.kind === "table" ? item.entries.get("motif")?.value : undefined;
  return name?.kind === "text" ? name.text : "";
}

function limited(diagnostics: readonly Diagnostic[]): readonly Diagnostic[] {
  if (diagnostics.length <= mostMistakes) return diagnostics;
  const last = diagnostics[mostMistakes]!;
  return [
    ...diagnostics.slice(0, mostMistakes),
    {
      severity: "error",
      code: "too-many-mistakes",
      message: `there are ${diagnostics.length - mostMistakes} more mistakes from here on`,
      path: last.path,
      ...(last.place && { place: last.place }),
    },
  ];
}
