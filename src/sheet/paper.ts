/** Paper that sheets are printed on, upright: A4 (ISO 216) and US Letter (ANSI/ASME Y14.1), in mm. */
export const papers = {
  a4: { widthMm: 210, heightMm: 297 },
  letter: { widthMm: 215.9, heightMm: 279.4 },
} as const;

export type PaperName = keyof typeof papers;

/** White around the text; above and below it there is room for the lines that name piece and page. */
export const pageMargins = { sideMm: 12, endMm: 17 } as const;

export interface Area {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** What is left between the margins. */
export const printArea = (name: PaperName): Area => ({
  widthMm: papers[name].widthMm - 2 * pageMargins.sideMm,
  heightMm: papers[name].heightMm - 2 * pageMargins.endMm,
});

/** What is left on either paper, for pages that are made before it is known on which one they are printed. */
export const commonPrintArea: Area = {
  widthMm: Math.min(printArea("a4").widthMm, printArea("letter").widthMm),
  heightMm: Math.min(printArea("a4").heightMm, printArea("letter").heightMm),
};

export const mmPerInch = 25.4;

/** CSS pixels, of which an inch has 96 (CSS Values and Units 4, section 6.2). */
export const cssPixels = (mm: number): number => (mm * 96) / mmPerInch;

/** Points of a PDF, of which an inch has 72 (ISO 32000-1, section 8.3.2.3). */
export const pdfPoints = (mm: number): number => (mm * 72) / mmPerInch;
