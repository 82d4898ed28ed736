import { basename } from "node:path";
import type { Diagnostic, Place } from "../diagnostics/diagnostic.ts";
import type { Path } from "../diagnostics/path.ts";
import { BUILT_IN_MOTIFS } from "../motif/builtin/index.ts";
import type { Motif } from "../motif/motif.ts";
import type { Garment, Gauge, Piece, Placement, Side, Weights } from "./garment.ts";
import { bedAt, gaugeAt, yarnsAt } from "./read/cloth.ts";
import {
  type Cursor,
  listAt,
  nameAt,
  type Reading,
  report,
  type Table,
  tableAt,
  unknownKey,
} from "./read/cursor.ts";
import * as limits from "./read/limits.ts";
import { builtInMotif, motifAt } from "./read/motifs.ts";
import { numberAt } from "./read/numbers.ts";
import { pieceAt } from "./read/pieces.ts";
import { placementAt } from "./read/placements.ts";
import { parseSource } from "./source/parse-source.ts";
import { placeAt, type Written } from "./source/written.ts";
import { DEFAULT_WEIGHTS, TERMS } from "./weights.ts";

/** The format that this program reads. */
export const FORMAT = "evenrow/1";

/** Keys at the top of a garment file. */
export const TOP_KEYS = [
  "format",
  "title",
  "bed",
  "gauge",
  "yarn",
  "pieces",
  "motifs",
  "place",
  "weights",
] as const;

/** More mistakes than these are not listed: they come from one slip high up, or from a file of another kind. */
const mostMistakes = 100;

export interface ReadResult {
  /** Present only where there is no error. */
  readonly garment?: Garment;
  readonly diagnostics: readonly Diagnostic[];
  /** Where the value at a path stands, or the nearest thing around it that is written. */
  readonly locate: (path: Path) => Place | undefined;
}

/**
 * Reads a garment file (YAML or JSON, format `evenrow/1`) and says everything that is wrong with it.
 *
 * @param name of the file; its last part is the title of a garment that has none
 * @returns never throws; every mistake has a line and a column
 */
export function readGarment(input: string | Uint8Array, name: string): ReadResult {
  const { written, diagnostics } = parseSource(input);
  if (!written) return { diagnostics, locate: () => undefined };
  const reading: Reading = { diagnostics: [] };
  const garment = garmentFrom(reading, written, name);
  const sound = garment && !reading.diagnostics.some(({ severity }) => severity === "error");
  return {
    ...(sound && { garment }),
    diagnostics: limited(inOrder(reading.diagnostics)),
    locate: (path) => placeAt(written, path),
  };
}

function garmentFrom(reading: Reading, written: Written, name: string): Garment | undefined {
  const cursor: Cursor = { written, path: [] };
  const top = tableAt(
    reading,
    cursor,
    "a garment file",
    TOP_KEYS,
    "format: evenrow/1, then bed, gauge, pieces, place",
  );
  if (!top) return undefined;
  checkFormat(reading, top);
  const titleCursor = top.at("title");
  const title =
    (titleCursor && nameAt(reading, titleCursor, "the title")) ?? basename(name).replace(/\.[^.]*$/, "");
  const bedCursor = top.need("bed", "{ needles: 200, pitch: 4.5 mm }");
  const bed = bedCursor && bedAt(reading, bedCursor);
  const gaugeCursor = top.need("gauge", "ground: { stitches: 22, rows: 31, over: 10 cm }");
  const gauge = gaugeCursor && gaugeAt(reading, gaugeCursor);
  const yarnCursor = top.at("yarn");
  const yarn = yarnCursor ? yarnsAt(reading, yarnCursor) : {};
  const pieces = piecesAt(reading, top, bed?.carriage ?? "right");
  const own = motifsAt(reading, top);
  const placements = placementsAt(reading, top, pieces, own);
  const motifs = [...own.values()].filter((motif) => motif !== undefined);
  const used = placements.flatMap(({ motif }) => (own.has(motif) ? [] : [motif]));
  const all = [...motifs, ...[...new Set(used)].map(builtInMotif)];
  needCordGauge(reading, top, gauge, placements, all);
  const weights = weightsAt(reading, top, all);
  if (!bed || !gauge) return undefined;
  return {
    title,
    bed,
    gauge,
    yarn,
    pieces: [...pieces.values()].filter((piece) => piece !== undefined),
    motifs: all,
    placements,
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

function piecesAt(reading: Reading, top: Table, carriage: Side): Map<string, Piece | undefined> {
  const example = "sleeve: { outline: [...] }";
  const cursor = top.need("pieces", example);
  const table = cursor && tableAt(reading, cursor, "pieces", undefined, example);
  if (table && table.keys().length === 0)
    report(reading, table.cursor, { code: "empty-range", message: "there is no piece", expected: example });
  return new Map(
    (table?.keys() ?? []).map((name) => [name, pieceAt(reading, table!.at(name)!, name, carriage)]),
  );
}

function motifsAt(reading: Reading, top: Table): Map<string, Motif | undefined> {
  const cursor = top.at("motifs");
  const table = cursor && tableAt(reading, cursor, "motifs", undefined, "plait: { like: crossed cord }");
  return new Map((table?.keys() ?? []).map((name) => [name, motifAt(reading, table!.at(name)!, name)]));
}

function placementsAt(
  reading: Reading,
  top: Table,
  pieces: ReadonlyMap<string, Piece | undefined>,
  motifs: ReadonlyMap<string, Motif | undefined>,
): readonly Placement[] {
  const example = "- { motif: plait, on: sleeve, from: cast-on, to: bind-off }";
  const cursor = top.need("place", example);
  const items = (cursor && listAt(reading, cursor, "place", example)) ?? [];
  if (cursor?.written.kind === "list" && items.length === 0)
    report(reading, cursor, { code: "empty-range", message: "no motif is placed", expected: example });
  const known = { motifs: [...new Set([...motifs.keys(), ...BUILT_IN_MOTIFS.keys()])], pieces };
  return items
    .map((item) => placementAt(reading, item, known))
    .filter((placement) => placement !== undefined);
}

function needCordGauge(
  reading: Reading,
  top: Table,
  gauge: Gauge | undefined,
  placements: readonly Placement[],
  motifs: readonly Motif[],
): void {
  const gaugeCursor = top.at("gauge");
  if (!gauge || gauge.cord || !gaugeCursor) return;
  if (gaugeCursor.written.kind === "table" && gaugeCursor.written.entries.has("cord")) return;
  const laid = placements.find(({ motif }) =>
    motifs.some((one) => one.name === motif && one.kind === "cord"),
  );
  if (!laid) return;
  report(reading, gaugeCursor, {
    code: "no-cord-gauge",
    message: `${laid.motif} is a cord, and the gauge does not say how the cord measures`,
    expected: "cord: { needles: 3, stitches: 19, over: 10 cm } under gauge",
    found: "",
    ...(gaugeCursor.keyPlace && { place: gaugeCursor.keyPlace }),
  });
}

function weightsAt(reading: Reading, top: Table, motifs: readonly Motif[]): Weights {
  const cursor = top.at("weights");
  const table = cursor && tableAt(reading, cursor, "the weights", undefined, "{ length: 3, ease: 1 }");
  const known = new Set<string>([
    ...TERMS,
    ...Object.keys(DEFAULT_WEIGHTS),
    ...motifs.flatMap(({ quantities }) => quantities.map((quantity) => quantity.name)),
  ]);
  // No prototype: a knitter may call a quantity `constructor`.
  const weights: Record<string, number> = Object.assign(Object.create(null), DEFAULT_WEIGHTS);
  if (table?.cursor.written.kind !== "table") return weights;
  for (const [key, entry] of table.cursor.written.entries) {
    if (!known.has(key)) unknownKey(reading, table.cursor, key, entry, "the weights", [...known]);
    const value = numberAt(reading, table.at(key)!, `the weight of ${key}`, limits.weight);
    if (value !== undefined) weights[key] = value;
  }
  return weights;
}

const inOrder = (diagnostics: readonly Diagnostic[]): readonly Diagnostic[] =>
  [...diagnostics].sort(
    (a, b) => (a.place?.line ?? 0) - (b.place?.line ?? 0) || (a.place?.column ?? 0) - (b.place?.column ?? 0),
  );

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
