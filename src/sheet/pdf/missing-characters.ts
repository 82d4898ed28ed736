import type { SheetDocument } from "../document/document.ts";
import type { Document, Faces } from "./pen.ts";

/** The part of a font that tells what it can show; pdfkit keeps it to itself. */
interface FontInUse {
  readonly font: FontFile | OwnFont;
}

interface FontFile {
  readonly hasGlyphForCodePoint: (codePoint: number) => boolean;
}

/** One of those that every reader of PDFs has. */
interface OwnFont {
  readonly characterToGlyph: (codePoint: number) => string;
}

/** Characters of a document that its typeface has no picture of, each once, in their order. */
export function missingCharacters(doc: Document, faces: Faces, document: SheetDocument): readonly string[] {
  const { font } = (doc.font(faces.regular) as unknown as { readonly _font: FontInUse })._font;
  const shows = (codePoint: number): boolean =>
    "hasGlyphForCodePoint" in font
      ? font.hasGlyphForCodePoint(codePoint)
      : font.characterToGlyph(codePoint) !== ".notdef";
  return [...new Set(JSON.stringify(document))].filter((character) => !shows(character.codePointAt(0)!));
}
