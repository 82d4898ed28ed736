import type { SheetDocument } from "../document/document.ts";
import type { Document, Faces } from "./pen.ts";

/** The part of an embedded font that tells what it can show; pdfkit keeps it to itself. */
interface FontInUse {
  readonly font?: { readonly hasGlyphForCodePoint?: (codePoint: number) => boolean };
}

/** Characters of a document that its typeface has no picture of, each once, in their order. */
export function missingCharacters(doc: Document, faces: Faces, document: SheetDocument): readonly string[] {
  const { _font } = doc.font(faces.regular) as unknown as { readonly _font?: FontInUse };
  const characters = new Set(JSON.stringify(document));
  return [...characters].filter(
    (character) => _font?.font?.hasGlyphForCodePoint?.(character.codePointAt(0)!) === false,
  );
}
