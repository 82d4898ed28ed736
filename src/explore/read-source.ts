import type { Diagnostic, Place } from "../diagnostics/diagnostic.ts";
import type { Path } from "../diagnostics/path.ts";
import { drawingsIn, type LoadedDrawing } from "../drawing-file/load-drawings.ts";
import { examineRead } from "../examine/examine-read.ts";
import type { Garment } from "../garment/garment.ts";
import { readGarment } from "../garment/read-garment.ts";

/** A garment file's text as read and examined. */
export interface SourceReading {
  /** Present only where there is no error. */
  readonly garment?: Garment;
  readonly diagnostics: readonly Diagnostic[];
  readonly locate: (path: Path) => Place | undefined;
}

/**
 * Reads and examines the text of a garment file; mistakes are told in `diagnostics`, never thrown.
 *
 * @param drawings what its outlines are drawn in, as loaded when the garment was opened, so that every later reading
 *   sees the same lines
 */
export function readSource(
  source: string,
  name: string,
  drawings: readonly LoadedDrawing[] = [],
): SourceReading {
  const read = readGarment(source, name, { drawing: drawingsIn(drawings) });
  const { garment, locate } = read;
  const all = [...read.diagnostics, ...examineRead(read)];
  const sound = garment && !all.some(({ severity }) => severity === "error");
  return { ...(sound && { garment }), diagnostics: all, locate };
}
