import { shortened } from "../../draw/svg/text.ts";
import type { Typeface } from "../../typeface/typeface.ts";
import { blockName } from "../block-name.ts";
import type { Block, PieceSection, SheetDocument } from "../document/document.ts";
import { type PaperName, pageMargins, papers, pdfPoints } from "../paper.ts";
import { contentParts, headed, headingPart, sectionParts } from "./content-pdf.ts";
import { createFlow, type Flow, space, stack } from "./flow.ts";
import { missingCharacters } from "./missing-characters.ts";
import { createPen, type Document, type Pen, type Place } from "./pen.ts";
import { sizes } from "./sizes.ts";
import { beforeRows, rowsHead, stepParts } from "./work-pdf.ts";

export interface PdfParts {
  readonly paper: PaperName;
  /** Each piece's chart as a PNG, in the order of the pieces; it is made to fit its page. */
  readonly charts: readonly Uint8Array[];
  /** Without it the PDF's own sans-serif has to do. */
  readonly typeface: Typeface | undefined;
}

/**
 * The working sheet as a PDF. The same document always makes the same bytes: nothing in it tells when it was made.
 *
 * @returns `missing`: characters of the document that the typeface lacks
 */
export async function sheetPdf(
  document: SheetDocument,
  { paper, charts, typeface }: PdfParts,
): Promise<{ readonly pdf: Uint8Array; readonly missing: readonly string[] }> {
  const { default: PDFDocument } = await import("pdfkit");
  const [width, height] = [pdfPoints(papers[paper].widthMm), pdfPoints(papers[paper].heightMm)];
  const faces = typeface ?? { regular: "Helvetica", bold: "Helvetica-Bold" };
  const doc: Document = new PDFDocument({
    size: [width, height],
    margin: 0,
    bufferPages: true,
    font: faces.regular,
    lang: "en",
    displayTitle: true,
    // Without one the present moment would stand there.
    info: { Title: document.title, CreationDate: new Date(0) },
  });
  const bytes = collected(doc);
  const [side, end] = [pdfPoints(pageMargins.sideMm), pdfPoints(pageMargins.endMm)];
  const place = { left: side, width: width - 2 * side };
  let onSheet = document.title;
  const pages: string[] = [onSheet];
  const flow = createFlow({ top: end, bottom: height - end }, () => {
    doc.addPage();
    pages.push(onSheet);
  });
  const pen = createPen(doc, faces);
  const begin = (name: string): void => {
    onSheet = name;
    flow.turn();
    doc.outline.addItem(name);
  };

  flow.add(stack([pen.text(document.title, place, { size: sizes.title, bold: true }), space(8)]));
  for (const section of document.sections)
    for (const part of sectionParts(pen, section, place)) flow.add(part);
  for (const [index, piece] of document.pieces.entries()) {
    begin(piece.piece);
    addPiece(flow, pen, piece, place);
    flow.turn();
    const chart = charts[index];
    if (chart)
      doc.image(Buffer.from(chart), side, end, { fit: [place.width, height - 2 * end], align: "center" });
  }
  begin(document.finish.title);
  for (const part of sectionParts(pen, document.finish, place)) flow.add(part);

  for (const [index, name] of pages.entries()) {
    doc.switchToPage(index);
    marginLines(pen, { name, title: document.title, number: index + 1, of: pages.length }, place, height);
  }
  const missing = missingCharacters(doc, faces, document);
  doc.end();
  return { pdf: await bytes, missing };
}

async function collected(doc: Document): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  for await (const chunk of doc) chunks.push(chunk as Buffer);
  return new Uint8Array(Buffer.concat(chunks));
}

function addPiece(
  flow: Flow,
  pen: Pen,
  { piece, needles, castOn, blocks }: PieceSection,
  place: Place,
): void {
  const before = [needles, ...castOn].flatMap((one) => contentParts(pen, one, place));
  for (const part of headed(headingPart(pen, piece, place), before)) flow.add(part);
  for (const block of blocks) addBlock(flow, pen, piece, block, place);
}

function addBlock(flow: Flow, pen: Pen, piece: string, block: Block, place: Place): void {
  const before = beforeRows(pen, block, place);
  for (const part of before.slice(0, -1)) flow.add(part);
  const words = shortened(`What to do: ${blockName(piece, block)}`, sizes.small, 0.8 * place.width);
  const head = rowsHead(pen, words, place);
  // What stands last above the rows may be their heading, which must not end a page.
  for (const part of headed(stack([before.at(-1)!, space(4), head]), stepParts(pen, block.lines, place))) {
    flow.add(part);
    flow.repeat(head);
  }
  flow.repeat(undefined);
}

/** Piece and page on every sheet, in the margins. */
function marginLines(
  pen: Pen,
  { name, title, number, of }: { name: string; title: string; number: number; of: number },
  { left, width }: Place,
  pageHeight: number,
): void {
  const style = { size: sizes.margin };
  const short = (text: string): string => shortened(text, sizes.margin, 0.75 * width);
  const page = `page ${number} of ${of}`;
  const top = pdfPoints(pageMargins.endMm) / 2 - 2;
  pen.write(short(name), left, top, { ...style, bold: true });
  pen.write(page, left + width - pen.widthOf(page, style), top, style);
  if (name !== title) pen.write(short(title), left, pageHeight - top - 1.3 * sizes.margin, style);
}
