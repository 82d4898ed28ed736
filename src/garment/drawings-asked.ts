import type { DrawingKind } from "../drawing-file/drawing.ts";
import { readGarment } from "./read-garment.ts";

/** A drawing by the name that the garment gives it. */
export interface DrawingAsked {
  readonly file: string;
  readonly kind: DrawingKind;
}

/** The drawings that a garment file names, each once, so that they can be read before the garment is. */
export function drawingsAsked(input: string | Uint8Array, name: string): readonly DrawingAsked[] {
  if (!mayName(input)) return [];
  const asked = new Map<string, DrawingAsked>();
  readGarment(input, name, {
    drawing: (file, kind) => {
      asked.set(`${kind} ${file}`, { file, kind });
      return { problem: "it is not read yet" };
    },
  });
  return [...asked.values()];
}

/** Most garments name no drawing, and are not read twice for it. */
function mayName(input: string | Uint8Array): boolean {
  const text = typeof input === "string" ? input : new TextDecoder().decode(input);
  return /\b(?:svg|dxf)\b/.test(text);
}
