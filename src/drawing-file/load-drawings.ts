import { readFile, stat } from "node:fs/promises";
import { dirname, isAbsolute, join } from "node:path";
import { namedFileReason } from "../edit/file-reason.ts";
import { drawingsAsked } from "../garment/drawings-asked.ts";
import {
  type Drawing,
  type DrawingKind,
  type DrawingProblem,
  type DrawingSource,
  LARGEST_DRAWING_BYTES,
} from "./drawing.ts";
import { readDrawing } from "./read-drawing.ts";

/** A drawing that a garment names, read once: plain data, which can be kept and sent to another thread. */
export interface LoadedDrawing {
  readonly file: string;
  readonly kind: DrawingKind;
  readonly drawing: Drawing | DrawingProblem;
}

/** More drawings than a garment has pieces are a slip or a trap. */
const MOST_DRAWINGS = 12;

/**
 * Reads every drawing that a garment file names.
 *
 * @param garmentFile paths of drawings count from its folder; from the working folder for standard input ("-")
 * @returns never throws: a drawing that cannot be read is in the list with the reason
 */
export async function loadDrawings(
  garment: string | Uint8Array,
  garmentFile: string,
): Promise<readonly LoadedDrawing[]> {
  const asked = drawingsAsked(garment, garmentFile);
  const folder = garmentFile === "-" ? "." : dirname(garmentFile);
  const loaded: LoadedDrawing[] = [];
  for (const { file, kind } of asked.slice(0, MOST_DRAWINGS))
    loaded.push({ file, kind, drawing: await loadDrawing(folder, file, kind) });
  return loaded;
}

/** The loaded drawings in the form in which a garment is read with them. */
export const drawingsIn =
  (loaded: readonly LoadedDrawing[]): DrawingSource =>
  (file, kind) =>
    loaded.find((one) => one.file === file && one.kind === kind)?.drawing ?? {
      problem: "it was not there when the garment was opened",
      expected: `at most ${MOST_DRAWINGS} drawings; a garment that is open is opened anew to read another`,
    };

async function loadDrawing(
  folder: string,
  file: string,
  kind: DrawingKind,
): Promise<Drawing | DrawingProblem> {
  if (/^[a-z][a-z0-9+.-]+:/i.test(file) || isAbsolute(file) || file.includes("\0"))
    return {
      problem: "it is not a file beside the garment's",
      expected: `a path from the garment's own folder, such as front.${kind}`,
    };
  const path = join(folder, file);
  try {
    const found = await stat(path);
    // A device or a pipe could go on for ever.
    if (!found.isFile()) return { problem: "it is not a file" };
    if (found.size > LARGEST_DRAWING_BYTES)
      return readDrawing(new Uint8Array(LARGEST_DRAWING_BYTES + 1), kind);
    return await readDrawing(await readFile(path), kind);
  } catch (error) {
    return { problem: namedFileReason(error), expected: `a file at ${path}` };
  }
}
