import type { Diagnostic, Place } from "../diagnostics/diagnostic.ts";
import type { Path } from "../diagnostics/path.ts";
import { drawingsIn, type LoadedDrawing } from "../drawing-file/load-drawings.ts";
import { examineRead } from "../examine/examine-read.ts";
import type { Garment, SizeRange } from "../garment/garment.ts";
import { readGarment } from "../garment/read-garment.ts";

/** What belongs to an open garment beside its text, the same at every reading. */
export interface Beside {
  /** What its outlines are drawn in, as loaded when the garment was opened, so that every reading sees the same lines. */
  readonly drawings?: readonly LoadedDrawing[];
  /** Which of the file's sizes is meant; the first one where none is named, or it is gone. */
  readonly size?: string;
}

/** A garment file's text as read and examined. */
export interface SourceReading {
  /** Present only where there is no error; of a file with sizes the garment in the size that is meant. */
  readonly garment?: Garment;
  readonly range?: SizeRange;
  /** Name of that size. */
  readonly size?: string;
  readonly diagnostics: readonly Diagnostic[];
  readonly locate: (path: Path) => Place | undefined;
}

/**
 * Reads and examines the text of a garment file; mistakes are told in `diagnostics`, never thrown.
 */
export function readSource(
  source: string,
  name: string,
  { drawings = [], size }: Beside = {},
): SourceReading {
  const read = readGarment(source, name, { drawing: drawingsIn(drawings) });
  const { garment, range, locate } = read;
  const all = [...read.diagnostics, ...examineRead(read)];
  const sound = garment && !all.some(({ severity }) => severity === "error");
  if (!sound) return { diagnostics: all, locate };
  if (!range) return { garment, diagnostics: all, locate };
  const sized = range.sizes.find(({ name: one }) => one === size) ?? range.sizes[0]!;
  return { garment: sized.garment, range, size: sized.name, diagnostics: all, locate };
}
