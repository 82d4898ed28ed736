import type { Part } from "./flow.ts";

export type Document = PDFKit.PDFDocument;

interface TextStyle {
  /** Points. */
  readonly size: number;
  readonly bold?: boolean;
}

export interface Place {
  readonly left: number;
  readonly width: number;
}

/** What parts are made with; every length in points. */
export interface Pen {
  /** Lines under one another; in halves where even a whole page is too short for them. */
  readonly text: (words: string, place: Place, style: TextStyle) => Part;
  /** A line of text, never broken, drawn with its top at `top`. */
  readonly write: (words: string, left: number, top: number, style: TextStyle) => void;
  readonly widthOf: (words: string, style: TextStyle) => number;
  readonly rule: (place: Place, thickness: number) => Part;
  readonly box: (left: number, top: number, side: number) => void;
}

export interface Faces {
  readonly regular: string;
  readonly bold: string;
}

/** Height of a line, as a share of the size of its text. */
export const lineHeight = 1.3;

export function createPen(doc: Document, faces: Faces): Pen {
  const styled = ({ size, bold }: TextStyle): Document =>
    doc.font(bold === true ? faces.bold : faces.regular).fontSize(size);
  /** pdfkit adds to the font's own line height with the font's own gap, which differ from font to font. */
  const gap = (size: number): number => lineHeight * size - doc.currentLineHeight(true);
  const text = (words: string, place: Place, style: TextStyle): Part => {
    styled(style);
    const { left, width } = place;
    const options = { width, lineGap: gap(style.size) };
    return {
      height: doc.heightOfString(words, options),
      draw: (top) => void styled(style).text(words, left, top, options),
      // By itself pdfkit would go on at the very top of a page that nobody counts.
      get split() {
        return halves(words).map((half) => text(half, place, style));
      },
    };
  };
  return {
    text,
    write: (words, left, top, style) => void styled(style).text(words, left, top, { lineBreak: false }),
    widthOf: (words, style) => styled(style).widthOfString(words),
    rule: ({ left, width }, thickness) => ({
      height: 4,
      draw: (top) =>
        void doc
          .lineWidth(thickness)
          .moveTo(left, top + 2)
          .lineTo(left + width, top + 2)
          .stroke("#000"),
    }),
    box: (left, top, side) => void doc.lineWidth(1).rect(left, top, side, side).stroke("#000"),
  };
}

/** A text of at least two letters in two, between words where it has several. */
function halves(words: string): readonly string[] {
  const letters = [...words];
  const middle = Math.floor(letters.length / 2);
  const blank = letters.lastIndexOf(" ", middle);
  const at = blank > 0 ? blank : middle;
  return [letters.slice(0, at), letters.slice(at)].map((half) => half.join("").trim());
}
