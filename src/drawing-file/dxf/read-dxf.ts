import { type DxfBlock, type DxfEntity, type DxfFile, parseString } from "dxf";
import logger from "dxf/lib/util/logger.js";
import {
  type Contour,
  type Drawing,
  type DrawingProblem,
  type DrawnShape,
  FARTHEST_MM,
  MOST_POINTS,
  type Point,
  withinBudget,
} from "../drawing.ts";
import { tidyGroups } from "./groups.ts";
import { isLine, joined, lineOf } from "./lines.ts";
import { textsOf, unitMm } from "./texts.ts";

/** Layers of ASTM D6673 (predecessor ANSI/AAMA-292) that say something a knitted piece cannot have, with their names. */
const PASSED_OVER: ReadonlyMap<string, string> = new Map([
  ["6", "mirror line: the piece is taken as it is drawn, not unfolded"],
  ["8", "internal lines"],
  ["11", "cut-outs inside the piece"],
  ["13", "drill holes"],
]);

const BOUNDARY = "1";
const NOTCHES = ["4", "80", "81", "82", "83"];
/** Turn points, curve points, grading, grain, stripes, plaids, sew lines, text, checks: no part of the outline. */
const SILENT = [
  "2",
  "3",
  "4",
  "5",
  "7",
  "9",
  "10",
  "14",
  "15",
  "80",
  "81",
  "82",
  "83",
  "84",
  "85",
  "86",
  "87",
];

/**
 * Reads the pieces of a pattern file in DXF as ASTM D6673 lays it out: one block for each piece, its boundary on layer 1.
 *
 * @returns a shape for each block, in mm, named by its `Piece Name` text or else by the block
 */
export function readDxf(text: string): Drawing | DrawingProblem {
  const tidied = tidyGroups(text);
  if ("problem" in tidied) return tidied;
  const file = parsed(tidied.text);
  if (!file) return { problem: "it is not a DXF file that can be read: its sections are broken" };
  const everywhere = [...file.entities, ...file.blocks.flatMap(({ entities }) => entities ?? [])];
  const stated = unitMm(textsOf(everywhere));
  const blocks = file.blocks.filter(
    ({ name, entities }) => name !== undefined && !name.startsWith("*") && (entities?.length ?? 0) > 0,
  );
  if (blocks.length === 0)
    return {
      problem: "there is no piece in it",
      expected: "a DXF file per ASTM D6673, one block for each piece",
    };
  return {
    shapes: withinBudget(blocks, (block) => shapeOf(block, stated ?? 1), nameOf),
    remarks:
      stated === undefined
        ? ["the drawing does not say Units: METRIC or ENGLISH, so that its numbers are taken as mm"]
        : [],
  };
}

// The parser writes to the terminal about corners outside of any line, which belong to no piece.
// How a module of the older kind is handed over differs between a bundle and node.
("default" in logger ? logger.default : logger).error = () => {};

function parsed(text: string): DxfFile | undefined {
  try {
    return parseString(text);
  } catch {
    return undefined;
  }
}

function shapeOf(block: DxfBlock, unit: number): DrawnShape {
  const { entities = [] } = block;
  const size = textsOf(entities).get("size");
  const boundary = boundaryOf(
    entities.filter((one) => layerOf(one) === BOUNDARY && one.type !== "TEXT" && one.type !== "POINT"),
    unit,
  );
  return {
    name: nameOf(block),
    ...(size !== undefined && size !== "" && { size }),
    notches: entities.flatMap((entity) => notchOf(entity, unit)),
    remarks: leftOut(entities),
    ...(typeof boundary === "string" ? { contours: [], refusal: boundary } : { contours: boundary }),
  };
}

const nameOf = ({ name = "", entities = [] }: DxfBlock): string => textsOf(entities).get("piecename") || name;

const layerOf = ({ layer = "0" }: DxfEntity): string => layer.replace(/^0+(?=\d)/, "");

/** The boundary's lines, or why they cannot be used. */
function boundaryOf(drawn: readonly DxfEntity[], unit: number): readonly Contour[] | string {
  if (drawn.length === 0) return "it has no boundary on layer 1";
  const strange = [...new Set(drawn.filter((one) => !isLine(one)).map(({ type }) => type.toLowerCase()))];
  if (strange.length > 0)
    return `its boundary (layer 1) is drawn with ${strange.join(" and ")}, which is not followed; save curves as polylines`;
  if (drawn.length > MOST_STROKES) return `its boundary is drawn in more than ${MOST_STROKES} strokes`;
  const lines: Contour[] = [];
  let points = 0;
  for (const entity of drawn) {
    const line = lineOf(entity, unit);
    if (!line?.points.every(isNear))
      return "a coordinate of its boundary is missing, is no number or lies beyond all measure";
    points += line.points.length;
    if (points > MOST_POINTS) return `its boundary has more than ${MOST_POINTS} points`;
    if (line.points.length > 1) lines.push(line);
  }
  return joined(lines);
}

/** A boundary drawn line by line has a few hundred. */
const MOST_STROKES = 5000;

const isNear = (point: Point): boolean => point.every((mm) => Math.abs(mm) <= FARTHEST_MM);

function notchOf(entity: DxfEntity, unit: number): readonly Point[] {
  const { type, x = Number.NaN, y = Number.NaN } = entity;
  if (type !== "POINT" || !NOTCHES.includes(layerOf(entity)) || !Number.isFinite(x * y)) return [];
  return [[x * unit, y * unit]];
}

/** What a knitter would miss, by layer. */
function leftOut(entities: readonly DxfEntity[]): readonly string[] {
  const lines = entities.filter(({ type }) => type !== "TEXT" && type !== "POINT");
  const layers = [...new Set(lines.map(layerOf))].filter(
    (layer) => layer !== BOUNDARY && !SILENT.includes(layer),
  );
  return layers
    .sort()
    .map(
      (layer) =>
        `what lies on layer ${layer} (${PASSED_OVER.get(layer) ?? "not in the standard"}) is left out`,
    );
}
