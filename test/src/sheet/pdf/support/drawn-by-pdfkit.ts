import type { Document } from "../../../../../src/sheet/pdf/pen.ts";

export const ownFaces = { regular: "Helvetica", bold: "Helvetica-Bold" };

const paperHeight = 500;

/** A page of 400 by 500 points and, once something is drawn on it, its PDF with the operators in clear. */
export async function openPage(font: string = ownFaces.regular) {
  const { default: PDFDocument } = await import("pdfkit");
  const doc: Document = new PDFDocument({ size: [400, paperHeight], margin: 0, compress: false, font });
  const finished = async (): Promise<Uint8Array> => {
    const chunks: Uint8Array[] = [];
    doc.end();
    for await (const chunk of doc) chunks.push(chunk as Buffer);
    return new Uint8Array(Buffer.concat(chunks));
  };
  return { doc, finished };
}

/** The operators that a PDF draws its lines with, one to a line (ISO 32000-1, section 8.5). */
export const operatorsOf = (pdf: Uint8Array): readonly string[] =>
  Buffer.from(pdf)
    .toString("latin1")
    .split("\n")
    .filter((line) => /^[-\d. ]*(w|m|l|re|S|SCN)$/.test(line));
